package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.AlternatesCsv;
import org.seamledger.export.AlternatesJson;
import org.seamledger.export.AlternatesReport;
import org.seamledger.order.Alternate;
import org.seamledger.order.AlternateComparison;
import org.seamledger.order.PriceList;
import org.seamledger.takeoff.Inputs;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** One roof under several systems. */
@Command(name = "alternates", description = "Order one roof under several roof systems, side by side.",
    footer = {"",
        "The first alternate is what the others are compared with: the first --system, or the built-in system. Every other --system",
        "is one more, and so is every --alternate, which changes values of the first: 'wide pans: panel.coverage = 18 in;",
        "tape.roll = 40 ft'. A mistake in any of them is refused before anything is computed.", "",
        "Exit status: 0 done; 2 the command line, a system or the prices are wrong; 3 a model can't be read."})
final class AlternatesCommand implements Task {

  /** Forms of the result. */
  enum Form {
    text(AlternatesReport::write), csv(AlternatesCsv::write), json(AlternatesJson::write);

    @FunctionalInterface
    private interface Writer {
      void write(AlternateComparison comparison, OutputStream out) throws IOException;
    }

    private final Writer writer;

    Form(Writer writer) {
      this.writer = writer;
    }
  }

  @Parameters(arity = "1..*", paramLabel = "MODEL", description = "IFC file, or server:NAME/PROJECT[@REVISION].")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Option(names = "--system", paramLabel = "FILE", description = "A roof system; may be given several times.")
  private List<Path> systems = List.of();

  @Option(names = "--alternate", paramLabel = "NAME:FIELD=VALUE[;...]", description = "The first system with other values; several times.")
  private List<String> changes = List.of();

  @Option(names = "--shapes", paramLabel = "DIR", description = "Shapes to use instead of the program's own.")
  private Path shapes;

  @Option(names = "--decisions", paramLabel = "FILE", description = "Manual overrides of kinds and details, and accepted findings.")
  private Path decisions;

  @Mixin
  private PricesChoice prices;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text", description = "text, csv or json (default: text).")
  private Form format;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    Optional<PriceList> priced = prices.read();
    try (AlternateSystems alternatives = AlternateSystems.of(systems, changes); ChosenModels chosen = ChosenModels.of(models, servers)) {
      if (alternatives.all().size() < 2) {
        throw new UsageException("alternates compares at least two systems: give --system or --alternate once more");
      }
      List<Alternate> done = new ArrayList<>();
      for (AlternateSystems.Named system : alternatives.all()) {
        Inputs inputs = Inputs.of(chosen.sources()).withSystem(system.file())
            .withShapes(Optional.ofNullable(shapes).or(session.environment()::shapes));
        done.add(Alternate.of(system.name(), session.analyze(decisions == null ? inputs : inputs.withDecisionsIn(decisions)), priced));
      }
      session.print(Optional.ofNullable(output), out -> format.writer.write(AlternateComparison.of(done), out));
    }
    return ExitStatus.DONE;
  }
}
