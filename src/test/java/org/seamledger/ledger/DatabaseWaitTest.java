package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/** A start that waits for a database that isn't up yet, and one that has no reason to wait. */
@Tag("slow")
class DatabaseWaitTest {

  @TempDir
  private Path folder;
  private final ListAppender<ILoggingEvent> log = new ListAppender<>();
  private final Logger logger = (Logger) LoggerFactory.getLogger(DatabaseWait.class);

  @BeforeEach
  void listen() {
    logger.setLevel(Level.INFO);
    log.start();
    logger.addAppender(log);
  }

  @AfterEach
  void forget() {
    logger.detachAppender(log);
    logger.setLevel(null);
  }

  private Store open(String url, long seconds) {
    return Store.open(folder,
        Optional.of(PostgresAddress.of(url, Optional.of("postgres"), Optional.empty()).patience(Duration.ofSeconds(seconds))));
  }

  private List<String> lines() {
    return List.copyOf(log.list).stream().map(ILoggingEvent::getFormattedMessage).toList();
  }

  private void awaitLines(int count) throws InterruptedException {
    for (int i = 0; i < 300 && lines().size() < count; i++) {
      Thread.sleep(50);
    }
    assertThat(lines()).hasSize(count);
  }

  @Test
  void saysWhatItWaitsForAndGoesOn() throws InterruptedException, ExecutionException {
    String url = TestPostgres.newUrl().replaceFirst("\\?.*", "");
    TestPostgres.refuseConnections(url);
    CompletableFuture<Store> start = CompletableFuture.supplyAsync(() -> open(url, 300));
    awaitLines(1);
    assertThat(lines().get(0)).isEqualTo("The database " + url
        + " does not accept connections now; see ALLOW_CONNECTIONS there. Waiting for it, up to 300 s; Ctrl-C ends it.");
    Thread.sleep(2500);
    assertThat(lines()).as("not with every attempt").hasSize(1);
    assertThatThrownBy(() -> Store.open(folder, Optional.empty())).as("the folder is kept meanwhile")
        .hasMessageContaining("in use by another running server");
    TestPostgres.admitConnections(url);
    start.get().close();
    assertThat(lines()).hasSize(2);
    assertThat(lines().get(1)).matches("The database \\S+ is there now, after \\d+ s");
  }

  @Test
  void givesUpWhenItsTimeIsOverAndLetsTheFolderGo() {
    assertThatThrownBy(() -> open("jdbc:postgresql://127.0.0.1:1/roofs", 2)).isInstanceOf(LedgerException.class)
        .hasMessageMatching("The database jdbc:postgresql://127.0.0.1:1/roofs cannot be reached: the connection is refused;"
            + " start PostgreSQL there, or correct host and port\\. Waited [2-9] s for it\\.");
    Store.open(folder, Optional.empty()).close();
  }

  @Test
  void doesNotWaitForWhatDoesNotPass() throws IOException {
    String missing = "jdbc:postgresql://localhost:" + TestPostgres.port() + "/nobody_made_this";
    assertThatThrownBy(() -> open(missing, 300)).hasMessage("The database " + missing
        + " does not exist; create it, empty and with encoding UTF8, or correct its name.");
    try (FakePostgres server = FakePostgres.refusing("28P01", "password authentication failed")) {
      assertThatThrownBy(() -> open(server.url(), 300)).hasMessageContaining("refuses the password of user postgres");
    }
    assertThat(lines()).isEmpty();
  }

  @Test
  void endsWhenItIsInterrupted() throws InterruptedException {
    CompletableFuture<Throwable> outcome = new CompletableFuture<>();
    Thread start = new Thread(() -> {
      try {
        open("jdbc:postgresql://127.0.0.1:1/roofs", 300).close();
        outcome.complete(null);
      } catch (RuntimeException e) {
        outcome.complete(e);
      }
    });
    start.start();
    awaitLines(1);
    start.interrupt();
    start.join(20_000);
    assertThat(outcome)
        .isCompletedWithValueMatching(e -> e instanceof LedgerException && e.getMessage().contains("the connection is refused"));
  }
}
