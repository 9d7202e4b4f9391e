package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
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

/** The order of work and the sealing windows on the page, in a real browser. */
@Tag("slow")
class SequencePageTest extends BrowserCase {

  @TempDir
  private Path data;

  @BeforeAll
  static void open() {
    openBrowser(1440, 1400);
  }

  private static WebElement named(String label) {
    WebElement found = browser.findElements(By.cssSelector(".weather label")).stream().filter(l -> l.getText().equals(label)).findFirst()
        .orElseThrow();
    return browser.findElement(By.id(found.getDomAttribute("for")));
  }

  private static void plan() {
    with(WebElement::click, ".weather button:not([type=button])");
  }

  /** First without weather, then in that of now, then in the demo file's five days, then in that of now again. */
  @Test
  void daysAndWindows() throws Exception {
    try (TestService service = new TestService(Options.of(new TakeoffAnalyzer(Optional.empty()), data.resolve("store"))
        .models(List.of(Path.of("ifc-samples/worked/regular-hip.ifc"))))) {
      String id = TestService.json(service.get("/api/start")).path("analysis").textValue();
      service.await(id);
      browser.get(service.server.url() + "?analysis=" + id + "&tab=sequence");
      see(".at-sequence h2", "33 steps in 7 days for 2");
      see(".at-sequence summary", "Day 1: 9 tasks");
      assertThat(browser.findElement(By.cssSelector(".weather")).isDisplayed()).as("the answer comes before the form").isFalse();
      with(WebElement::click, ".crew-and-weather summary");
      named("Air").sendKeys("12C");
      named("Humidity, %").sendKeys("wet");
      plan();
      see(".weather [role=alert]", "humidity is a relative humidity");
      named("Humidity, %").clear();
      named("Humidity, %").sendKeys("95");
      plan();
      see(".at-sequence li", "Beads: not now: metal too near the dew point");
      hand(".weather input[type=file]", Path.of("ifc-samples", "weather.csv"));
      see(".at-sequence h3", "Sealing windows, weather from weather.csv");
      assertThat(named("Air").isEnabled()).as("one kind of weather at a time").isFalse();
      // Five days, three classes, 24 hours.
      assertThat(browser.findElements(By.cssSelector("table.windows td"))).hasSize(5 * 3 * 24);
      see(".at-sequence li", "no weather to seal in for");
      with(WebElement::click, ".weather button[type=button]");
      see(".at-sequence li", "Beads: not now: metal too near the dew point");
      String both = "/api/analyses/" + id + "/sequence?air=12C&humidity=80";
      assertThat(service.send("POST", both, "time,air_C".getBytes(StandardCharsets.UTF_8)).statusCode()).as("both at once").isEqualTo(400);
      picture("sequence");
    }
  }
}
