package org.seamledger.cluster;

import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.spark.TaskContext;
import org.apache.spark.broadcast.Broadcast;
import org.seamledger.portfolio.EntryStore;
import org.seamledger.portfolio.ModelEntry;
import org.seamledger.portfolio.ModelRun;
import org.seamledger.portfolio.PortfolioModel;
import org.seamledger.run.FailureException;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;

/** The analysis of one model on a machine of the cluster. */
final class ModelTask extends AbstractFunction1<Iterator<SparkModel>, SparkAnswer> implements Serializable {

  /**
   * Attempts that didn't come to an end until the model is taken for the reason. More than on one machine, where such a model is tried by
   * itself: here a machine may have died by something else.
   */
  static final int MOST_ATTEMPTS = 4;

  private final Broadcast<CarriedSettings> settings;

  ModelTask(Broadcast<CarriedSettings> settings) {
    this.settings = settings;
  }

  @Override
  public SparkAnswer apply(Iterator<SparkModel> models) {
    Platform.prepare();
    return answer(models.next(), settings.value().runner(), TaskContext.get().attemptNumber());
  }

  /** @param attempts that didn't come to an end */
  static SparkAnswer answer(SparkModel asked, ModelRun runner, int attempts) {
    try {
      if (!PortfolioModel.isAddress(asked.place())) {
        return answer(asked, Path.of(asked.place()), runner, attempts);
      }
      Path copy = Files.createTempFile("seamledger", ".model");
      try {
        RemoteFiles.fetch(asked.place(), copy);
        return answer(asked, copy, runner, attempts);
      } finally {
        Files.deleteIfExists(copy);
      }
    } catch (FailureException e) {
      return new SparkAnswer(asked.name(), new byte[0], e.failure().message());
    } catch (IOException e) {
      // Of the network or the disk of this machine: Spark tries again elsewhere.
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static SparkAnswer answer(SparkModel asked, Path file, ModelRun runner, int attempts) throws IOException, InterruptedException {
    PortfolioModel model = new PortfolioModel(file, asked.name());
    String hash = model.sha256();
    if (!hash.isEmpty() && hash.equals(asked.known())) {
      return new SparkAnswer(asked.name(), new byte[0], "");
    }
    ModelEntry entry = attempts < MOST_ATTEMPTS ? runner.run(model, hash) : runner.gaveUp(model, hash);
    return new SparkAnswer(asked.name(), EntryStore.packed(entry), "");
  }
}
