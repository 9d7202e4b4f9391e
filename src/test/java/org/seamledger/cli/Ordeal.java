package org.seamledger.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.seamledger.takeoff.Analysis;

/**
 * Runs command lines on bad input, in a process of its own with little memory, and says of each whether it ended as it must: with a
 * result, or with one clear line, within its time.
 *
 * <p>{@code Ordeal files FILE…} analyses files as they are; {@code Ordeal fuzz SEED COUNT FOLDER KIND FILE…} damages them first. Kinds are
 * {@code model}, {@code system}, {@code shapes}, {@code ids}, {@code decisions}, {@code reviews}, {@code prices}, {@code weather},
 * {@code query}. What fails is kept in FOLDER.
 */
final class Ordeal {

  /** Seconds of processor time. */
  private static final double MOST_SECONDS = 5;
  private static final int PATIENCE_MILLIS = 20_000;
  private static final Pattern UNCLEAR =
      Pattern.compile("NaN|Infinity|Exception|\\bat org\\.|internal fault|more memory than|null$", Pattern.MULTILINE);

  /**
   * How a command line ended.
   *
   * @param beside what came to standard error past the program
   */
  private record Ending(int status, String out, String err, String beside, double seconds) {
  }

  private final Path folder;
  private int failures;
  private int results;
  private int refusals;
  private double longest;
  /** What was damaged: a word that stands in it may be quoted. */
  private String input = "";

  private Ordeal(Path folder) {
    this.folder = folder;
  }

  /** One line for each failure, and one with the sum; the exit status is 1 where there was a failure. */
  public static void main(String[] words) throws Exception {
    Ordeal ordeal = new Ordeal(Path.of(words[0].equals("fuzz") ? words[3] : "."));
    if (words[0].equals("fuzz")) {
      ordeal.fuzz(Long.parseLong(words[1]), Integer.parseInt(words[2]), words[4], List.of(words).subList(5, words.length));
    } else {
      for (String file : List.of(words).subList(1, words.length)) {
        Ending e = run("analyze", file, "--format", "json");
        ordeal.judge(file, e, false, "model");
        System.out.printf("%s: status %d, %.1f s, %d characters%n", file, e.status, e.seconds, e.out.length());
      }
    }
    System.out.printf("%d results, %d refusals, %d failures, longest %.1f s%n", ordeal.results, ordeal.refusals, ordeal.failures,
        ordeal.longest);
    System.exit(ordeal.failures == 0 ? 0 : 1);
  }

