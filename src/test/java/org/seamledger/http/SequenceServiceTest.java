package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/** The order of work over HTTP; {@link TestService} holds every answer against the description. */
@Tag("slow")
class SequenceServiceTest {

  @TempDir
  private Path folder;

  private static HttpResponse<byte[]> post(TestService service, String address, byte[] body) {
    return service.send("POST", address, body, "Content-Type", "text/csv");
  }

  @Test
  void withoutWeatherByHandAndFromAFile() throws IOException {
    Path model = Files.copy(Path.of("ifc-samples", "worked", "ridge-40ft.ifc"), folder.resolve("ridge.ifc"));
    try (TestService service =
        new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), folder.resolve("data")).models(List.of(model)))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      service.await(id);
      String at = "/api/analyses/" + id + "/sequence";
      JsonNode plain = TestService.json(service.get(at));
      assertThat(plain.path("steps")).hasSize(30);
      assertThat(plain.has("weather")).isFalse();
      JsonNode now = TestService.json(service.get(at + "?air=12C&humidity=80&sun=hazy&crew=4"));
      assertThat(now.path("crew").path("people").intValue()).isEqualTo(4);
      assertThat(now.path("weather").path("hours")).hasSize(1);
      byte[] weather = Files.readAllBytes(Path.of("ifc-samples", "weather.csv"));
      JsonNode later = TestService.json(post(service, at + "?name=weather.csv&days=3", weather));
      assertThat(later.path("weather").path("hours")).hasSize(72);
      assertThat(later.path("weather").path("source").textValue()).isEqualTo("weather.csv");
      assertThat(new String(post(service, at + "?format=svg", weather).body(), StandardCharsets.UTF_8)).startsWith("<svg ");
      assertThat(new String(service.get(at + "?format=text").body(), StandardCharsets.UTF_8)).contains("Day 1");
      assertThat(new String(service.get(at + "?format=pdf").body(), StandardCharsets.ISO_8859_1)).startsWith("%PDF-");
      refused(service, at);
    }
  }

  private static void refused(TestService service, String at) {
    assertThat(service.get(at + "?air=warm&humidity=80").statusCode()).isEqualTo(400);
    assertThat(service.get(at + "?format=svg").statusCode()).isEqualTo(400);
    assertThat(service.get(at + "?format=doc").statusCode()).isEqualTo(400);
    assertThat(service.get(at + "?crew=1000").statusCode()).isEqualTo(400);
    HttpResponse<byte[]> bad =
        post(service, at + "?name=w.csv", "time,air_C,humidity_%\n2026-01-01T00:00,x,5\n".getBytes(StandardCharsets.UTF_8));
    assertThat(bad.statusCode()).isEqualTo(422);
    assertThat(TestService.json(bad).path("detail").textValue()).startsWith("w.csv: line 2, column 18: expected °C");
  }
}
