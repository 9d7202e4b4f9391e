import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.PriorityQueue;
import java.util.Random;
import java.util.function.DoubleSupplier;

/**
 * How long models wait for a worker: first come, first served, arrivals by chance (Poisson), each taking as long as one that was measured.
 *
 * <p>{@code java src/bench/QueueSimulation.java} prints the table of src/operators/sizing.md, from src/bench/model-cost.csv;
 * {@code java src/bench/QueueSimulation.java WORKERS PER_SECOND SECONDS exponential|constant} prints the mean time of waiting (s) for times
 * of that mean. The same words give the same figures.
 */
final class QueueSimulation {

  private static final int MODELS = 400_000;
  private static final int[] WORKERS = {1, 4, 16};
  /** Models an hour. */
  private static final int[] RATES = {1_000, 4_000, 18_000};
  /** A worker's processor is not its own, and models of offices are larger than those that were measured: times this. */
  private static final int[] SLOWER = {1, 10};
  private static final int HOUR = 3600;

  private QueueSimulation() {
  }

  public static void main(String[] words) throws IOException {
    if (words.length == 4) {
      Random chance = new Random(1);
      double mean = Double.parseDouble(words[2]);
      DoubleSupplier seconds = words[3].equals("exponential") ? () -> exponential(chance, mean) : () -> mean;
      double[] waits = waits(Integer.parseInt(words[0]), Double.parseDouble(words[1]), seconds, chance);
      System.out.printf(Locale.ROOT, "%.5f%n", Arrays.stream(waits).average().orElseThrow());
      return;
    }
    double[] measured = measured(Path.of("src", "bench", "model-cost.csv"));
    System.out.println("| seconds a model, mean | models an hour | 1 worker | 4 workers | 16 workers |");
    System.out.println("|---|---|---|---|---|");
    for (int slower : SLOWER) {
      for (int rate : RATES) {
        row(measured, slower, rate);
      }
    }
  }

  private static double[] measured(Path file) throws IOException {
    return Files.readAllLines(file).stream().skip(1).mapToDouble(l -> Double.parseDouble(l.substring(0, l.indexOf(',')))).toArray();
  }

  private static void row(double[] measured, int slower, int rate) {
    double mean = Arrays.stream(measured).average().orElseThrow() * slower;
    List<String> cells = new ArrayList<>(List.of(String.format(Locale.ROOT, "%.2f", mean), String.format(Locale.ROOT, "%,d", rate)));
    for (int workers : WORKERS) {
      double load = mean * rate / HOUR / workers;
      Random chance = new Random(1);
      cells.add(load >= 1 ? "grows without end" : words(waits(workers, (double) rate / HOUR,
          () -> measured[chance.nextInt(measured.length)] * slower, chance), load));
    }
    System.out.println("| " + String.join(" | ", cells) + " |");
  }

  private static String words(double[] waits, double load) {
    Arrays.sort(waits);
    return String.format(Locale.ROOT, "%.1f s; 99 %% under %.1f s; busy %.0f %%", Arrays.stream(waits).average().orElseThrow(),
        waits[waits.length / 100 * 99], 100 * load);
  }

  private static double exponential(Random chance, double mean) {
    return -mean * Math.log(1 - chance.nextDouble());
  }

  /** What each model waits until its turn, those of the beginning, when nobody waits yet, left out. */
  private static double[] waits(int workers, double perSecond, DoubleSupplier seconds, Random chance) {
    PriorityQueue<Double> free = new PriorityQueue<>();
    for (int i = 0; i < workers; i++) {
      free.add(0.0);
    }
    double now = 0;
    double[] waits = new double[MODELS];
    for (int i = -MODELS / 10; i < MODELS; i++) {
      now += exponential(chance, 1 / perSecond);
      double begins = Math.max(now, free.remove());
      free.add(begins + seconds.getAsDouble());
      if (i >= 0) {
        waits[i] = begins - now;
      }
    }
    return waits;
  }
}
