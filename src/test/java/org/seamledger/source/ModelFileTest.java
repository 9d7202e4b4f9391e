package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.UnreadableModelException;

class ModelFileTest {

  private static final byte[] MODEL = "ISO-10303-21;HEADER;ENDSEC;DATA;ENDSEC;END-ISO-10303-21;".getBytes(StandardCharsets.US_ASCII);

  @TempDir
  private Path folder;

  @Test
  void plain() throws IOException {
    assertReads(write("house.ifc", MODEL), "house.ifc", MODEL);
  }

  @Test
  void gzipWhateverTheName() throws IOException {
    assertReads(write("house.ifc.gz", gzip(MODEL)), "house.ifc.gz", MODEL);
    assertReads(write("house.ifc", gzip(MODEL)), "house.ifc", MODEL);
  }

  @Test
  void gzipOfSeveralMembers() throws IOException {
    byte[] first = gzip(Arrays.copyOf(MODEL, 20));
    byte[] second = gzip(Arrays.copyOfRange(MODEL, 20, MODEL.length));
    byte[] both = ByteBuffer.allocate(first.length + second.length).put(first).put(second).array();
    assertReads(write("house.ifc.gz", both), "house.ifc.gz", MODEL);
  }

  @Test
  void zipWhateverTheName() throws IOException {
    byte[] zip =
        zip("readme.txt", new byte[] {1}, "models/House.IFC", MODEL, "__MACOSX/models/._House.ifc", new byte[] {2}, "._x.ifc", new byte[0]);
    assertReads(write("house.ifczip", zip), "house.ifczip", MODEL);
    assertReads(write("house.ifc", zip), "house.ifc", MODEL);
  }

  /** Without matches of the greatest length Deflate64 is Deflate; only the method's number differs (APPNOTE.TXT 4.4.5: 9). */
  @Test
  void zipByDeflate64() throws IOException {
    byte[] zip = zip("models/House.ifc", MODEL);
    for (int i = 0; i + 12 < zip.length; i++) {
      boolean local = zip[i] == 'P' && zip[i + 1] == 'K' && zip[i + 2] == 3 && zip[i + 3] == 4;
      boolean central = zip[i] == 'P' && zip[i + 1] == 'K' && zip[i + 2] == 1 && zip[i + 3] == 2;
      if (local || central) {
        zip[i + (local ? 8 : 10)] = 9;
      }
    }
    assertReads(write("house.ifczip", zip), "house.ifczip", MODEL);
    zip[zip.length / 4] ^= 0x55;
    Path broken = write("broken.ifczip", zip);
    assertThat(refusal(broken, UnpackLimits.DEFAULT)).isNotNull();
  }

  @Test
  void theTemporaryFileGoes() throws IOException {
    long before = temporaryFiles();
    OpenModel model = new ModelFile(write("a.ifczip", zip("a.ifc", MODEL))).open();
    model.close();
    assertRefuses(write("b.ifczip", zip("a.ifc", new byte[1 << 20])), new UnpackLimits(1000, 10), "1000 bytes");
    assertThat(temporaryFiles()).isLessThanOrEqualTo(before);
  }

  @Test
  void whatIsNoFile() throws IOException {
    Path missing = folder.resolve("missing.ifc");
    assertThat(refusal(missing, UnpackLimits.DEFAULT)).hasMessage(missing + ": expected a model file, found no file of that name");
    assertThat(refusal(folder, UnpackLimits.DEFAULT))
        .hasMessage(folder + ": expected a model file, found a folder; analyze --each and check --each take folders");
  }

