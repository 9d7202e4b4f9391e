package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.seamledger.http.BrowserCase;
import org.seamledger.ledger.TestPostgres;

/** The packaged program's page in a real browser, with a file and with PostgreSQL as its memory. */
@Tag("packaged")
class PackagedPageTest extends BrowserCase {

  @TempDir
  private Path folder;

  @BeforeAll
  static void open() {
    openBrowser(1500, 1000);
  }

  /** Uploads the gatehouse and looks at its ledger: 14 lines of 61.308 m in all, by the formulas of the sample. */
  private void uploadAndSeeTheLedger(String url, String picture) throws IOException {
    browser.get(url);
    see(".drop", "");
    browser.findElement(By.cssSelector("input[type=file]")).sendKeys(InstalledProgram.samples().resolve("gatehouse.ifc").toString());
    assertThat(see(".totals", "14 of 14 junctions").getText()).contains("61.31 m");
    picture(picture);
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
