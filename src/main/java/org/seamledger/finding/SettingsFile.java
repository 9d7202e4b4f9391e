package org.seamledger.finding;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads files that people write: shapes, roof systems, decisions, specifications. One that has no end, such as a device, is told so. */
public final class SettingsFile {

  /** Bytes; the largest file of this kind that we know has less than a hundredth of it. */
  public static final int MOST = 16 << 20;

  private SettingsFile() {
  }

  /** @throws IOException where it can't be read or has more than {@link #MOST} bytes; the message then says so */
  public static byte[] bytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(MOST + 1);
      if (bytes.length > MOST) {
        throw new IOException("it has more than " + (MOST >> 20) + " MiB");
      }
      return bytes;
    }
  }

  /** As UTF-8. */
  public static String text(Path file) throws IOException {
    return StandardCharsets.UTF_8.newDecoder().decode(java.nio.ByteBuffer.wrap(bytes(file))).toString();
  }
}
