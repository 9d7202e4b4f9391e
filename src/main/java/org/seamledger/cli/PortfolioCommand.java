package org.seamledger.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.seamledger.finding.Sha256;
import org.seamledger.order.PriceList;
import org.seamledger.portfolio.Cluster;
import org.seamledger.portfolio.EntryStore;
import org.seamledger.portfolio.ModelRun;
import org.seamledger.portfolio.PortfolioModel;
import org.seamledger.portfolio.PortfolioRun;
import org.seamledger.portfolio.PortfolioTables;
import org.seamledger.takeoff.Program;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(name = "portfolio", description = "Analyse every model of a folder by itself, with tables over all of them and one order.",
    footer = {"", "What was analysed is kept in DIR/entries: a second run goes on where the first was, and takes only models",
        "that are new, or another file, rules, roof system or program. Models without a result are rows with a reason.", "",
        "Exit status: 0 every model has a result; 1 so it is, and a finding at or above --fail-on exists; 2 the command",
        "line, shapes or system are wrong; 3 a model has no result; 70 a fault of the program; 74 the output can't be",
        "written."})
final class PortfolioCommand implements Task {

  /** Of the heap, for all else. */
  private static final long RESERVE = 96L << 20;

  @Parameters(paramLabel = "FOLDER", description = "A folder, with all models in it and below (.ifc, .ifc.gz, .ifczip); or a text file "
      + "that lists models, a path a line, from its own folder.")
  private String place;

  @Option(names = "--master", paramLabel = "URL",
      description = "Share the work on an Apache Spark cluster, such as spark://host:7077, yarn "
          + "or local[2]; SPARK_HOME names a Spark 4 on this machine. FOLDER may be of a file system that Spark knows, such as s3a://….")
  private String master;

  @Spec
  private CommandSpec words;

  @Option(names = "--output", paramLabel = "DIR", required = true, description = "Where tables, page and pictures go; made where it isn't.")
  private Path output;

  @Option(names = "--system", paramLabel = "FILE", description = "The roof system: panel, tape, fasteners … (default: built in).")
  private Path system;

  @Option(names = "--shapes", paramLabel = "DIR", description = "Shapes to use instead of the program's own.")
  private Path shapes;

  @Option(names = "--threads", paramLabel = "N", description = "Most models at a time (default: as many as processors).")
  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(names = "--model-seconds", paramLabel = "N", description = "Longest that one model may take (default: ${DEFAULT-VALUE}).",
      defaultValue = "1800")
  private int seconds;

  @Option(names = "--again", description = "Take all models without a result once more, those that can't be read and those given up too.")
  private boolean again;

  @Option(names = "--fail-on", paramLabel = "SEVERITY", description = "violation or warning: exit with 1 where there is such a finding.")
  private AnalyzeCommand.Limit failOn;

  @Mixin
  private PricesChoice prices;

  @Override
  public int run(Session session) {
    if (threads < 1 || seconds < 1) {
      throw new UsageException("--threads and --model-seconds are whole numbers from 1 on");
    }
    if (master != null && session.cluster().isEmpty()) {
      return new ClusterStart(master).run(words.root().commandLine().getParseResult().originalArgs(),
          shapes == null ? session.environment().shapes() : Optional.empty());
    }
    Optional<PriceList> priced = prices.read();
    List<PortfolioModel> models = PortfolioModels.of(place, session.cluster());
    ModelRun runner = runner(session);
    try (EntryStore store = EntryStore.open(output)) {
      Thread tidy = new Thread(store::close, "portfolio ends");
      Runtime.getRuntime().addShutdownHook(tidy);
      int kept = analyse(models, runner, store, session);
      PortfolioTables.Written written = PortfolioTables.write(store, models, output, priced,
          session.cluster().map(Cluster::formats).orElse(List.of()),
          List.of(system == null ? "the default roof system" : String.valueOf(system.getFileName()),
              Program.NAME + " " + Program.version()));
      Runtime.getRuntime().removeShutdownHook(tidy);
      return status(written, kept, session);
    } catch (IOException e) {
      throw new OutputException(output.toString(), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private int analyse(List<PortfolioModel> models, ModelRun runner, EntryStore store, Session session)
      throws IOException, InterruptedException {
    Consumer<String> say = text -> session.err().println(Program.NAME + ": " + text + " …");
    return session.cluster().isPresent() ? session.cluster().get().run(models, runner, store, again, say)
        : new PortfolioRun(runner, store, again, threads, Runtime.getRuntime().maxMemory() - RESERVE, say).run(models);
  }

  private int status(PortfolioTables.Written written, int kept, Session session) {
    session.complain(written.models() + " models, " + kept + " of them known before, " + written.without() + " without a result: "
        + output.resolve("index.html"));
    if (written.without() > 0) {
      return ExitStatus.UNREADABLE;
    }
    boolean isFound = failOn != null && written.worst().filter(s -> s.atLeast(failOn.severity())).isPresent();
    return isFound ? ExitStatus.FINDINGS : ExitStatus.DONE;
  }

  private ModelRun runner(Session session) {
    Optional<Path> rules = Optional.ofNullable(shapes).or(session.environment()::shapes);
    String basis = Program.version() + " " + Program.rules(rules) + " " + systemHash();
    return new ModelRun(session.analyzer(), Optional.ofNullable(system), rules, basis, Duration.ofSeconds(seconds));
  }

  private String systemHash() {
    try {
      return system == null ? "default" : Sha256.hex(Files.readAllBytes(system));
    } catch (IOException e) {
      throw new UsageException("--system " + system + ": can't be read");
    }
  }
}
