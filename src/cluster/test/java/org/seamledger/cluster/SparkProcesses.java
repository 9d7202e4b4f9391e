package org.seamledger.cluster;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** A standalone cluster on the loopback address: a master and workers, each a process, of jars that Maven has. */
final class SparkProcesses implements AutoCloseable {

  static final String JAVA = Path.of(System.getProperty("java.home"), "bin", "java").toString();
  static final Path HOME = Path.of("target", "spark").toAbsolutePath();

  /** As the script of that name in a release of Spark does: asks Spark's own launcher for the command. */
  private static final String SUBMIT = """
      #!/usr/bin/env bash
      words=()
      while IFS= read -r -d '' word; do
        if [ -n "$word" ]; then words+=("$word"); fi
      done < <("$JAVA_OF_TEST" -cp "$SPARK_HOME/jars/*" org.apache.spark.launcher.Main \\
        org.apache.spark.deploy.SparkSubmit "$@" | tr -d '\\n')
      exec "${words[@]}"
      """;

  private final String master;
  private final Process masterProcess;
  private final List<Process> workers = new ArrayList<>();

  private SparkProcesses(String master, Process masterProcess) {
    this.master = master;
    this.masterProcess = masterProcess;
  }

  /** Starts them; where Maven can't have the jars, the test that asks is skipped and says so. */
  static SparkProcesses start(Path folder, int workers) throws IOException, InterruptedException {
    home(folder);
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    SparkProcesses spark = new SparkProcesses("spark://127.0.0.1:" + port,
        java(folder, "master", "org.apache.spark.deploy.master.Master", "--host", "127.0.0.1", "--port", Integer.toString(port),
            "--webui-port", "0"));
    for (int i = 0; i < workers; i++) {
      spark.workers.add(java(folder, "worker" + i, "org.apache.spark.deploy.worker.Worker", "--host", "127.0.0.1", "--webui-port", "0",
          "--cores", "1", "--memory", "2g", "--work-dir", folder.resolve("work" + i).toString(), spark.master));
    }
    return spark;
  }

  private static void home(Path folder) throws IOException, InterruptedException {
    if (!Files.isRegularFile(HOME.resolve("bin/spark-submit"))) {
      Process maven = maven(folder);
      if (maven == null || !maven.waitFor(10, TimeUnit.MINUTES) || maven.exitValue() != 0) {
        assumeTrue(false, "Maven can't have the jars of Spark (286 MB), so no cluster is tried");
      }
      Files.createDirectories(HOME.resolve("bin"));
      Path script = HOME.resolve("bin/spark-submit");
      Files.writeString(script, SUBMIT);
      script.toFile().setExecutable(true);
    }
  }

  /** Null where there is no Maven on the path. */
  private static Process maven(Path folder) {
    try {
      return new ProcessBuilder("mvn", "-q", "-B", "-f", "src/cluster/spark/pom.xml", "package").redirectErrorStream(true)
          .redirectOutput(folder.resolve("maven.log").toFile()).start();
    } catch (IOException e) {
      return null;
    }
  }

  private static Process java(Path folder, String name, String... words) throws IOException {
    List<String> command =
        new ArrayList<>(List.of(JAVA, "-Xmx512m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp", HOME + "/jars/*"));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(folder.resolve(name + ".log").toFile());
    builder.environment().putAll(variables());
    return builder.start();
  }

  private static Map<String, String> variables() {
    return Map.of("SPARK_HOME", HOME.toString(), "SPARK_SCALA_VERSION", "2.13", "SPARK_LOCAL_IP", "127.0.0.1", "SPARK_PUBLIC_DNS",
        "127.0.0.1", "JAVA_HOME", System.getProperty("java.home"), "JAVA_OF_TEST", JAVA);
  }

  /** For a process that is to use the cluster. */
  Map<String, String> environment() {
    return variables();
  }

  String master() {
    return master;
  }

  /** Kills a worker and the processes that it started, as a machine that goes off would. */
  void killWorker(int number) {
    List<ProcessHandle> below = workers.get(number).descendants().toList();
    workers.get(number).destroyForcibly();
    below.forEach(ProcessHandle::destroyForcibly);
  }

  /** Kills what workers started, and leaves the workers. */
  void killExecutors() {
    workers.stream().filter(Process::isAlive).flatMap(Process::descendants).toList().forEach(ProcessHandle::destroyForcibly);
  }

  @Override
  public void close() throws InterruptedException {
    for (int i = 0; i < workers.size(); i++) {
      killWorker(i);
      workers.get(i).waitFor();
    }
    masterProcess.destroyForcibly().waitFor();
  }
}
