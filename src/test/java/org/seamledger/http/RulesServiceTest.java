package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.progress.Progress;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;

/** Rules in view over HTTP, every answer held against the service's own description. */
@Tag("slow")
class RulesServiceTest {

  private static final Path GATEHOUSE = Path.of("ifc-samples", "gatehouse.ifc");

  @TempDir
  private Path folder;
  private TestService service;
  private String analysis;

  @BeforeEach
  void start() {
    service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(GATEHOUSE))
        .samples(Path.of("ifc-samples")));
    analysis = TestService.json(service.get("/api/start")).path("analysis").asText();
    while (!TestService.json(service.get("/api/analyses/" + analysis)).path("state").asText().equals("done")) {
      TestService.pause(100);
    }
  }

  @AfterEach
  void stop() {
    service.close();
  }

  private String levelLine() {
    for (JsonNode l : TestService.json(service.get("/api/rules")).path("limits")) {
      if (l.path("shape").asText().equals("level line")) {
        return l.path("id").asText();
      }
    }
    throw new AssertionError("no such limit");
  }

  @Test
  void whatIsTriedIsWhatTheSavedFolderGives() throws IOException {
    Map<String, Object> edits = Map.of("limits", Map.of(levelLine(), "20"));
    JsonNode tried = TestService.json(service.send("POST", "/api/analyses/" + analysis + "/rules", edits));
    HttpResponse<byte[]> zip = service.send("POST", "/api/rules/folder", edits);
    assertThat(zip.statusCode()).isEqualTo(200);
    Path shapes = Files.createDirectories(folder.resolve("shapes"));
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip.body()), StandardCharsets.UTF_8)) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) {
        Files.write(shapes.resolve(e.getName()), in.readAllBytes());
      }
    }
    assertThat(shapes).isDirectoryContaining("glob:**kinds.ttl");
    long hips = Analysis.run(Inputs.ofFiles(List.of(GATEHOUSE)).withShapes(Optional.of(shapes)), Progress.NONE).junctions().stream()
        .filter(j -> j.kind().equals("hip")).count();
    assertThat(hips).as("its hips rise by 19.47° (atan(tan 26.57° · sin 45°)): level below 20°").isZero();
    long became = 0;
    for (JsonNode pair : tried.path("changed")) {
      became += pair.path("before").path("kind").asText().equals("hip") && pair.path("after").path("kind").asText().equals("ridge") ? 1 : 0;
    }
    assertThat(became).isEqualTo(4);
    assertThat(service.send("POST", "/api/rules/folder", edits).body()).as("the same bytes again").isEqualTo(zip.body());
    assertThat(service.send("POST", "/api/samples/gatehouse.ifc/rules", edits).statusCode()).isEqualTo(200);
    try (var left = Files.list(folder.resolve("data").resolve("scratch"))) {
      assertThat(left.filter(f -> f.getFileName().toString().startsWith("rules-"))).as("nothing stays").isEmpty();
    }
  }

  @Test
  void badRequestsAreRefusedInWords() {
    assertThat(problem("/api/rules", Map.of("limits", Map.of("kinds.ttl:1:1", "2")))).contains("no limit");
    assertThat(problem("/api/rules", Map.of("files", Map.of("kinds.ttl", "this is no Turtle")))).startsWith("kinds.ttl:1:");
    assertThat(problem("/api/rules", Map.of("files", Map.of("kinds.ttl", "")))).contains("sl:kind");
    assertThat(problem("/api/rules", Map.of("files", List.of(1)))).contains("files must be an object");
    assertThat(problem("/api/rules/folder", Map.of("files", Map.of("big.ttl", "#".repeat(1_100_000))))).contains("more than");
    assertThat(problem("/api/samples/none.ifc/rules", Map.of())).contains("no such sample");
    assertThat(problem("/api/analyses/none/rules", Map.of())).isNotEmpty();
  }

  private String problem(String path, Object body) {
    HttpResponse<byte[]> answer = service.send("POST", path, body);
    assertThat(answer.statusCode()).isBetween(400, 499);
    return TestService.json(answer).path("detail").asText();
  }

  @Test
  void detailsForALineComeByHowTheyFit() {
    JsonNode outline = TestService.json(service.get("/api/analyses/" + analysis + "/outline"));
    for (JsonNode j : outline.path("junctions")) {
      JsonNode all = TestService.json(service.get("/api/analyses/" + analysis + "/junctions/" + j.path("id").asText() + "/details"))
          .path("details");
      assertThat(all.path(0).path("id")).as("what the rules chose fits, and nothing else does").isEqualTo(j.path("detail"));
      assertThat(all.path(0).path("fits").asBoolean()).isTrue();
      assertThat(all.path(1).path("fits").asBoolean()).isFalse();
      assertThat(all.path(1).path("misses")).isNotEmpty();
      assertThat(all).hasSameSizeAs(outline.path("detailChoices"));
    }
    String ridge = outline.path("junctions").path(0).path("id").asText();
    HttpResponse<byte[]> other = service.get("/api/analyses/" + analysis + "/sections/" + ridge + ".svg?detail=ridge-vented");
    assertThat(new String(other.body(), StandardCharsets.UTF_8)).contains("Ridge, vented");
    assertThat(service.get("/api/analyses/" + analysis + "/sections/" + ridge + ".svg?detail=no-such").statusCode()).isEqualTo(404);
  }
}
