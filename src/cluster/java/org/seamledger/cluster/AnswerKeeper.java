package org.seamledger.cluster;

import java.io.IOException;
import java.util.function.Consumer;
import org.seamledger.portfolio.EntryStore;
import org.seamledger.portfolio.ModelCount;
import org.seamledger.run.Failure;
import org.seamledger.run.FailureException;
import org.seamledger.takeoff.UnusableFileException;
import scala.runtime.AbstractFunction2;
import scala.runtime.BoxedUnit;

/** Keeps each model's entry as soon as it comes, in the process that began. Called by one thread at a time. */
final class AnswerKeeper extends AbstractFunction2<Object, SparkAnswer, BoxedUnit> {

  private final EntryStore store;
  private final ModelCount count;
  private int kept;
  private IOException notKept;
  private String unusable = "";

  AnswerKeeper(EntryStore store, int all, Consumer<String> say) {
    this.store = store;
    this.count = new ModelCount(all, say);
  }

  /** @return number of models whose entry was there before */
  int kept() {
    return kept;
  }

  @Override
  public BoxedUnit apply(Object partition, SparkAnswer answer) {
    if (!answer.unusable().isEmpty()) {
      unusable = answer.unusable();
      throw new IllegalStateException(unusable);
    }
    if (answer.isKnown()) {
      kept++;
    } else {
      keep(answer);
    }
    count.add();
    return BoxedUnit.UNIT;
  }

  private void keep(SparkAnswer answer) {
    try {
      store.put(answer.name(), answer.entry());
    } catch (IOException e) {
      notKept = e;
      throw new IllegalStateException(e);
    }
  }

  /** Runs a job; where it failed since an answer couldn't be kept or said so, throws that rather than what Spark makes of it. */
  void guarded(Runnable job) throws IOException {
    try {
      job.run();
    } catch (RuntimeException e) {
      if (notKept != null) {
        throw notKept;
      }
      if (!unusable.isEmpty()) {
        throw new FailureException(new Failure.UnusableSettings(new UnusableFileException(new IllegalArgumentException(unusable))));
      }
      throw e;
    }
  }
}
