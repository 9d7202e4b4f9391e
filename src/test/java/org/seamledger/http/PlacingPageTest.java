package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
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

/** Placing a misplaced model on the page, in a real browser with the program's own analysis. */
@Tag("slow")
class PlacingPageTest extends BrowserCase {

  @TempDir
  private Path data;

  @BeforeAll
  static void open() {
    openBrowser(1300, 1000);
  }

  private static long codes(String kind) {
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
      assertThat(codes("models/misplaced")).isEqualTo(1);
      picture("placing-offered");
      with(WebElement::click, "p.placing button", "Place services-misplaced.ifc there");
      see("h3", "Placed manually");
      assertThat(codes("models/misplaced")).as("it fits now").isZero();
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