  @Test
  void brokenZips() throws IOException {
    byte[] zip = zip("a.ifc", randomText(5000));
    Path cut = write("cut.ifczip", Arrays.copyOf(zip, zip.length / 2));
    assertRefuses(cut, UnpackLimits.DEFAULT, "expected a whole zip file, found a broken one");
    byte[] spoiled = zip.clone();
    Arrays.fill(spoiled, 100, 400, (byte) 0xA5);
    assertRefuses(write("spoiled.ifczip", spoiled), UnpackLimits.DEFAULT, "expected a whole zip file, found a broken one");
    assertRefuses(write("none.ifczip", zip("a.txt", MODEL)), UnpackLimits.DEFAULT, "expected a zip that holds one .ifc file, found none");
    assertRefuses(write("empty.ifczip", zip()), UnpackLimits.DEFAULT, "expected a zip that holds one .ifc file, found none");
    assertRefuses(write("two.ifczip", zip("a.ifc", MODEL, "b.ifc", MODEL)), UnpackLimits.DEFAULT, "found 2 of them");
    assertRefuses(write("xml.ifczip", zip("a.ifcxml", MODEL)), UnpackLimits.DEFAULT, "found ifcXML, which is not supported");
  }

  @Test
  void brokenGzip() throws IOException {
    byte[] gzip = gzip(randomText(5000));
    assertRefuses(write("cut.gz", Arrays.copyOf(gzip, gzip.length / 2)), UnpackLimits.DEFAULT,
        "expected a whole gzip file, found a broken one");
    assertRefuses(write("start.gz", Arrays.copyOf(gzip, 3)), UnpackLimits.DEFAULT, "expected a whole gzip file, found a broken one");
    gzip[gzip.length - 6] ^= 1; // of the checksum
    assertRefuses(write("sum.gz", gzip), UnpackLimits.DEFAULT, "expected a whole gzip file, found a broken one");
  }

  @Test
  void filesThatUnpackToMoreThanTheLimit() throws IOException {
    UnpackLimits limits = new UnpackLimits(10_000, 300);
    assertReads(write("fits.gz", gzip(new byte[10_000])), "fits.gz", new byte[10_000], limits);
    assertRefuses(write("big.gz", gzip(new byte[10_001])), limits, "expected at most 10000 bytes after unpacking, found more");
    assertRefuses(write("big.zip", zip("a.ifc", new byte[10_001])), limits, "expected at most 10000 bytes after unpacking, found more");
  }

  @Test
  void filesThatGrowTooMuch() throws IOException {
    // Zeros pack to about a thousandth, the most that the format can.
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      byte[] zeros = new byte[1 << 20];
      for (int i = 0; i < 80; i++) {
        out.write(zeros);
      }
    }
    assertRefuses(write("bomb.gz", packed.toByteArray()), UnpackLimits.DEFAULT, "at most 300 bytes after unpacking for each packed one");
  }

  private void assertReads(Path path, String name, byte[] expected) throws IOException {
    assertReads(path, name, expected, UnpackLimits.DEFAULT);
  }

  private void assertReads(Path path, String name, byte[] expected, UnpackLimits limits) throws IOException {
    try (OpenModel model = new ModelFile(path, limits).open()) {
      assertThat(model.file()).isEqualTo(name);
      assertThat(model.bytes()).isEqualTo(expected.length);
      model.channel().position(0);
      assertThat(Channels.newInputStream(model.channel()).readAllBytes()).isEqualTo(expected);
    }
  }

  private void assertRefuses(Path path, UnpackLimits limits, String message) {
    assertThat(refusal(path, limits).getMessage()).startsWith(path + ": expected ").contains(message).doesNotContain("\n");
  }

  private static UnreadableModelException refusal(Path path, UnpackLimits limits) {
    UnreadableModelException e = catchThrowableOfType(UnreadableModelException.class, () -> new ModelFile(path, limits).open());
    assertThat(e).isNotNull();
    return e;
  }

  private Path write(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  private static byte[] randomText(int length) {
    byte[] text = new byte[length];
    new Random(1).nextBytes(text);
    return text;
  }

  private static byte[] gzip(byte[] content) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      out.write(content);
    }
    return packed.toByteArray();
  }

  /** @param entries name, content, name, content and so on */
  private static byte[] zip(Object... entries) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(packed)) {
      for (int i = 0; i < entries.length; i += 2) {
        out.putNextEntry(new ZipEntry((String) entries[i]));
        out.write((byte[]) entries[i + 1]);
      }
    }
    return packed.toByteArray();
  }

  private static long temporaryFiles() throws IOException {
    try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return files.filter(f -> f.getFileName().toString().matches("seamledger\\d+\\.ifc")).count();
    }
  }
}
