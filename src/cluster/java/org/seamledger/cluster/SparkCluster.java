package org.seamledger.cluster;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.seamledger.portfolio.Cluster;
import org.seamledger.portfolio.EntryStore;
import org.seamledger.portfolio.ModelRun;
import org.seamledger.portfolio.PortfolioModel;
import org.seamledger.portfolio.TableFormat;
import scala.reflect.ClassTag$;

/** A cluster of Apache Spark, as {@code spark-submit} or {@code --master} names it. */
final class SparkCluster implements Cluster {

  /** Models of one job: as many tasks are held in memory at once. */
  private static final int JOB = 10_000;
  /** Most failures of one task: more than the attempts after which a model is given up. */
  private static final int MOST_FAILURES = 2 * ModelTask.MOST_ATTEMPTS;

  @Override
  public List<PortfolioModel> models(String folder) throws IOException {
    return RemoteFiles.below(folder);
  }

  @Override
  public List<TableFormat> formats() {
    return List.of(new ParquetFormat());
  }

  @Override
  public int run(List<PortfolioModel> models, ModelRun runner, EntryStore store, boolean again, Consumer<String> say)
      throws IOException {
    try (JavaSparkContext spark = new JavaSparkContext(configuration())) {
      Broadcast<CarriedSettings> settings = spark.broadcast(CarriedSettings.of(runner));
      AnswerKeeper keeper = new AnswerKeeper(store, models.size(), say);
      for (int i = 0; i < models.size(); i += JOB) {
        List<SparkModel> job = new ArrayList<>();
        for (PortfolioModel model : models.subList(i, Math.min(i + JOB, models.size()))) {
          job.add(asked(model, store.known(model.name(), runner.basis(), again)));
        }
        // The largest first, lest one that begins last keeps all waiting.
        job.sort(Comparator.comparingLong(SparkModel::bytes).reversed().thenComparing(SparkModel::name));
        keeper.guarded(() -> spark.sc().runJob(spark.parallelize(job, job.size()).rdd(), new ModelTask(settings), keeper,
            ClassTag$.MODULE$.apply(SparkAnswer.class)));
      }
      return keeper.kept();
    }
  }

  private static SparkModel asked(PortfolioModel model, String known) {
    boolean isRemote = PortfolioModel.isAddress(model.place());
    String place = isRemote ? model.place() : Path.of(model.place()).toAbsolutePath().toString();
    return new SparkModel(place, model.name(), isRemote ? 0 : model.roughBytes(), known);
  }

  /** What the user set stays: only what nobody set is set. One task at a time in each process, so that a death hits one model. */
  private static SparkConf configuration() {
    SparkConf conf = new SparkConf();
    conf.setIfMissing("spark.master", "local[1]").setIfMissing("spark.app.name", "seamledger portfolio")
        .setIfMissing("spark.executor.cores", "1").setIfMissing("spark.driver.maxResultSize", "0")
        .setIfMissing("spark.executorEnv.LC_ALL", "C.UTF-8");
    conf.set("spark.task.maxFailures", Integer.toString(Math.max(MOST_FAILURES, conf.getInt("spark.task.maxFailures", 0))));
    conf.set("spark.executor.extraJavaOptions", (conf.get("spark.executor.extraJavaOptions", "") + " " + Platform.OPTIONS).strip());
    return conf;
  }
}
