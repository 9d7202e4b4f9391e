package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.TestPostgres;
import org.slf4j.LoggerFactory;

/** A database that another server took, on the page as in the log. */
@Tag("slow")
class StoragePageTest extends BrowserCase {

  @TempDir
  private Path data;
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();
  private String url;
  private TestService service;

  @BeforeAll
  static void open() {
    openBrowser(1300, 1000);
  }

  @BeforeEach
  void start() {
    log.start();
    logger().addAppender(log);
    url = TestPostgres.newUrl();
    service = new TestService(options("one"));
  }

  @AfterEach
  void stop() {
    TestPostgres.admitConnections(url);
    service.close();
    logger().detachAppender(log);
  }

  private static Logger logger() {
    return (Logger) LoggerFactory.getLogger("org.seamledger.ledger");
  }

  private Options options(String folder) {
    return Options.of(new FixtureAnalyzer(), data.resolve(folder))
        .database(Optional.of(PostgresAddress.of(url, Optional.empty(), Optional.empty()))).port(0);
  }

  private static boolean reads(String css, String text) {
    return browser.findElements(By.cssSelector(css)).stream().anyMatch(e -> e.isDisplayed() && e.getText().contains(text));
  }

  private List<String> warnings() {
    return List.copyOf(log.list).stream().map(ILoggingEvent::getFormattedMessage).filter(m -> m.contains("in use by another")).toList();
  }

  @Test
  void isSaidAboveEverythingUntilItIsOver() {
    String id = service.analyse("house").path("id").textValue();
    browser.get(service.server.url() + "?analysis=" + id);
    until(() -> reads("#book", "Ridge"));
    assertThat(browser.findElement(By.cssSelector("#health")).getText().contains("in use")).isFalse();
    TestPostgres.refuseConnections(url);
    TestPostgres.cutConnections(url);
    assertThat(service.get("/api/health").statusCode()).isEqualTo(503);
    TestPostgres.admitConnections(url);
    try (TestService other = new TestService(options("two"))) {
      until(() -> browser.findElements(By.cssSelector(".tab")).stream().filter(t -> t.getText().contains("Revisions")).findFirst()
          .orElse(null)).click();
      until(() -> reads("#health .trouble", "The database is in use by another server now, so this one can neither read nor save."
          + " Work on with the other server, or have it stopped."));
      assertThat(warnings()).as("once, with the database's name").containsExactly(
          "The database " + url.replaceFirst("\\?.*", "")
              + " is in use by another running server; stop it, or name another database or schema.");
      assertThat(reads("#health", "jdbc")).isFalse();
    }
    until(() -> !browser.findElement(By.cssSelector("#health")).getText().contains("in use"));
    assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
  }
}
