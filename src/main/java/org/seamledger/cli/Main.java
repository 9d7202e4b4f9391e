package org.seamledger.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Optional;
import java.util.TimeZone;
import org.seamledger.portfolio.Cluster;
import org.seamledger.takeoff.Analysis;

/** Where the process begins. */
public final class Main {

  private Main() {
  }

  /** Runs one command and exits with its status. */
  public static void main(String[] words) {
    start(words, Optional.empty());
  }

  /** As {@link #main}, with a cluster that commands may use. */
  public static void start(String[] words, Optional<Cluster> cluster) {
    // Not System.out, which swallows failures: a result that did not get out is no success.
    FileOutputStream out = new FileOutputStream(FileDescriptor.out);
    // Results and logs know no local time, and dates in a PDF would else be written in it: other bytes elsewhere.
    TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
    PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
    System.exit(run(words, out, err, cluster));
  }

  /** Nothing gets out of here: what fails before there is a command line, such as a missing class, is a line and a status as well. */
  private static int run(String[] words, FileOutputStream out, PrintStream err, Optional<Cluster> cluster) {
    try {
      LogProvider.install();
      Thread.setDefaultUncaughtExceptionHandler((thread, e) -> Logging.unexpectedEnd(thread.getName(), e));
      return new Cli(Analysis::run, Environment.ofProcess(), Clock.systemUTC(), cluster).run(words, out, err);
    } catch (Throwable e) {
      err.println("seamledger: internal fault: " + String.valueOf(e).replaceAll("\\R+\\s*", " "));
      return ExitStatus.INTERNAL;
    }
  }
}
