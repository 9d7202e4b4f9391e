package org.seamledger.cli;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Starts the same command again by {@code spark-submit}, whose process then belongs to the cluster. Nothing of Spark is part of this
 * program: it is the user's, and its own start script knows how it is set up.
 */
final class ClusterStart {

  private static final String VARIABLE = "SPARK_HOME";
  private static final String JAR = "seamledger-cluster.jar";
  private static final String SPARK = "spark-core_2.13-4.";

  private final String master;

  ClusterStart(String master) {
    this.master = master;
  }

  /**
   * Runs the command to its end.
   *
   * @param words of the command line
   * @param shapes that the process there is to use; empty where words say so, or for those of the program file
   * @return its exit status
   * @throws UsageException where there is no Spark of the right release, or this program's jar for it is missing
   */
  int run(List<String> words, Optional<Path> shapes) {
    List<String> command = new ArrayList<>(List.of(spark().toString(), "--master", master, "--name", "seamledger portfolio", "--class",
        "org.seamledger.cluster.ClusterMain", "--conf", "spark.log.level=WARN", jar().toString()));
    command.addAll(words);
    shapes.ifPresent(folder -> command.addAll(List.of("--shapes", folder.toString())));
    try {
      Process process = new ProcessBuilder(command).inheritIO().start();
      Thread end = new Thread(process::destroy, "cluster ends");
      Runtime.getRuntime().addShutdownHook(end);
      int status = process.waitFor();
      Runtime.getRuntime().removeShutdownHook(end);
      return status;
    } catch (IOException e) {
      throw new UsageException("--master: " + command.get(0) + " can't be started: " + e.getMessage());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static Path spark() {
    String home = System.getenv(VARIABLE);
    if (home == null || home.isBlank()) {
      throw new UsageException("--master needs Apache Spark 4 for Scala 2.13 on this machine, the release that the cluster runs: unpack it "
          + "(spark.apache.org/downloads.html, or pip install pyspark) and set " + VARIABLE + " to its folder");
    }
    Path folder = Path.of(home);
    if (core(folder).filter(name -> name.startsWith(SPARK)).isEmpty()) {
      throw new UsageException(VARIABLE + "=" + home + ": expected Apache Spark 4 for Scala 2.13 (jars/" + SPARK + "….jar), found "
          + core(folder).orElse("no Spark"));
    }
    Path script = folder.resolve("bin").resolve(File.separatorChar == '\\' ? "spark-submit.cmd" : "spark-submit");
    if (!Files.isRegularFile(script)) {
      throw new UsageException(VARIABLE + "=" + home + ": expected " + script + ", found nothing of that name");
    }
    return script;
  }

  private static Optional<String> core(Path home) {
    try (Stream<Path> jars = Files.list(home.resolve("jars"))) {
      return jars.map(f -> f.getFileName().toString()).filter(f -> f.startsWith("spark-core_")).sorted().findFirst();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Beside the program's own jar. */
  private static Path jar() {
    try {
      Path here = Path.of(ClusterStart.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      Path jar = here.resolveSibling(JAR);
      if (!Files.isRegularFile(jar)) {
        throw new UsageException("--master needs " + jar + ", which is part of a release and of what mvn -DskipTests package builds");
      }
      return jar;
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }
}
