package org.seamledger.cli;

import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.seamledger.portfolio.Cluster;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Failure;
import org.seamledger.source.ModelServerException;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/**
 * From words to an exit status. Whatever happens, people get one line on standard error; a stack trace is shown only to who asks for
 * it by setting {@code SEAMLEDGER_TRACE=1}.
 */
final class Cli {

  @Command(name = Program.NAME, description = "Finds what seals every junction of a standing-seam metal roof, from its building model.",
      mixinStandardHelpOptions = true,
      versionProvider = VersionText.class, scope = CommandLine.ScopeType.INHERIT,
      synopsisSubcommandLabel = "COMMAND", usageHelpWidth = 100,
      footer = {"", "Exit status: 0 done; 1 done, and what --fail-on names was found; 2 the command line or a file of",
          "settings is wrong; 3 a model can't be read, or a server did not do what it was asked; 70 a fault",
          "of this program; 74 the result can't be written."})
  private static final class Top {
  }

  /** In the order of the help. */
  private static final List<Class<? extends Task>> COMMANDS = List.of(AnalyzeCommand.class, AlternatesCommand.class, CheckCommand.class,
      CompareCommand.class, ExplainCommand.class, LinksCommand.class, PlanCommand.class, PortfolioCommand.class, ProfilesCommand.class,
      QueryCommand.class, RecordCommand.class, SectionCommand.class, SequenceCommand.class, ProjectsCommand.class, ServeCommand.class,
      WorkCommand.class, WatchCommand.class, WarmUpCommand.class);

  static final class VersionText implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {Program.NAME + " " + Program.version()};
    }
  }

  private final Analyzer<Takeoff> analyzer;
  private final Environment environment;

  private final Clock clock;
  private final Optional<Cluster> cluster;

  Cli(Analyzer<Takeoff> analyzer, Environment environment) {
    this(analyzer, environment, Clock.systemUTC(), Optional.empty());
  }

  /**
   * @param clock when things happen, for commands that tell; no result depends on it
   * @param cluster that this process belongs to
   */
  Cli(Analyzer<Takeoff> analyzer, Environment environment, Clock clock, Optional<Cluster> cluster) {
    this.analyzer = analyzer;
    this.environment = environment;
    this.clock = clock;
    this.cluster = cluster;
  }

  /** Runs one command line. */
  int run(String[] words, OutputStream out, PrintStream err) {
    try {
      CommandLine line = new CommandLine(new Top());
      commands(words).forEach(line::addSubcommand);
      line.setCaseInsensitiveEnumValuesAllowed(true);
      return run(line.parseArgs(words), new Session(analyzer, environment, out, err, clock, cluster));
    } catch (ParameterException e) {
      return fail(err, ExitStatus.USAGE, usage(e));
    } catch (UsageException e) {
      return fail(err, ExitStatus.USAGE, e.getMessage());
    } catch (OutputException e) {
      return fail(err, ExitStatus.OUTPUT, e.getMessage());
    } catch (Throwable e) {
      // Errors too: a class that is missing is none of the exceptions.
      return fail(err, Failure.of(e));
    }
  }

  /** The command that is asked for, or else all: to read the options of all takes a good part of what a small model takes. */
  private static List<Class<? extends Task>> commands(String[] words) {
    return words.length == 0 ? COMMANDS
        : COMMANDS.stream().filter(c -> c.getAnnotation(Command.class).name().equals(words[0])).findFirst()
            .<List<Class<? extends Task>>>map(List::of).orElse(COMMANDS);
  }

  private int fail(PrintStream err, Failure failure) {
    if (failure instanceof Failure.UnusableSettings) {
      failure.message().lines().forEach(fault -> fail(err, ExitStatus.USAGE, fault));
      return ExitStatus.USAGE;
    }
    if (failure instanceof Failure.ServerFailure server) {
      boolean isNotSetUp = server.thrown().reason() == ModelServerException.Reason.NOT_SET_UP;
      return fail(err, isNotSetUp ? ExitStatus.USAGE : ExitStatus.UNREADABLE, failure.message());
    }
    if (failure instanceof Failure.OutOfMemory memory) {
      return fail(err, ExitStatus.UNREADABLE,
          "the model needs more memory than " + memory.mebibytes() + " MiB; give more, such as SEAMLEDGER_JAVA_OPTS=-Xmx2g");
    }
    if (failure instanceof Failure.TooLong) {
      return fail(err, ExitStatus.UNREADABLE, failure.message() + " " + TimeLimit.VARIABLE + " sets another limit, in seconds.");
    }
    if (failure instanceof Failure.DiskFull) {
      return fail(err, ExitStatus.OUTPUT, failure.message() + " Temporary files go to " + System.getProperty("java.io.tmpdir")
          + "; make room there, or name another folder, such as SEAMLEDGER_JAVA_OPTS=-Djava.io.tmpdir=FOLDER");
    }
    return failure instanceof Failure.UnreadableModel ? fail(err, ExitStatus.UNREADABLE, failure.message())
        : fault(err, failure.cause().orElseGet(() -> new CancellationException(failure.message())));
  }

  private static int run(ParseResult parsed, Session session) {
    CommandLine asked = parsed.asCommandLineList().get(parsed.asCommandLineList().size() - 1);
    if (asked.isUsageHelpRequested()) {
      session.print(Optional.empty(), out -> print(out, writer -> asked.usage(writer)));
      return ExitStatus.DONE;
    }
    if (asked.isVersionHelpRequested()) {
      session.print(Optional.empty(), out -> print(out, writer -> asked.printVersionHelp(writer)));
      return ExitStatus.DONE;
    }
    if (asked.getCommand() instanceof Task task) {
      return task.run(session);
    }
    throw new UsageException(
        "say what to do: analyze, check, compare, explain, plan, portfolio, query, record, section, projects, serve, watch"
            + " or work; --help tells more");
  }

  private static void print(OutputStream out, java.util.function.Consumer<PrintWriter> text) {
    PrintWriter writer = new PrintWriter(out, false, StandardCharsets.UTF_8);
    text.accept(writer);
    writer.flush();
  }

  private static String usage(ParameterException e) {
    String name = e.getCommandLine().getCommandSpec().qualifiedName(" ");
    return Suggestion.unknownCommand(e).or(() -> e.getMessage().lines().findFirst()).orElse("the command line is wrong") + Suggestion.of(e)
        + "; " + name + " --help tells more";
  }

  private int fault(PrintStream err, Throwable e) {
    fail(err, ExitStatus.INTERNAL, "internal fault: " + e + "; please report it with the output under SEAMLEDGER_TRACE=1");
    if (environment.traces()) {
      e.printStackTrace(err);
    }
    return ExitStatus.INTERNAL;
  }

  private static int fail(PrintStream err, int status, String message) {
    Session.complain(err, message);
    return status;
  }
}
