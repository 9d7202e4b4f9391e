package org.seamledger.export.view;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/** Pictures as PNG (ISO/IEC 15948): eight bits a colour, no alpha, no date. */
final class Png {

  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final int TRUECOLOUR = 2;
  private static final int UP = 2;

  private Png() {
  }

  /** @param rows of colours, {@code 0xRRGGBB}, from the top */
  static byte[] of(int[][] rows) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.write(SIGNATURE);
      ByteArrayOutputStream head = new ByteArrayOutputStream();
      DataOutputStream fields = new DataOutputStream(head);
      fields.writeInt(rows[0].length);
      fields.writeInt(rows.length);
      fields.write(new byte[] {8, TRUECOLOUR, 0, 0, 0});
      chunk(out, "IHDR", head.toByteArray());
      chunk(out, "IDAT", packed(rows));
      chunk(out, "IEND", new byte[0]);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** Each row as its difference from the one above, clause 9 of the standard. */
  private static byte[] packed(int[][] rows) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Deflater deflater = new Deflater(6);
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater, 1 << 16)) {
      int[] above = new int[rows[0].length];
      byte[] line = new byte[1 + 3 * rows[0].length];
      line[0] = UP;
      for (int[] row : rows) {
        for (int x = 0; x < row.length; x++) {
          for (int k = 0; k < 3; k++) {
            int shift = 16 - 8 * k;
            line[1 + 3 * x + k] = (byte) ((row[x] >> shift & 255) - (above[x] >> shift & 255));
          }
        }
        out.write(line);
        above = row;
      }
    } finally {
      deflater.end();
    }
    return bytes.toByteArray();
  }

  private static void chunk(DataOutputStream out, String type, byte[] data) throws IOException {
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 check = new CRC32();
    check.update(name);
    check.update(data);
    out.writeInt(data.length);
    out.write(name);
    out.write(data);
    out.writeInt((int) check.getValue());
  }
}
