package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
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
import org.seamledger.http.Chromium;
import org.seamledger.ledger.TestPostgres;

/** The packaged program's page in a real browser, with a file and with PostgreSQL as its memory. Skipped where there is no Chromium. */
@Tag("packaged")
class PackagedPageTest {

  @TempDir
  private static Path profile;
  private static ChromeDriver browser;

  @TempDir
  private Path folder;

  @BeforeAll
  static void openBrowser() {
    browser = Chromium.open(profile, 1500, 1000);
  }

  @AfterAll
  static void closeBrowser() {
    if (browser != null) {
      browser.quit();
    }
  }

  private static WebElement see(String css, String text) {
    return new WebDriverWait(browser, Duration.ofSeconds(60)).ignoring(StaleElementReferenceException.class).until(b -> browser
        .findElements(By.cssSelector(css)).stream().filter(e -> e.isDisplayed() && e.getText().contains(text)).findFirst().orElse(null));
  }

  /** Uploads the gatehouse and looks at its ledger: 14 lines of 61.308 m in all, by the formulas of the sample. */
  private void uploadAndSeeTheLedger(String url, String picture) throws IOException {
    browser.get(url);
    see(".drop", "");
    browser.findElement(By.cssSelector("input[type=file]")).sendKeys(InstalledProgram.samples().resolve("gatehouse.ifc").toString());
    assertThat(see(".totals", "14 of 14 junctions").getText()).contains("61.31 m");
    Path pictures = Files.createDirectories(Path.of("target", "pictures"));
    Files.write(pictures.resolve(picture + ".png"), browser.getScreenshotAs(OutputType.BYTES));
  }

  private static List<String> names(String url) throws IOException {
    JsonNode all = new ObjectMapper().readTree(URI.create(url).resolve("/api/analyses").toURL().openStream());
    return all.findValuesAsText("name").stream().distinct().toList();
  }

  @Test
  void aSampleIsUploadedAndItsLedgerSeen() throws IOException {
    try (RunningService service = InstalledProgram.serve(folder, "--data", folder.resolve("data").toString())) {
      uploadAndSeeTheLedger(service.url(), "packaged");
      assertThat(browser.findElements(By.cssSelector("main script"))).isEmpty();
    }
    assertThat(folder.resolve("data")).isDirectory();
  }

  @Test
  void postgresRemembersOverARestart() throws IOException {
    String database = TestPostgres.newUrl();
    String user = database.replaceFirst(".*[?&]user=([^&]+).*", "$1");
    Path data = folder.resolve("data");
    String[] words = {"--data", data.toString(), "--database", database};
    assertThat(user).isEqualTo("postgres");
    try (RunningService service = InstalledProgram.serve(folder, words)) {
      uploadAndSeeTheLedger(service.url(), "packaged-postgres");
    }
    try (RunningService service = InstalledProgram.serve(folder, words)) {
      assertThat(names(service.url())).contains("gatehouse.ifc");
    }
    assertThat(data).isDirectoryNotContaining("glob:**.db");
  }
}
