package org.seamledger.queue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import org.seamledger.ledger.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What one worker at a time does for all: tickets for what has none, and models that nobody refers to. */
final class Upkeep {

  private static final Logger LOG = LoggerFactory.getLogger(Worker.class);
  private static final Duration BETWEEN_LOOKS_AT_DECISIONS = Duration.ofMinutes(1);
  private static final Duration BETWEEN_CLEANINGS = Duration.ofMinutes(15);

  private final WorkerSetting setting;
  private final Store store;
  private final Tickets tickets;
  private long decisions;
  private long cleaned;

  Upkeep(WorkerSetting setting, Tickets tickets) {
    this.setting = setting;
    this.store = setting.store();
    this.tickets = tickets;
  }

  synchronized void run() {
    store.queue().withoutTicket(setting.limits().perProject()).forEach(tickets::analysis);
    long now = System.nanoTime();
    if (decisions == 0 || now - decisions > BETWEEN_LOOKS_AT_DECISIONS.toNanos()) {
      decisions = now;
      store.choices().behind().stream().filter(id -> store.queue().hasNoTrouble(id)).forEach(tickets::follow);
    }
    if (cleaned == 0 || now - cleaned > BETWEEN_CLEANINGS.toNanos()) {
      cleaned = now;
      clean();
    }
  }

  private void clean() {
    if (store.models().isThere()) {
      try {
        int gone = store.models().clean(store.queue().paths(), setting.limits().kept());
        if (gone > 0) {
          LOG.atInfo().addKeyValue("files", gone).log("models cleaned that no analysis refers to");
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }
}
