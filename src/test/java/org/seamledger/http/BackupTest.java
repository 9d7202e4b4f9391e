package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/** The readme's backup of the data folder, and the way back from it: results, what users said, and the models themselves. */
class BackupTest {

  @TempDir
  private Path folder;

  private static String run(Path place, String... command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).directory(place.toFile()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  private static void delete(Path tree) throws IOException {
    try (Stream<Path> all = Files.walk(tree)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  private TestService start() {
    return new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")));
  }

  private static List<byte[]> told(TestService service, String id) {
    return List.of(service.get("/api/analyses/" + id + "/ledger").body(), service.get("/api/analyses/" + id + "/plan.svg").body(),
        service.get("/api/analyses/" + id + "/reviews").body());
  }

  @Test
  void whatWasBackedUpIsThereAgain() throws Exception {
    Path data = folder.resolve("data");
    String model = Files.readString(Path.of("ifc-samples", "gatehouse.ifc"));
    String id;
    List<byte[]> before;
    try (TestService service = start()) {
      id = service.analyse(model).path("id").textValue();
      String junction = service.ledger(id).path("junctions").path(0).path("id").textValue();
      assertThat(service.review(id, junction, 0, Map.of("note", "seen from the scaffold")).statusCode()).isEqualTo(200);
    }
    try (TestService service = start()) {
      before = told(service, id);
    }
    run(folder, "tar", "-czf", "seamledger-data.tgz", "-C", data.toString(), ".");
    delete(data);
    Files.createDirectories(data);
    run(folder, "tar", "-xzf", "seamledger-data.tgz", "-C", data.toString());
    try (TestService service = start()) {
      List<byte[]> after = told(service, id);
      for (int i = 0; i < before.size(); i++) {
        assertThat(after.get(i)).isEqualTo(before.get(i));
      }
      assertThat(service.get("/api/analyses/" + id + "/plan.svg").statusCode()).isEqualTo(200);
    }
  }
}
