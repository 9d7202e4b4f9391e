package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import java.util.stream.StreamSupport;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.CutList;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.TextReport;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.export.submittal.SubmittalPdf;
import org.seamledger.export.submittal.PageSet;
import org.seamledger.http.setting.Options;
import org.seamledger.progress.Progress;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** The drawings that the service sends are the program's own, of the very result beside them, whatever happened since. */
@Tag("slow")
class DrawingsTest {

  private static final Path GATEHOUSE = Path.of("ifc-samples", "gatehouse.ifc");

  @TempDir
  private Path folder;
  private Path model;
  private TestService service;
  private String id;

  @BeforeEach
  void start() throws IOException {
    model = Files.copy(GATEHOUSE, folder.resolve("gatehouse.ifc"));
    open();
    id = TestService.json(service.get("/api/start")).path("analysis").textValue();
    assertThat(service.await(id).path("state").textValue()).isEqualTo("done");
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private void open() {
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(model)));
  }

  private String at(String what) {
    return "/api/analyses/" + id + "/" + what + ".svg";
  }

  private String drawing(String what) {
    HttpResponse<byte[]> answer = service.get(at(what));
    assertThat(answer.statusCode()).as(new String(answer.body(), StandardCharsets.UTF_8)).isEqualTo(200);
    return new String(answer.body(), StandardCharsets.UTF_8);
  }

  private void refused(HttpResponse<byte[]> answer, int status, String code) {
    assertThat(answer.statusCode()).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    assertThat(TestService.json(answer).path("code").textValue()).isEqualTo(code);
  }

  private static Takeoff takeoff(Path model) {
    return Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
  }

  @Test
  void sendsThePlanAndEverySectionAsTheProgramDrawsThem() {
    Takeoff takeoff = takeoff(model);
    assertThat(drawing("plan")).isEqualTo(PlanDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0));
    assertThat(takeoff.junctions()).hasSizeGreaterThan(10).allSatisfy(j -> {
      String junction = j.junction().id();
      assertThat(drawing("sections/" + junction)).isEqualTo(SectionDrawing.svg(takeoff, junction, SheetSetup.DEFAULT));
    });
  }

  @Test
  void sendsTheResultInPartsThatAreTheWhole() {
    JsonNode ledger = service.ledger(id);
    JsonNode outline = TestService.json(service.get("/api/analyses/" + id + "/outline"));
    assertThat(outline.toString().length()).isLessThan(ledger.toString().length() / 2);
    assertThat(outline.path("junctions")).hasSameSizeAs(ledger.path("junctions"));
    for (int i = 0; i < ledger.path("junctions").size(); i++) {
      JsonNode whole = ledger.path("junctions").get(i);
      JsonNode row = outline.path("junctions").get(i);
      assertThat(TestService.json(service.get("/api/analyses/" + id + "/junctions/" + whole.path("id").textValue()))).isEqualTo(whole);
      for (String same : List.of("id", "kind", "lengthM", "path", "faces", "elements", "detail", "findings")) {
        assertThat(row.path(same)).as(same).isEqualTo(whole.path(same));
      }
      for (String form : List.of("tape", "bead", "in-seam")) {
        assertThat(sealed(row, form)).isCloseTo(sealed(whole, form), within(2e-6));
      }
      long fasteners = StreamSupport.stream(whole.path("fasteners").spliterator(), false).mapToLong(f -> f.path("count").longValue()).sum();
      assertThat(row.path("fasteners").longValue()).isEqualTo(fasteners);
    }
    long panels = StreamSupport.stream(ledger.path("quantities").path("panels").spliterator(), false)
        .mapToLong(p -> p.path("count").longValue()).sum();
    assertThat(outline.path("quantities").path("panelSum").path("count").longValue()).isEqualTo(panels).isPositive();
    refused(service.get("/api/analyses/" + id + "/junctions/Jnowhere"), 404, "not-found");
    HttpResponse<byte[]> again = service.get("/api/analyses/" + id + "/outline", "If-None-Match",
        service.get("/api/analyses/" + id + "/outline").headers().firstValue("ETag").orElseThrow());
    assertThat(again.statusCode()).isEqualTo(304);
  }

  @Test
  void sendsThePanelsAndWhatStandsNearTheRoof() {
    assertThat(TestService.json(service.get("/api/analyses/" + id + "/panels"))).isEqualTo(service.ledger(id).path("panels")).isNotEmpty();
    JsonNode around = TestService.json(service.get("/api/analyses/" + id + "/surroundings"));
    assertThat(around.path("leftOut").intValue()).isZero();
    assertThat(around.path("elements").findValuesAsText("ifcClass")).contains("IfcChimney");
    JsonNode chimney = StreamSupport.stream(around.path("elements").spliterator(), false)
        .filter(e -> e.path("ifcClass").textValue().equals("IfcChimney")).findFirst().orElseThrow();
    assertThat(chimney.path("polygons")).as("a box of triangles").hasSizeGreaterThanOrEqualTo(12)
        .allSatisfy(p -> assertThat(p).hasSizeGreaterThanOrEqualTo(3).allSatisfy(at -> assertThat(at).hasSize(3)));
    JsonNode curb = StreamSupport.stream(service.ledger(id).path("junctions").spliterator(), false)
        .filter(j -> j.path("kind").textValue().equals("curb-upslope")).findFirst().orElseThrow();
    double x = curb.path("path").path(0).path(0).doubleValue();
    assertThat(
        StreamSupport.stream(chimney.path("polygons").spliterator(), false).flatMap(p -> StreamSupport.stream(p.spliterator(), false)))
        .as("it stands where its curb is").anyMatch(at -> Math.abs(at.path(0).doubleValue() - x) < 1e-6);
  }

  private static double sealed(JsonNode junction, String form) {
    return StreamSupport.stream(junction.path("seals").spliterator(), false).filter(s -> s.path("form").textValue().equals(form))
        .mapToDouble(s -> s.path("lengthM").doubleValue()).sum();
  }

  @Test
  void sendsTheSubmittalAsTheCommandLineWritesIt() throws IOException {
    ByteArrayOutputStream crew = new ByteArrayOutputStream();
    SubmittalPdf.write(takeoff(model), new SubmittalSetup(SheetSetup.DEFAULT, PageSet.CREW, Optional.empty()), crew);
    assertThat(service.get("/api/analyses/" + id + "/submittal.pdf?pages=crew").body()).isEqualTo(crew.toByteArray());
    assertThat(service.get("/api/analyses/" + id + "/submittal.pdf?pages=roof").statusCode()).isEqualTo(400);
  }

  @Test
  void sendsTheCutListAndTheReportAsTheCommandLineWritesThem() throws IOException {
    Takeoff takeoff = takeoff(model);
    ByteArrayOutputStream cuts = new ByteArrayOutputStream();
    CutList.write(takeoff, cuts);
    assertThat(service.get("/api/analyses/" + id + "/cuts.csv").body()).isEqualTo(cuts.toByteArray());
    ByteArrayOutputStream report = new ByteArrayOutputStream();
    TextReport.write(takeoff, report);
    assertThat(service.get("/api/analyses/" + id + "/report.txt").body()).isEqualTo(report.toByteArray());
  }

  @Test
  void sendsThemCompressedAndOnlyWhenTheyAreNew() throws IOException {
    HttpResponse<byte[]> plain = service.get(at("plan"));
    HttpResponse<byte[]> packed = service.get(at("plan"), "Accept-Encoding", "gzip");
    assertThat(plain.headers().firstValue("Content-Type").orElseThrow()).startsWith("image/svg+xml");
    assertThat(packed.body().length).isLessThan(plain.body().length / 3);
    assertThat(new GZIPInputStream(new ByteArrayInputStream(packed.body())).readAllBytes()).isEqualTo(plain.body());
    String etag = plain.headers().firstValue("ETag").orElseThrow();
    assertThat(service.get(at("plan"), "If-None-Match", etag).statusCode()).isEqualTo(304);
    assertThat(service.get(at("sections/" + junction(0)), "If-None-Match", etag).statusCode()).as("another drawing, another tag")
        .isEqualTo(200);
  }

  @Test
  void letsADrawingThatIsOpenedByItselfRunAndLoadNothing() {
    for (String etag : List.of("\"none\"", service.get(at("plan")).headers().firstValue("ETag").orElseThrow())) {
      assertThat(service.get(at("plan"), "If-None-Match", etag).headers().allValues("Content-Security-Policy"))
          .as("a browser takes the headers of a 304 as those of what it has").hasSize(1).allSatisfy(p -> assertThat(p)
              .startsWith("default-src 'none'; style-src 'unsafe-inline';").doesNotContain("script-src", "img-src", "connect-src"));
    }
  }

  private String junction(int place) {
    return service.ledger(id).path("junctions").get(place).path("id").textValue();
  }

  @Test
  void drawsTheSameAfterARestart() {
    String plan = drawing("plan");
    String section = drawing("sections/" + junction(3));
    service.close();
    CountedAnalyzer analyzer = new CountedAnalyzer(new TakeoffAnalyzer(Optional.empty()), new AtomicInteger());
    service = new TestService(Options.of(analyzer, folder.resolve("data")).models(List.of(model)));
    assertThat(drawing("sections/" + junction(3))).isEqualTo(section);
    assertThat(analyzer.begun()).as("what sections show was stored with the result").hasValue(0);
    assertThat(drawing("plan")).isEqualTo(plan);
    assertThat(analyzer.begun()).as("the plan comes from the model").hasValue(1);
  }

  /** Says how many analyses were begun. */
  private record CountedAnalyzer(Analyzer<Result> analyzer, AtomicInteger begun) implements Analyzer<Result> {
    @Override
    public Result analyze(Inputs inputs, Progress progress) throws IOException {
      begun.incrementAndGet();
      return analyzer.analyze(inputs, progress);
    }

    @Override
    public String version() {
      return analyzer.version();
    }

    @Override
    public String rules() {
      return analyzer.rules();
    }
  }

  @Test
  void drawsTheValuesInForce() {
    String junction = junction(0);
    ObjectNode system = service.ledger(id).path("system").deepCopy();
    ((ObjectNode) system.path("panel")).put("seamHeight", "2 3/8 in");
    assertThat(drawing("sections/" + junction)).contains("seam height 1 1/2 in").doesNotContain("2 3/8 in");
    JsonNode begun = TestService.json(service.send("POST", "/api/analyses/" + id + "/recompute", "{\"system\":" + system + "}"));
    String before = id;
    id = begun.path("id").textValue();
    assertThat(service.await(id).path("state").textValue()).isEqualTo("done");
    assertThat(drawing("sections/" + junction)).contains("seam height 2 3/8 in");
    id = before;
    assertThat(drawing("sections/" + junction)).as("the revision before keeps its own").contains("seam height 1 1/2 in");
  }

  @Test
  void refusesADrawingThatWouldNotFitTheNumbers() throws IOException {
    String junction = junction(0);
    String section = drawing("sections/" + junction);
    service.close();
    Files.copy(Path.of("ifc-samples", "stable.ifc"), model, StandardCopyOption.REPLACE_EXISTING);
    // Opened with no model: the result of before is what is asked for, its model has been overwritten since.
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")));
    refused(service.get(at("plan")), 409, "drawing/changed");
    Files.delete(model);
    refused(service.get(at("profiles")), 409, "drawing/changed");
    assertThat(drawing("sections/" + junction)).as("what it shows was stored beside the numbers").isEqualTo(section);
    assertThat(service.get("/api/analyses/" + id + "/ledger").statusCode()).as("the numbers are there all the same").isEqualTo(200);
  }

  @Test
  void saysWhatIsNotThere() {
    refused(service.get(at("sections/Jnowhere")), 404, "not-found");
    refused(service.get(at("sections/..%2f..%2fplan")), 404, "not-found");
    refused(service.get("/api/analyses/0123456789abcdef0123456789abcdef/plan.svg"), 404, "not-found");
    String broken = service.analyse("no model at all").path("id").textValue();
    refused(service.get("/api/analyses/" + broken + "/plan.svg"), 409, "conflict");
  }

  @Test
  void drawsForManyAtOnceByOneRun() throws SQLException {
    String plan = drawing("plan");
    service.close();
    try (Connection c = database(); Statement s = c.createStatement()) {
      assertThat(s.executeUpdate("DELETE FROM section_part")).as("as in a folder from before sections were stored").isPositive();
    }
    open();
    List<HttpResponse<byte[]>> answers = IntStream.range(0, 8).parallel().mapToObj(i -> service.get(at("plan"))).toList();
    assertThat(answers).allSatisfy(a -> assertThat(new String(a.body(), StandardCharsets.UTF_8)).isEqualTo(plan));
    try (Connection c = database(); Statement s = c.createStatement()) {
      assertThat(s.executeQuery("SELECT COUNT(*) FROM section_part").getInt(1)).as("the run left them there").isPositive();
    }
  }

  private Connection database() throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("data").resolve("ledger.db"));
  }
}
