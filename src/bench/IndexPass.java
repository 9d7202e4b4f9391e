import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import org.seamledger.progress.Progress;
import org.seamledger.step.StepFile;

/**
 * Times the index pass alone: java -cp target/classes src/bench/IndexPass.java MODEL [ROUNDS]
 *
 * <p>Prints, per round, processor and wall time of StepFile.open (reading, hashing, indexing), the processor time that hashing the same
 * bytes takes by itself, and the live heap that the index holds.
 */
public final class IndexPass {

  private static final com.sun.management.OperatingSystemMXBean SYSTEM =
      (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  public static void main(String[] args) throws Exception {
    Path model = Path.of(args[0]);
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 3;
    double megabytes = Files.size(model) / 1e6;
    for (int i = 0; i < rounds; i++) {
      double hash = hashSeconds(model);
      long cpu = SYSTEM.getProcessCpuTime();
      long wall = System.nanoTime();
      try (StepFile file = StepFile.open(Files.newByteChannel(model), model.toString(), Progress.NONE)) {
        double cpuSeconds = (SYSTEM.getProcessCpuTime() - cpu) / 1e9;
        double wallSeconds = (System.nanoTime() - wall) / 1e9;
        System.out.printf("%,d instances, %.0f MB: processor %.2f s = %.0f MB/s (hash and reading alone %.2f s; without: %.0f MB/s),"
                + " wall %.2f s, live heap %.0f MiB%n",
            file.keywords().stream().mapToInt(k -> file.idsOf(k).length).sum(), megabytes,
            cpuSeconds, megabytes / cpuSeconds, hash, megabytes / (cpuSeconds - hash), wallSeconds,
            liveMebibytes());
      }
    }
  }

  private static double hashSeconds(Path model) throws Exception {
    long cpu = SYSTEM.getProcessCpuTime();
    MessageDigest digest = MessageDigest.getInstance("SHA-256");
    try (var channel = Files.newByteChannel(model)) {
      var buffer = java.nio.ByteBuffer.allocate(256 * 1024);
      while (channel.read(buffer) >= 0) {
        buffer.flip();
        digest.update(buffer);
        buffer.clear();
      }
    }
    digest.digest();
    return (SYSTEM.getProcessCpuTime() - cpu) / 1e9;
  }

  private static double liveMebibytes() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return (runtime.totalMemory() - runtime.freeMemory()) / 1048576.0;
  }
}
