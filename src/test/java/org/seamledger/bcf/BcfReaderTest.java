package org.seamledger.bcf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.finding.Remark;
import org.seamledger.finding.TopicAnswer;

class BcfReaderTest {

  private static final String GUID = "7ddc3ef0-0ab7-43f1-918a-45e38b42369c";

  @TempDir
  private Path folder;

  private Path zip(String... namesAndTexts) throws IOException {
    Path file = folder.resolve("back.bcf");
    try (OutputStream out = Files.newOutputStream(file); ZipOutputStream zip = new ZipOutputStream(out)) {
      for (int i = 0; i < namesAndTexts.length; i += 2) {
        zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
        zip.write(namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
      }
    }
    return file;
  }

  private static String version(String id) {
    return "<Version VersionId=\"" + id + "\"/>";
  }

  private static String markup(String status) {
    return "<Markup><Topic Guid=\"" + GUID + "\" TopicStatus=\"" + status + "\"><Title>A leak</Title></Topic></Markup>";
  }

  private BcfFile read(Path file) {
    return BcfReader.read(file, "back.bcf");
  }

  @Test
  void everyCaseOfTheStandardIsRead() throws IOException {
    List<Path> cases = SharedBcf.cases();
    assertThat(cases).hasSize(38);
    for (Path file : cases) {
      BcfFile bcf = read(file);
      assertThat(bcf.version()).as("%s", file).isIn("2.1", "3.0");
      assertThat(bcf.topics()).as("%s", file).isNotEmpty().allSatisfy(t -> assertThat(t.title()).isNotBlank());
    }
  }

  /** Of the standard's own case, as it stands there. */
  @Test
  void whatACaseOfTheStandardSays() throws IOException {
    TopicAnswer topic = read(SharedBcf.folder("testcases/v2.1/MaximumInformation.bcf")).topics().get(0);
    assertThat(topic.guid()).isEqualTo(GUID);
    assertThat(topic.title()).isEqualTo("Maximum Content");
    assertThat(topic.status()).isEqualTo("Open");
    assertThat(topic.verdict()).isEqualTo(TopicAnswer.Verdict.OPEN);
    assertThat(topic.by()).isEqualTo("dangl@iabi.eu");
    assertThat(topic.when()).isEqualTo("2015-06-21T14:22:47Z");
    assertThat(topic.assignee()).isEqualTo("linhard@iabi.eu");
    assertThat(topic.remarks()).hasSize(4);
    assertThat(topic.remarks().get(0)).isEqualTo(new Remark("dangl@iabi.eu", "2015-08-31T12:40:17Z",
        "This is an unmodified topic at the uppermost hierarchical level.\nAll times in the XML are marked as UTC times."));
  }

  @ParameterizedTest
  @CsvSource({"Closed,CLOSED", "RESOLVED,CLOSED", "Re-opened,REOPENED", "Open,OPEN", "In Progress,OPEN", "'',OPEN", "Won't fix,CLOSED"})
  void statuses(String word, TopicAnswer.Verdict verdict) throws IOException {
    assertThat(read(zip("bcf.version", version("2.0"), "a/markup.bcf", markup(word))).topics().get(0).verdict()).isEqualTo(verdict);
  }

  @Test
  void timesWithoutZoneAreUniversal() throws IOException {
    Path file = zip("bcf.version", version("3.0"), "a/markup.bcf", "<Markup><Topic Guid=\"" + GUID.toUpperCase(java.util.Locale.ROOT)
        + "\"><ModifiedDate>2024-05-31T14:00:00.25</ModifiedDate><Comments><Comment Guid=\"x\"><Date>2024-05-31T14:00:00+02:00</Date>"
        + "<Author>A</Author><Comment>so</Comment></Comment></Comments></Topic></Markup>");
    TopicAnswer topic = read(file).topics().get(0);
    assertThat(topic.guid()).isEqualTo(GUID);
    assertThat(topic.when()).isEqualTo("2024-05-31T14:00:00Z");
    assertThat(topic.remarks()).containsExactly(new Remark("A", "2024-05-31T12:00:00Z", "so"));
  }

  private void refused(Path file, String... words) {
    assertThatThrownBy(() -> read(file)).isInstanceOf(BcfFormatException.class).message().contains(words).startsWith("back.bcf")
        .doesNotContain("\n");
  }

  @Test
  void whatIsNoBcf() throws IOException {
    refused(folder.resolve("none.bcf"), "no such file");
    refused(Files.writeString(folder.resolve("text.bcf"), "ISO-10303-21;"), "ZIP archive");
    refused(Files.createFile(folder.resolve("empty.bcf")), "an empty file");
    refused(zip("model.ifc", "ISO-10303-21;"), "bcf.version");
    refused(zip("bcf.version", version("9.9")), "VersionId 2.0, 2.1 or 3.0", "9.9");
    refused(zip("bcf.version", version("2.1"), "a/markup.bcf", "<Markup>\n<Topic"), "a/markup.bcf:2:", "well-formed");
    refused(zip("bcf.version", version("2.1"), "a/markup.bcf", "<Markup/>"), "a Topic with its Guid");
  }

  /** The parser would write of such bytes to standard error by itself. */
  @Test
  void bytesThatAreNoTextAreToldOnceAndInOnePlace() throws IOException {
    String ascii = "<?xml version=\"1.0\" encoding=\"US-ASCII\"?>\n<Markup>\n  \u00E4</Markup>";
    String unknown = "<?xml version='1.0' encoding='X-NOBODYS'?><Markup/>";
    PrintStream usual = System.err;
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    System.setErr(new PrintStream(err, true, StandardCharsets.UTF_8));
    try {
      refused(zip("bcf.version", version("2.1"), "a/markup.bcf", ascii), "a/markup.bcf:3:3", "US-ASCII");
      refused(zip("bcf.version", version("2.1"), "a/markup.bcf", unknown), "a/markup.bcf:1", "X-NOBODYS");
      assertThatThrownBy(() -> XmlBytes.text(new byte[] {'<', 'a', '>', '\n', (byte) 0xC3, '<'}, "a"))
          .hasMessageContaining("a:2:1").hasMessageContaining("UTF-8");
    } finally {
      System.setErr(usual);
    }
    assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  /** XML 1.0, appendix F. */
  @ParameterizedTest
  @CsvSource({"UTF-8,false", "UTF-8,true", "UTF-16BE,true", "UTF-16LE,true", "ISO-8859-1,false"})
  void encodings(Charset charset, boolean marked) {
    String text = "<?xml version='1.0' encoding='" + (marked && charset.name().startsWith("UTF-16") ? "UTF-16" : charset.name())
        + "'?><a>\u00E4</a>";
    assertThat(XmlBytes.text(((marked ? "\uFEFF" : "") + text).getBytes(charset), "a")).isEqualTo(text);
  }

  /** Entities that read a file, that grow without end, and a document type that names another host. */
  @Test
  void documentTypesAreRefused() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret.txt"), "the secret");
    for (String type : List.of("<!DOCTYPE Markup [<!ENTITY e SYSTEM \"" + secret.toUri() + "\">]>",
        "<!DOCTYPE Markup [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY e \"&a;&a;&a;&a;&a;&a;&a;&a;\">]>",
        "<!DOCTYPE Markup SYSTEM \"http://127.0.0.1:9/markup.dtd\">")) {
      refused(zip("bcf.version", version("2.1"), "a/markup.bcf", type + markup("Open").replace("A leak", "&e;")), "a/markup.bcf");
    }
  }

  @Test
  void bombsAreRefused() throws IOException {
    refused(zip("bcf.version", version("2.1"), "a/markup.bcf", markup("Open").replace("A leak", "0".repeat(40 << 20))), "8 MiB");
    refused(zip("bcf.version", version("2.1"), "a/markup.bcf", "<a>".repeat(100_000)), "deep");
  }

  /** What isn't read can be as large as it likes. */
  @Test
  void picturesStayPacked() throws IOException {
    Path file = zip("bcf.version", version("2.1"), "a/markup.bcf", markup("Open"), "a/snapshot.png", "0".repeat(40 << 20));
    assertThat(read(file).topics()).hasSize(1);
  }
}
