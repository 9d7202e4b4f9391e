package org.seamledger.cli;

import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.seamledger.portfolio.Cluster;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Failure;
import org.seamledger.run.FailureException;
import org.seamledger.run.Outcome;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/**
 * What a command works with: the process's streams and clock, and the analysis.
 *
 * @param cluster that this process belongs to; empty where it is on one machine alone
 */
record Session(Analyzer<Takeoff> analyzer, Environment environment, OutputStream out, PrintStream err, Clock clock,
    Optional<Cluster> cluster) {

  /**
   * Analyses, with progress on standard error where it takes its time.
   *
   * @throws org.seamledger.run.FailureException where there is no takeoff
   */
  Takeoff analyze(Inputs inputs) {
    return analyze(inputs, TimeLimit.ofProcess());
  }

  Takeoff analyze(Inputs inputs, Duration most) {
    try (LateProgress progress = new LateProgress(err); TimeLimit limit = new TimeLimit(most, err)) {
      Outcome<Takeoff> outcome = analyzer.run(inputs, progress);
      boolean isCutOff = outcome.failure().filter(Failure.Cancelled.class::isInstance).isPresent() && limit.isOver();
      if (isCutOff) {
        throw new FailureException(limit.failure());
      }
      return outcome.orThrow();
    }
  }

  /** Writes a result to a file, or to standard output where there is none. */
  void print(Optional<Path> file, Output.Content content) {
    try {
      if (file.isPresent()) {
        Output.toFile(file.get(), content);
      } else {
        Output.toStream(out, content);
      }
    } catch (IOException e) {
      throw new OutputException(file.map(Path::toString).orElse("to standard output"), e);
    }
  }

  /** One line on standard error. */
  void complain(String message) {
    complain(err, message);
  }

  static void complain(PrintStream err, String message) {
    err.println(Program.NAME + ": " + String.valueOf(message).strip().replaceAll("\\R+\\s*", " "));
    err.flush();
  }

  /**
   * Says no to what would only disturb a terminal.
   *
   * @throws UsageException where standard output is one
   */
  void requireNoTerminal(String what) {
    if (out instanceof FileOutputStream && Terminal.isThere()) {
      throw new UsageException(what + " is binary: name a file with --output FILE, or send standard output to one");
    }
  }

  /** Says no before the work rather than after it. */
  void requireWritable(Path file) {
    if (file == null) {
      return;
    }
    Path folder = file.toAbsolutePath().getParent();
    if (Files.isDirectory(file) || folder == null || !Files.isDirectory(folder)) {
      throw new UsageException("--output " + file + (Files.isDirectory(file) ? " is a folder" : " is in a folder that doesn't exist"));
    }
  }
}
