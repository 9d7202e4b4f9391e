package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * The program as a user gets it: the launcher, the jar with its libraries, rules and samples, in a folder of its own whose path has a space
 * and a letter beyond ASCII. There are no sources, and nothing of the class path of tests. One for all tests of a process.
 */
final class InstalledProgram {

  private static final List<String> PARTS = List.of("seamledger", "target/seamledger.jar", "target/lib", "shapes", "ifc-samples");
  private static final Path ROOT = install();

  private InstalledProgram() {
  }

  /** One run: its exit status, and what it wrote to standard output and standard error, but for progress, which depends on the machine. */
  record Ended(int status, String out, String err) {
  }

  static Path launcher() {
    return ROOT.resolve("seamledger");
  }

  static Path samples() {
    return ROOT.resolve("ifc-samples");
  }

  private static Path install() {
    try {
      Path folder = Files.createTempDirectory("seamledger");
      Runtime.getRuntime().addShutdownHook(new Thread(() -> delete(folder)));
      Path root = Files.createDirectory(folder.resolve("Säge werk"));
      for (String part : PARTS) {
        copy(Path.of(part), root.resolve(part));
      }
      return root;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.createDirectories(to.getParent());
    try (Stream<Path> all = Files.walk(from)) {
      for (Path path : all.toList()) {
        Files.copy(path, to.resolve(from.relativize(path).toString()));
      }
    }
  }

  private static void delete(Path folder) {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    } catch (IOException e) {
      // It is in the system's folder for what may go.
    }
  }

  /** A process in a folder, with nothing of this build in its environment. */
  static ProcessBuilder process(Path folder, List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().keySet().removeIf(name -> name.matches("CLASSPATH|JAVA_TOOL_OPTIONS|JDK_JAVA_OPTIONS|(MAVEN|SEAMLEDGER)_.*"));
    return builder;
  }

  /** Runs the launcher with these words. */
  static Ended run(Path folder, String... words) {
    return run(folder, command(words));
  }

  private static List<String> command(String... words) {
    List<String> command = new ArrayList<>(List.of(launcher().toString()));
    command.addAll(List.of(words));
    return command;
  }

  static Ended run(Path folder, List<String> command) {
    try {
      Path err = Files.createTempFile(folder, "stderr", "");
      Process process = process(folder, command).redirectError(err.toFile()).start();
      process.getOutputStream().close();
      String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
      return new Ended(process.exitValue(), out, Files.readString(err).replaceAll("(?m)^seamledger: .* …\\n", ""));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  /** Starts {@code serve} on a free port with these words, and waits until it says where its page is. */
  static RunningService serve(Path folder, String... words) throws IOException {
    List<String> command = command("serve", "--port", "0");
    command.addAll(List.of(words));
    Path log = Files.createTempFile(folder, "serve", ".log");
    Process process = process(folder, command).redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectError(log.toFile()).start();
    Optional<String> page = Optional.empty();
    while (page.isEmpty() && process.isAlive()) {
      pause();
      page = Files.readString(log).lines().filter(l -> l.startsWith("seamledger: open ") && l.contains(" in a browser")).findFirst();
    }
    assertThat(page).as(Files.readString(log)).isPresent();
    return new Served(process, page.orElseThrow().replaceAll(".*(http://\\S+).*", "$1"));
  }

  private static void pause() {
    try {
      Thread.sleep(50);
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  private record Served(Process process, String url) implements RunningService {
    @Override
    public void close() {
      process.destroy();
      try {
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).as("it ends when asked").isTrue();
      } catch (InterruptedException e) {
        throw new AssertionError(e);
      }
    }
  }
}