  private void fuzz(long seed, int count, String kind, List<String> files) throws Exception {
    List<byte[]> originals = new ArrayList<>();
    for (String f : files) {
      originals.add(Files.readAllBytes(Path.of(f)));
    }
    for (int i = 0; i < count; i++) {
      long own = seed * 1_000_003L + i;
      int chosen = (int) Math.floorMod(own * 31, (long) files.size());
      Path original = Path.of(files.get(chosen));
      String name = "input-" + kind + "." + ending(original.getFileName().toString());
      Path file = folder.resolve(kind.equals("shapes") ? "shapes/" + original.getFileName() : name);
      Files.createDirectories(file.getParent());
      byte[] whole = originals.get(chosen);
      Files.write(file, kind.equals("reviews") ? new Mutation(own).ofZip(whole) : new Mutation(own).of(whole));
      input = Files.readString(file, StandardCharsets.ISO_8859_1);
      boolean good = judge(original.getFileName() + " with seed " + own, run(words(kind, file)), true, kind);
      if (!good) {
        Files.copy(file, folder.resolve("failed-" + own + "-" + original.getFileName()),
            java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      }
      if ((i + 1) % 250 == 0) {
        System.out.println((i + 1) + " inputs so far");
      }
      if (kind.equals("shapes")) {
        Files.write(file, originals.get(chosen));
      }
    }
  }

  private static String ending(String name) {
    return name.substring(name.lastIndexOf('.') + 1);
  }

  private static String[] words(String kind, Path file) {
    String house = System.getProperty("ordeal.house", "ifc-samples/gatehouse.ifc");
    return switch (kind) {
      case "system" -> new String[] {"analyze", house, "--format", "json", "--system", file.toString()};
      case "shapes" -> new String[] {"analyze", house, "--format", "json", "--shapes", String.valueOf(file.getParent())};
      case "decisions" -> new String[] {"analyze", house, "--format", "json", "--decisions", file.toString()};
      case "ids" -> new String[] {"check", house, "--format", "json", "--ids", file.toString()};
      case "reviews" -> new String[] {"analyze", house, "--format", "json", "--reviews", file.toString()};
      case "prices" -> new String[] {"analyze", house, "--format", "order", "--prices", file.toString()};
      case "weather" -> new String[] {"sequence", house, "--format", "json", "--weather", file.toString()};
      case "query" -> new String[] {"query", house, "--format", "json", "--sparql", file.toString()};
      default -> new String[] {"analyze", file.toString(), "--format", "json"};
    };
  }

  /** Runs a command line on a thread of its own, so that one that hangs can be told from one that works. */
  private static Ending run(String... words) throws InterruptedException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    ByteArrayOutputStream beside = new ByteArrayOutputStream();
    System.setErr(new PrintStream(beside, true, StandardCharsets.UTF_8));
    int[] status = {-1};
    long[] nanos = {0};
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    Thread t = new Thread(null, () -> {
      status[0] = new Cli(Analysis::run, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
      nanos[0] = threads.getCurrentThreadCpuTime();
    }, "ordeal", 1 << 20);
    t.setDaemon(true);
    t.start();
    while (t.isAlive() && threads.getThreadCpuTime(t.getId()) < 4 * MOST_SECONDS * 1e9) {
      t.join(200);
    }
    if (t.isAlive()) {
      StringBuilder where = new StringBuilder();
      for (StackTraceElement e : t.getStackTrace()) {
        where.append(e.getClassName().contains("seamledger") ? "  " + e + "\n" : "");
      }
      System.out.println("HANGS at\n" + where);
      t.interrupt();
      t.join(PATIENCE_MILLIS);
      System.out.println(t.isAlive() ? "and does not hear an interrupt" : "and ends when it is interrupted");
      return new Ending(-2, "", "hangs", "", 4 * MOST_SECONDS);
    }
    return new Ending(status[0], out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8),
        beside.toString(StandardCharsets.UTF_8).strip(), nanos[0] / 1e9);
  }

  private boolean judge(String what, Ending e, boolean findingsOptional, String kind) throws IOException {
    String last = e.err.lines().filter(l -> !l.endsWith("…")).reduce((a, b) -> b).orElse("");
    String wrong = wrong(e, last, findingsOptional, kind);
    longest = Math.max(longest, e.seconds);
    results += wrong.isEmpty() && e.status < 2 ? 1 : 0;
    refusals += wrong.isEmpty() && e.status >= 2 ? 1 : 0;
    if (!wrong.isEmpty()) {
      failures++;
      System.out.println("FAILED " + what + ": " + wrong);
    }
    return wrong.isEmpty();
  }

  private String wrong(Ending e, String last, boolean findingsOptional, String kind) {
    if (e.seconds > MOST_SECONDS) {
      return String.format("%.1f s", e.seconds);
    }
    if (!e.beside.isEmpty()) {
      return "a library writes by itself: " + e.beside;
    }
    if (e.status == 0 || e.status == 1) {
      boolean finding = e.out.contains("\"severity\"");
      return isUnclear(e.out.contains("\"findings\"") ? e.out.substring(e.out.lastIndexOf("\"findings\"")) : "")
          ? "a finding that is not clear"
          : !finding && !findingsOptional ? "no finding" : !isWhole(e.out, kind) ? "no result" : "";
    }
    boolean expected = e.status == 3 || e.status == 2 && !kind.equals("model");
    return !expected || last.isEmpty() || isUnclear(last) ? "status " + e.status + ": " + last : "";
  }

  private static boolean isWhole(String out, String kind) {
    return kind.equals("prices") ? out.contains("\n") : out.startsWith("{");
  }

  private boolean isUnclear(String said) {
    return UNCLEAR.matcher(said).results().anyMatch(m -> !input.contains(m.group()));
  }
}
