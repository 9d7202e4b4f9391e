package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.SitePhotos;
import org.seamledger.run.TakeoffAnalyzer;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** What becomes of a record: through revisions, when links end, with many at once, against who changes storage, in the owner's hands. */
@Tag("slow")
class RecordKeepingTest {

  private static final Path ROOF = Path.of("ifc-samples", "gatehouse.ifc");

  @TempDir
  private Path folder;
  private TestService service;
  private String id;
  private String project;

  @BeforeEach
  void start() {
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder).models(List.of(ROOF)));
    id = TestService.json(service.get("/api/start")).path("analysis").asText();
    project = service.await(id).path("project").asText();
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private HttpResponse<byte[]> say(String kind, String place, String point, String by, String... headers) {
    return sent(uuid(), kind, place, point, by, headers);
  }

  private HttpResponse<byte[]> sent(String event, String kind, String place, String point, String by, String... headers) {
    return service.send("PUT", "/api/analyses/" + id + "/record/events/" + event, Map.of("kind", kind, "place", place, "point", point, "by",
        by, "at", "2026-05-04T09:30:00Z", "base", state().path("version").asLong(), "text", "said by " + by), headers);
  }

  private static String uuid() {
    return UUID.randomUUID().toString();
  }

  private JsonNode state() {
    return TestService.json(service.get("/api/analyses/" + id + "/record"));
  }

  private JsonNode ofKind(String kind) {
    for (JsonNode p : state().path("places")) {
      if (p.path("kind").asText().equals(kind)) {
        return p;
      }
    }
    throw new IllegalStateException("no " + kind);
  }

  private JsonNode whole() {
    return TestService.json(service.get("/api/analyses/" + id + "/record.json"));
  }

  private void change(String sql) throws IOException, SQLException {
    try (Stream<Path> files = Files.list(folder)) {
      Path file = files.filter(f -> f.toString().endsWith(".db")).findFirst().orElseThrow();
      try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file); Statement s = c.createStatement()) {
        s.execute("PRAGMA busy_timeout = 5000");
        s.execute(sql);
      }
    }
  }

  /** Everything at a place is ticked in its order, and signed off. */
  private void sign(JsonNode place, String by) {
    for (JsonNode item : place.path("items")) {
      assertThat(say("tick", place.path("id").asText(), item.path("id").asText(), by).statusCode()).isEqualTo(201);
    }
    assertThat(say("sign-off", place.path("id").asText(), "", by).statusCode()).isEqualTo(201);
  }

  @Test
  void linkEndsByItselfAndSaysSo() throws Exception {
    JsonNode link = TestService
        .json(service.send("POST", "/api/projects/" + project + "/links", Map.of("scope", "tick", "name", "crew", "days", 1)));
    String[] by = {"Authorization", "Bearer " + link.path("token").asText()};
    assertThat(service.get("/api/analyses/" + id + "/record", by).statusCode()).isEqualTo(200);
    change("UPDATE site_link SET expires = '2026-01-01T00:00:00Z' WHERE id = '" + link.path("id").asText() + "'");
    HttpResponse<byte[]> ended = service.get("/api/analyses/" + id + "/record", by);
    assertThat(ended.statusCode()).isEqualTo(401);
    assertThat(TestService.json(ended).path("detail").asText()).contains("ended on 2026-01-01");
    assertThat(say("note", "", "", "Ida", by).statusCode()).as("nothing more is taken").isEqualTo(401);
    for (Map<String, Object> wrong : List.<Map<String, Object>>of(Map.of("scope", "all", "name", "x", "days", 1),
        Map.of("scope", "tick", "name", "x", "days", 0), Map.of("scope", "tick", "name", "x", "days", 401),
        Map.of("scope", "tick", "name", "", "days", 1))) {
      assertThat(service.send("POST", "/api/projects/" + project + "/links", wrong).statusCode()).as("%s", wrong).isEqualTo(422);
    }
  }

  private static byte[] jpeg(int width, int height) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), "jpeg", out);
    return out.toByteArray();
  }

  /** An APP1 segment with a GPS directory: 47° 30' 0" N, 8° 15' 36" W (Exif 2.32, section 4.6.6), put behind the start of a JPEG. */
  private static byte[] located(byte[] jpeg) {
    ByteBuffer tiff = ByteBuffer.allocate(128).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put("II".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    tiff.putShort((short) 1).putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(26).putInt(0);
    tiff.putShort((short) 4);
    tiff.putShort((short) 1).putShort((short) 2).putInt(2).putInt('N');
    tiff.putShort((short) 2).putShort((short) 5).putInt(3).putInt(80);
    tiff.putShort((short) 3).putShort((short) 2).putInt(2).putInt('W');
    tiff.putShort((short) 4).putShort((short) 5).putInt(3).putInt(104).putInt(0);
    for (int part : new int[] {47, 30, 0, 8, 15, 36}) {
      tiff.putInt(part).putInt(1);
    }
    ByteBuffer whole = ByteBuffer.allocate(jpeg.length + 10 + 128);
    whole.put(jpeg, 0, 2).putShort((short) 0xFFE1).putShort((short) (2 + 6 + 128)).put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    return whole.put(tiff.array()).put(jpeg, 2, jpeg.length - 2).array();
  }

  private HttpResponse<byte[]> photo(String event, String query, byte[] bytes) {
    return service.send("PUT", "/api/analyses/" + id + "/record/photos/" + event + query, bytes);
  }

  @Test
  void photosAreCheckedCountedAndFreedOfTheirPlace() throws Exception {
    byte[] located = located(jpeg(640, 480));
    assertThat(located[3]).as("the notes stand before JFIF's own segment").isEqualTo((byte) 0xE1);
    JsonNode plain = TestService.json(photo(uuid(), "", located));
    assertThat(plain.path("location").asText()).as("nobody asked for it").isEmpty();
    JsonNode kept = TestService.json(photo(uuid(), "?location=keep", located));
    assertThat(kept.path("location").asText()).isEqualTo("47.500000,-8.260000");
    for (JsonNode p : List.of(plain, kept)) {
      byte[] stored = service.get("/api/analyses/" + id + "/record/photos/" + p.path("sha256").asText()).body();
      assertThat(new String(stored, StandardCharsets.ISO_8859_1)).as("metadata").doesNotContain("Exif");
      assertThat(ImageIO.read(new ByteArrayInputStream(stored)).getWidth()).isEqualTo(640);
    }
    assertThat(photo(uuid(), "", Arrays.copyOf(jpeg(640, 480), 400)).statusCode()).as("cut off").isEqualTo(422);
    byte[] heif = "\0\0\0\u0018ftypheic\0\0\0\0".getBytes(StandardCharsets.ISO_8859_1);
    HttpResponse<byte[]> foreign = photo(uuid(), "", heif);
    assertThat(foreign.statusCode()).isEqualTo(422);
    assertThat(TestService.json(foreign).path("detail").asText()).contains("HEIF").contains("JPEG");
    assertThat(photo(uuid(), "", new byte[(16 << 20) + 1]).statusCode()).isEqualTo(413);
    change("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < " + (SitePhotos.MOST - 2) + ") INSERT INTO"
        + " site_photo(project, event, sha256, width, height, location, bytes, jpeg) SELECT '" + project
        + "', 'e' || i, 'h' || i, 1, 1, '',"
        + " 1, x'00' FROM n");
    HttpResponse<byte[]> tooMany = photo(uuid(), "", jpeg(64, 48));
    assertThat(tooMany.statusCode()).isEqualTo(422);
    assertThat(TestService.json(tooMany).path("detail").asText()).contains("1000 photos");
  }

  @Test
  void signedLinesGoOverToTheNextRevisionAndAskAgainWhereTheyChanged() throws Exception {
    JsonNode hip = ofKind("hip");
    sign(hip, "Ida");
    String first = id;
    String place = hip.path("id").asText();
    // The same roof, exported again.
    id = service.analyse(Files.readString(ROOF), "project", "", project).path("id").asText();
    assertThat(id).isNotEqualTo(first);
    assertThat(ofKind("hip").path("id").asText()).isEqualTo(place);
    assertThat(ofKind("hip").path("stage").asText()).isEqualTo("signed");
    assertThat(state().path("coverage").path("signedM").asDouble()).isEqualTo(5.25);
    // Under another roof system, with its fasteners closer.
    id = service.analyse(Files.readString(ROOF), "project", "", project, "system", "system.json",
        Files.readString(Path.of("ifc-samples", "roof-system.json")).replace("\"spacing\": \"4 in\"", "\"spacing\": \"3 in\""))
        .path("id").asText();
    assertThat(ofKind("hip").path("stage").asText()).isEqualTo("recheck");
    assertThat(ofKind("hip").path("signed").path("by").asText()).as("what was signed is kept").isEqualTo("Ida");
    long said = whole().path("chain").size();
    assertThat(say("sign-off", place, "", "Jon").statusCode()).isEqualTo(201);
    assertThat(ofKind("hip").path("stage").asText()).isEqualTo("signed");
    say("withdrawal", place, "", "Jon");
    List<String> kinds = new ArrayList<>();
    whole().path("chain").forEach(e -> kinds.add(e.path("kind").asText() + " " + e.path("by").asText()));
    assertThat(kinds).as("changes after a sign-off are added").hasSize((int) said + 2)
        .containsSubsequence("sign-off Ida", "sign-off Jon", "withdrawal Jon");
  }

  @Test
  void manyAtOnceLoseNothingAndAChangeInStorageShows() throws Exception {
    List<String> points = new ArrayList<>();
    state().path("places").forEach(p -> p.path("items").forEach(i -> points.add(i.path("id").asText())));
    List<String> free = points.stream().filter(p -> p.contains("/before-")).limit(20).toList();
    // Two telephones send the same places at the same time; one of them sends everything twice.
    List<String> sent = IntStream.range(0, 40).mapToObj(i -> uuid()).toList();
    IntStream.range(0, 60).parallel().forEach(i -> {
      String point = free.get(i % 20);
      sent(sent.get(i % 40), "tick", point.split("/")[0], point, i % 40 < 20 ? "Ida" : "Jon");
    });
    JsonNode record = whole();
    assertThat(record.path("chain")).hasSize(40);
    List<String> ids = new ArrayList<>();
    record.path("chain").forEach(e -> ids.add(e.path("id").asText()));
    assertThat(ids).containsExactlyInAnyOrderElementsOf(sent);
    assertThat(RecordServiceTest.chainFault(record)).isEmpty();
    change(
        "UPDATE site_event SET body = replace(body, 'said by Ida', 'said by Eve') WHERE seq = (SELECT MIN(seq) FROM site_event WHERE body"
            + " LIKE '%said by Ida%')");
    assertThat(RecordServiceTest.chainFault(whole())).as("the number of the event that was changed").matches("[0-9]+");
  }

  @Test
  void whatIsNoPointOfThePlaceOrLockedIsRefusedInWords() {
    JsonNode hip = ofKind("hip");
    String place = hip.path("id").asText();
    List<String> locked = new ArrayList<>();
    hip.path("items").forEach(i -> {
      if (i.path("locked").asBoolean()) {
        locked.add(i.path("id").asText());
      }
    });
    assertThat(locked).containsExactly(place + "/cover");
    assertThat(say("deviation", place, place + "/cover", "Ida").statusCode()).as("done otherwise is done").isEqualTo(409);
    assertThat(say("deviation", place, place + "/recheck-before-capping", "Ida").statusCode()).isEqualTo(201);
    assertThat(say("tick", place, place + "/cover", "Ida").statusCode()).as("words don't unlock; a look does").isEqualTo(409);
    assertThat(say("tick", place, place + "/recheck-before-capping", "Ida").statusCode()).isEqualTo(201);
    assertThat(say("tick", place, place + "/cover", "Ida").statusCode()).isEqualTo(201);
    assertThat(say("tick", place, place + "/no-such-point", "Ida").statusCode()).isEqualTo(422);
  }

  @Test
  void ownersRecordSaysWhoWhenWhereAndIsArchivable() throws Exception {
    JsonNode hip = ofKind("hip");
    String place = hip.path("id").asText();
    say("weather", "", "", "Ida");
    say("lot", place, "", "Ida");
    say("deviation", place, hip.path("items").get(0).path("id").asText(), "Jon");
    String shot = uuid();
    String sha = TestService.json(photo(shot, "", jpeg(1200, 900))).path("sha256").asText();
    sent(shot, "photo", place, "", "Ida");
    sign(hip, "Ida");
    JsonNode json = whole();
    for (String list : List.of("weather", "lots", "deviations", "photos")) {
      assertThat(json.path(list)).as(list).hasSize(1);
    }
    assertThat(json.path("photos").get(0).path("width").asInt()).isEqualTo(1200);
    byte[] pdf = service.get("/api/analyses/" + id + "/record.pdf").body();
    assertThat(service.get("/api/analyses/" + id + "/record.pdf").body()).as("the same record, the same bytes").isEqualTo(pdf);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertThat(text).contains("5.25 m (9 %)").contains("2026-05-04 09:30").contains("said by Jon").contains("deviation: said by Jon")
          .contains(json.path("head").asText()).contains(place + ", hip, 5.25 m: signed off").contains("SHA-256 " + sha);
    }
    VeraGreenfieldFoundryProvider.initialise();
    for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFA_3_B, PDFAFlavour.PDFUA_1)) {
      try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
          PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
        assertThat(validator.validate(parser).getTestAssertions().stream().filter(a -> a.getStatus() == TestAssertion.Status.FAILED)
            .map(TestAssertion::getMessage).distinct().toList()).as(flavour.toString()).isEmpty();
      }
    }
  }
}
