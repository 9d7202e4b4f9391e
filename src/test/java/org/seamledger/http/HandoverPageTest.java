package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/** The files for other programs on the page, and a file that comes back, in a real browser. */
@Tag("slow")
class HandoverPageTest extends BrowserCase {

  @TempDir
  private Path data;

  @BeforeAll
  static void open() {
    openBrowser(1300, 1000);
  }

  @Test
  void everyFileIsThereAndAnswersComeBack() throws Exception {
    try (TestService service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), data.resolve("store"))
        .models(List.of(Path.of("ifc-samples/gatehouse.ifc"))))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      service.await(id);
      browser.get(service.server.url() + "?analysis=" + id + "&tab=order");
      see("details.handover summary", "Files for other programs");
      browser.get(service.server.url() + "?analysis=" + id + "&tab=findings");
      with(WebElement::click, "details.handover summary", "Files for other programs");
      List<String> links = browser.findElements(By.cssSelector("details.handover a")).stream().map(a -> a.getDomProperty("href")).toList();
      assertThat(links).hasSize(8);
      for (String link : links) {
        URI uri = URI.create(link);
        assertThat(service.get(uri.getRawPath() + (uri.getRawQuery() == null ? "" : "?" + uri.getRawQuery())).statusCode()).as(link)
            .isEqualTo(200);
      }
      Path back = Files.write(data.resolve("back.bcf"), HandoverTest.answered(service.get("/api/analyses/" + id + "/findings.bcf").body(),
          "Closed", "B. Reviewer", "2031-05-31T10:00:00Z", "water is led away"));
      hand(".topics-back input", back);
      see(".topics-back", "1 finding accepted");
      see(".remarks", "water is led away");
      picture("handover");
    }
  }
}
