package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.GateModel;
import org.seamledger.export.SubtotalsCsv;
import org.seamledger.finding.Severity;
import org.seamledger.finding.TopicAnswer;
import org.seamledger.order.PriceList;
import org.seamledger.order.Subtotals;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "analyze", description = "List every junction of the roof in one or several models of one building.",
    footer = {"", "With --each every MODEL stands for itself, and may be a folder (all models in it and below) or a pattern such as",
        "'models/**/*.ifc'; text, json and csv are then a table with a row for each, and the exit status is the worst of all.", "",
        "Exit status: 0 done; 1 done, and a finding at or above --fail-on exists; 2 the command line, shapes or",
        "system are wrong; 3 a model can't be read; 70 a fault of the program; 74 the result can't be written."})
final class AnalyzeCommand implements Task {

  /** Words of {@code --fail-on}. */
  enum Limit {
    violation(Severity.VIOLATION), warning(Severity.WARNING);

    private final Severity severity;

    Limit(Severity severity) {
      this.severity = severity;
    }

    Severity severity() {
      return severity;
    }
  }

  @Parameters(arity = "1..*", paramLabel = "MODEL",
      description = "IFC file: .ifc, gzipped .ifc.gz, or .ifczip; or server:NAME/PROJECT[@REVISION].")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text",
      description = "text for people, json for programs, csv for spreadsheets, cuts for the shop: panels, trims and "
          + "closures; order as csv: everything to buy; findings as csv; "
          + "junit or sarif for pipelines; bcf or bcf-2.1 for coordination tools; turtle or jsonld: the graph; "
          + "xlsx: a workbook that calculates; pdf: sheets for review and for the crew; "
          + "ifc: a copy of the model with the answers in it (default: text).")
  private OutputFormat format;

  @Mixin
  private PricesChoice prices;

  @Mixin
  private SubmittalChoice submittal;

  @Option(names = "--by", paramLabel = "KEY",
      description = "With --format order: divide the order by kind, family, detail, junction, face, storey or model.")
  private Subtotals.By by;

  @Option(names = "--each", description = "Analyse each model by itself instead of all as one building.")
  private boolean each;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Option(names = "--fail-on", paramLabel = "SEVERITY", description = "violation or warning: exit with 1 where there is such a finding.")
  private Limit failOn;

  @Mixin
  private TopicSettings topics;

  @Override
  public int run(Session session) {
    Optional<Severity> limit = Optional.ofNullable(failOn).map(Limit::severity);
    Optional<PriceList> priced = prices.read();
    if (by != null && (format != OutputFormat.order || each)) {
      throw new UsageException("--by divides the order: it goes with --format order, and not with --each");
    }
    if (each) {
      session.requireWritable(output);
      settings.requireNoPlaces();
      topics.requireNoReviews();
      return new EachModel(models, limit, format.forMany(), output).run(session,
          word -> GateModel.of(settings.takeoff(List.of(word), servers, session), List.of(word)));
    }
    List<TopicAnswer> answers = topics.answers();
    Takeoff takeoff = format == OutputFormat.ifc ? copies(answers, session) : result(answers, limit, priced, session);
    return limit.isPresent() && takeoff.findings().stream().anyMatch(f -> f.isOpenAt(limit.get())) ? ExitStatus.FINDINGS : ExitStatus.DONE;
  }

  private Takeoff result(List<TopicAnswer> answers, Optional<Severity> limit, Optional<PriceList> priced, Session session) {
    session.requireWritable(output);
    requireNoTerminal(session);
    OutputFormat.Request request =
        new OutputFormat.Request(models, limit, topics.author(), topics.created(), priced, submittal.setup(priced));
    Takeoff takeoff = settings.takeoff(models, servers, session).withAnswers(answers);
    session.print(Optional.ofNullable(output), out -> {
      if (by != null) {
        SubtotalsCsv.write(takeoff, priced, by, out);
      } else {
        format.write(takeoff, request, out);
      }
    });
    return takeoff;
  }

  /** Models are read twice: for the analysis, and to be copied. */
  private Takeoff copies(List<TopicAnswer> answers, Session session) {
    CopiesOutput copies = new CopiesOutput(Optional.ofNullable(output));
    copies.requireWritable(session, models.size());
    requireNoTerminal(session);
    try (ChosenModels chosen = ChosenModels.of(models, servers)) {
      Takeoff takeoff = session.analyze(settings.on(chosen, session.environment())).withAnswers(answers);
      copies.write(takeoff, chosen.sources(), session);
      return takeoff;
    }
  }

  private void requireNoTerminal(Session session) {
    if (format.isBinary() && output == null) {
      session.requireNoTerminal("--format " + format);
    }
  }
}
