package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.bcf.BcfReader;
import org.seamledger.http.setting.Options;
import org.seamledger.run.HandoverForm;
import org.seamledger.run.TakeoffAnalyzer;

/** Forms for other programs, from the service. */
class HandoverTest {

  @TempDir
  private Path folder;

  @Test
  void everyFormIsThere() throws Exception {
    Path model = Path.of("ifc-samples/gatehouse.ifc");
    try (TestService service =
        new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(model)))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      service.await(id);
      for (HandoverForm form : HandoverForm.values()) {
        HttpResponse<byte[]> answer = service.get("/api/analyses/" + id + "/" + form.file());
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type")).contains(form.type());
        assertThat(answer.body()).hasSizeGreaterThan(1000);
        assertThat(service.get("/api/analyses/nothing/" + form.file()).statusCode()).isEqualTo(404);
      }
      Path file = Files.write(folder.resolve("f.bcf"), service.get("/api/analyses/" + id + "/findings.bcf").body());
      int findings = TestService.json(service.get("/api/analyses/" + id + "/ledger")).path("findings").size();
      assertThat(BcfReader.read(file, "f.bcf").topics()).hasSize(findings);
    }
  }
}
