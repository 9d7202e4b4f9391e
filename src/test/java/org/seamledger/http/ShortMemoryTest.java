package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An analysis that takes all memory there is. */
@Tag("slow")
class ShortMemoryTest {

  @TempDir
  private Path data;

  @Test
  void endsTheAnalysisAndNotTheService() throws Exception {
    try (ServedProcess service = new ServedProcess(List.of(), List.of("-Xmx96m"), data)) {
      String hoard = ServedProcess.json(service.upload("hoard")).path("id").textValue();
      JsonNode ended = service.ended(hoard);
      assertThat(ended.path("state").textValue()).as(ended.toString()).isEqualTo("failed");
      assertThat(ended.at("/problem/code").textValue()).isEqualTo("analysis/memory");
      String house = ServedProcess.json(service.upload("house")).path("id").textValue();
      assertThat(service.ended(house).path("state").textValue()).isEqualTo("done");
    }
  }
}
