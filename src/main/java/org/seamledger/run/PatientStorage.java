package org.seamledger.run;

import java.io.IOException;
import java.util.concurrent.CancellationException;
import org.seamledger.finding.FullDisk;
import org.seamledger.ledger.LedgerException;
import org.seamledger.run.StoredRuns.StorageWork;

/** Does what must not get lost: where the database is away or the disk full, waits until that is over, or until the server ends. */
public final class PatientStorage {

  private static final int PAUSE_MILLIS = 1000;

  private PatientStorage() {
  }

  /** Work with an answer. */
  @FunctionalInterface
  public interface Question<T> {
    T ask() throws IOException;
  }

  public static void run(StorageWork work) throws IOException {
    ask(() -> {
      work.run();
      return null;
    });
  }

  /** @throws CancellationException where the thread is interrupted while the database is away or the disk full */
  public static <T> T ask(Question<T> question) throws IOException {
    while (true) {
      try {
        return question.ask();
      } catch (LedgerException e) {
        if (!e.isTemporary() && e.reason() != LedgerException.Reason.FULL) {
          throw e;
        }
      } catch (IOException e) {
        if (!FullDisk.causes(e)) {
          throw e;
        }
      }
      try {
        Thread.sleep(PAUSE_MILLIS);
      } catch (InterruptedException e) {
        throw new CancellationException("stopped while storage was away");
      }
    }
  }
}
