package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.PostgresAddress;
import org.seamledger.ledger.TestPostgres;

/** Pages of analyses; one costs as many questions to the database as one analysis, as the driver tells what it sends. */
@Tag("slow")
class PageQueriesTest {

  private static final Logger DRIVER = Logger.getLogger("org.postgresql");
  /** How the driver notes in its log that a statement goes out to be run. */
  private static final String EXECUTE = " FE=> Execute";

  @TempDir
  private Path data;

  /** Counts what threads that answer requests have run; others look after the database now and then. */
  private static final class Count extends Handler {
    private final AtomicInteger statements = new AtomicInteger();

    @Override
    public void publish(LogRecord entry) {
      if (entry.getMessage().startsWith(EXECUTE) && Thread.currentThread().getName().startsWith("Jetty")) {
        statements.incrementAndGet();
      }
    }

    @Override
    public void flush() {
      // Nothing is written.
    }

    @Override
    public void close() {
      // Nothing is held.
    }
  }

  private static int statements(TestService service, String path, int rows) {
    Count count = new Count();
    count.setLevel(Level.ALL);
    Level before = DRIVER.getLevel();
    DRIVER.addHandler(count);
    DRIVER.setUseParentHandlers(false);
    DRIVER.setLevel(Level.FINEST);
    try {
      assertThat(TestService.json(service.get(path)).path("analyses")).hasSize(rows);
    } finally {
      DRIVER.setLevel(before);
      DRIVER.setUseParentHandlers(true);
      DRIVER.removeHandler(count);
    }
    return count.statements.get();
  }

  @Test
  void aPageCostsAsManyStatementsAsARow() {
    Options options = Options.of(new FixtureAnalyzer(), data)
        .database(Optional.of(PostgresAddress.of(TestPostgres.newUrl(), Optional.empty(), Optional.empty())));
    try (TestService service = new TestService(options)) {
      JsonNode house = service.analyse("house");
      String first = house.path("id").textValue();
      for (int i = 0; i < 20; i++) {
        String next = TestService.json(service.send("POST", "/api/analyses/" + first + "/recompute", Map.of("system", Map.of())))
            .path("id").textValue();
        service.await(next);
      }
      int one = statements(service, "/api/analyses?limit=1", 1);
      assertThat(one).as("it is counted").isBetween(4, 20);
      for (String path : List.of("/api/analyses?limit=21", "/api/projects/" + house.path("project").textValue())) {
        assertThat(statements(service, path, 21)).as("%s, and what the project itself costs", path).isLessThanOrEqualTo(one + 2);
      }
    }
  }

  @Test
  void pagesTogetherAreAllOfThemOnceAndTheNewestComesFirst() {
    try (TestService service = TestService.on(data)) {
      List<String> sent = new ArrayList<>();
      for (int i = 0; i < 7; i++) {
        sent.add(0, service.analyse("house").path("id").textValue());
      }
      List<String> listed = new ArrayList<>();
      for (int from = 0; from < 9; from += 3) {
        JsonNode page = TestService.json(service.get("/api/analyses?limit=3&offset=" + from));
        assertThat(page.path("total").intValue()).isEqualTo(7);
        assertThat(page.path("analyses").size()).isEqualTo(Math.min(3, 7 - from));
        page.path("analyses").forEach(a -> listed.add(a.path("id").textValue()));
      }
      assertThat(listed).isEqualTo(sent);
      assertThat(TestService.json(service.get("/api/analyses?limit=0")).path("analyses")).isEmpty();
      assertThat(service.get("/api/analyses?limit=-1").statusCode()).isEqualTo(400);
      assertThat(service.get("/api/analyses?offset=x").statusCode()).isEqualTo(400);
    }
  }
}
