package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/**
 * Placing a misplaced model on the page, in a real browser with the program's own analysis. Skipped where Chromium and its driver are not
 * installed.
 */
@Tag("slow")
class PlacingPageTest {

  @TempDir
  private static Path profile;
  private static ChromeDriver browser;

  @TempDir
  private Path data;

  @BeforeAll
  static void openBrowser() {
    browser = Chromium.open(profile, 1300, 1000);
  }

  @AfterAll
  static void closeBrowser() {
    if (browser != null) {
      browser.quit();
    }
  }

  private static WebElement see(String css, String text) {
    return Chromium.see(browser, css, text);
  }

  /** The page may draw an element anew at any moment. */
  private static void with(Consumer<WebElement> action, String css, String text) {
    new WebDriverWait(browser, Duration.ofSeconds(40)).ignoring(StaleElementReferenceException.class).until(d -> {
      action.accept(see(css, text));
      return true;
    });
  }

  private static void picture(String name) throws IOException {
    Path folder = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(folder.resolve(name + ".png"), browser.getScreenshotAs(OutputType.BYTES));
  }

  private static long count(String kind) {
    return browser.findElements(By.cssSelector("code")).stream().filter(e -> e.getText().equals(kind)).count();
  }

  private static void type(String label, String value) {
    with(form -> {
      String id = form.findElements(By.tagName("label")).stream().filter(l -> l.getText().equals(label)).findFirst().orElseThrow()
          .getDomAttribute("for");
      WebElement input = form.findElement(By.id(id));
      input.clear();
      input.sendKeys(value);
    }, "form.placing", "");
  }

  @Test
  void oneClickPlacesTheModelAndTypingPlacesItElsewhere() throws IOException {
    Path roof = Path.of("ifc-samples", "infirmary", "roof.ifc");
    Path pipes = Path.of("ifc-samples", "infirmary", "services-misplaced.ifc");
    try (Server server = Server.start(Options.of(new TakeoffAnalyzer(Optional.empty()), data).port(0).models(List.of(roof, pipes)))) {
      browser.get(server.url());
      with(WebElement::click, ".tab", "Findings");
      see("p.placing code", "40,25,-3.1,-90");
      assertThat(count("models/misplaced")).isEqualTo(1);
      picture("placing-offered");
      with(WebElement::click, "p.placing button", "Place services-misplaced.ifc there");
      see("h3", "Placed manually");
      assertThat(count("models/misplaced")).as("it fits now").isZero();
      assertThat(see(".code-group .notes li", "services-misplaced.ifc: 40,25,-3.1,-90").getText()).endsWith("Take it back");
      picture("placing-done");
      with(WebElement::click, "summary", "Place a model manually");
      type("Up, m", "-2.1");
      picture("placing-manually");
      with(WebElement::click, "form.placing button", "Place and analyse again");
      see(".code-group .notes li", "services-misplaced.ifc: 40,25,-2.1,-90");
      with(WebElement::click, "summary", "Place a model manually");
      type("Turn, °", "a quarter");
      with(WebElement::click, "form.placing button", "Place and analyse again");
      see("form.placing .refused", "expected a number, found 'a quarter'");
      with(WebElement::click, ".code-group .notes button", "Take it back");
      see("p.placing code", "40,25,-3.1,-90");
    }
  }
}
