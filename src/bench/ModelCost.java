import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.seamledger.progress.Progress;
import org.seamledger.run.Result;
import org.seamledger.run.TakeoffAnalyzer;
import org.seamledger.takeoff.Inputs;

/**
 * What each model costs a worker that runs already: processor seconds of the whole process, bytes of the model, of the result, and of the
 * result as it is stored. {@code java -cp 'target/seamledger.jar:target/lib/*' src/bench/ModelCost.java MODEL…} prints a row a model.
 */
final class ModelCost {

  private static final int ROUNDS = 3;

  public static void main(String[] models) throws Exception {
    TakeoffAnalyzer analyzer = new TakeoffAnalyzer(Optional.empty());
    for (String warm : models) {
      seconds(analyzer, warm, OutputStream.nullOutputStream());
    }
    System.out.println("seconds,bytes,result,stored,model");
    for (String model : models) {
      double least = Double.MAX_VALUE;
      ByteArrayOutputStream ledger = new ByteArrayOutputStream();
      for (int i = 0; i < ROUNDS; i++) {
        ledger.reset();
        least = Math.min(least, seconds(analyzer, model, ledger));
      }
      ByteArrayOutputStream stored = new ByteArrayOutputStream();
      try (GZIPOutputStream zip = new GZIPOutputStream(stored)) {
        ledger.writeTo(zip);
      }
      System.out.printf(Locale.ROOT, "%.3f,%d,%d,%d,%s%n", least, Files.size(Path.of(model)), ledger.size(), stored.size(),
          Path.of(model).getFileName());
    }
  }

  private static double seconds(TakeoffAnalyzer analyzer, String model, OutputStream out) throws Exception {
    var system = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long before = system.getProcessCpuTime();
    Path file = Path.of(model);
    Result result = analyzer.analyze(
        Inputs.ofNamedFiles(List.of(new Inputs.NamedFile(file, file.getFileName().toString(), Optional.empty()))), Progress.NONE);
    result.writeLedger(out);
    return (system.getProcessCpuTime() - before) / 1e9;
  }
}
