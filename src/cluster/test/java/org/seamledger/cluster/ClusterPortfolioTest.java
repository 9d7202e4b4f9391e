package org.seamledger.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program with a Spark cluster of real processes: the bytes are those of one machine, whatever dies on the way. */
@Tag("packaged")
class ClusterPortfolioTest {

  private static final Path PROGRAM = Path.of("target", "seamledger.jar").toAbsolutePath();

  private static final int MODELS = Integer.getInteger("seamledger.models", 0);

  @TempDir
  private Path folder;

  private Path models() throws IOException {
    Path models = Files.createDirectories(folder.resolve("Häuser"));
    try (Stream<Path> samples = Files.list(Path.of("ifc-samples"))) {
      for (Path sample : samples.filter(f -> f.toString().endsWith(".ifc") && f.toFile().length() < 30_000).sorted().toList()) {
        Files.copy(sample, models.resolve(sample.getFileName()));
      }
    }
    Files.writeString(models.resolve("broken.ifc"), "%PDF-1.7");
    more(models);
    return models;
  }

  /** As many as a trial by hand asks for: {@code -Dseamledger.models=1000}; no two of the same bytes. */
  private static void more(Path models) throws IOException {
    List<Path> first = new ArrayList<>();
    try (Stream<Path> all = Files.list(models)) {
      all.filter(f -> !f.endsWith("broken.ifc")).sorted().forEach(first::add);
    }
    for (int i = first.size() + 1; i < MODELS; i++) {
      Path sample = first.get(i % first.size());
      String text = Files.readString(sample).replaceFirst("DATA;", "DATA;\n/* " + i + " */");
      Path part = Files.createDirectories(models.resolve("part" + i % 10));
      Files.writeString(part.resolve(i + "-" + sample.getFileName()), text);
    }
  }

  private Process start(Map<String, String> environment, String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(SparkProcesses.JAVA, "-Xshare:auto", "-XX:TieredStopAtLevel=1", "-jar",
        PROGRAM.toString(), "portfolio"));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile());
    builder.environment().remove("SPARK_HOME");
    builder.environment().putAll(environment);
    return builder.start();
  }

  private int end(Process process) throws InterruptedException {
    assertThat(process.waitFor(5 + MODELS / 20, TimeUnit.MINUTES)).isTrue();
    return process.exitValue();
  }

  private String log() throws IOException {
    return Files.readString(folder.resolve("log"));
  }

  /** What both ways write, by its path. */
  private static Map<String, String> content(Path output) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(output)) {
      for (Path file : all.filter(f -> Files.isRegularFile(f) && !f.toString().endsWith(".parquet")).toList()) {
        files.put(output.relativize(file).toString(), Files.readString(file, StandardCharsets.ISO_8859_1));
      }
    }
    return files;
  }

  @Test
  void withoutSparkOneLineSaysWhatToInstall() throws Exception {
    Path models = models();
    assertThat(end(start(Map.of(), models.toString(), "--output", folder.resolve("out").toString(), "--master", "local[2]")))
        .isEqualTo(2);
    assertThat(log()).startsWith("seamledger: --master needs Apache Spark 4").hasLineCount(1);
    Path none = Files.createDirectories(folder.resolve("none"));
    assertThat(end(start(Map.of("SPARK_HOME", none.toString()), models.toString(), "--output", folder.resolve("out").toString(),
        "--master", "local[2]"))).isEqualTo(2);
    assertThat(log()).contains("found no Spark").hasLineCount(1);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  /** One worker is killed with its executor as soon as the first results are there, and an executor of the other one a little later. */
  @Test
  void killedMachinesChangeNothing() throws Exception {
    Path models = models();
    Path loop = folder.resolve("loop");
    assertThat(end(start(Map.of(), models.toString(), "--output", loop.toString()))).as(log()).isEqualTo(3);
    Path shared = folder.resolve("shared");
    try (SparkProcesses spark = SparkProcesses.start(folder, 2)) {
      Process driver = start(spark.environment(), models.toString(), "--output", shared.toString(), "--master", spark.master());
      awaitEntries(shared, 3, driver);
      spark.killWorker(0);
      awaitEntries(shared, Math.max(6, MODELS / 2), driver);
      spark.killExecutors();
      assertThat(end(driver)).as(log()).isEqualTo(3);
    }
    assertThat(content(shared)).isEqualTo(content(loop));
    sameNumbersInParquet(shared);
  }

  private void awaitEntries(Path output, int least, Process driver) throws Exception {
    long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(2 + MODELS / 20);
    while (entries(output) < least) {
      assertThat(driver.isAlive() && System.nanoTime() < end).as(log()).isTrue();
      Thread.sleep(50);
    }
  }

  private static long entries(Path output) throws IOException {
    if (!Files.isDirectory(output.resolve("entries"))) {
      return 0;
    }
    try (Stream<Path> all = Files.walk(output.resolve("entries"))) {
      return all.filter(f -> f.toString().endsWith(".json.gz")).count();
    }
  }

  /** Parquet, read by its own library in a process that has Spark's jars, against the comma-separated values. */
  private void sameNumbersInParquet(Path output) throws Exception {
    Process process = new ProcessBuilder(SparkProcesses.JAVA, "-cp", Path.of("target", "test-classes") + File.pathSeparator
        + SparkProcesses.HOME.resolve("jars") + "/*", ParquetText.class.getName(), output.resolve("kinds.parquet").toString())
        .redirectOutput(folder.resolve("parquet").toFile()).redirectError(folder.resolve("log").toFile()).start();
    assertThat(end(process)).as(log()).isZero();
    List<String> rows = Files.readAllLines(output.resolve("kinds.csv"));
    assertThat(Files.readAllLines(folder.resolve("parquet"))).hasSizeGreaterThan(5)
        .isEqualTo(rows.stream().skip(1).map(row -> row.split(",")).map(c -> c[0] + " " + Double.parseDouble(c[3])).toList());
  }
}
