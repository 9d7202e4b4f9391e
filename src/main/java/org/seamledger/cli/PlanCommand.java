package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "plan",
    description = "Draw the roof plan to scale, as SVG: faces, falls, seams, every junction with its length. A large roof"
        + " takes several sheets.")
final class PlanCommand implements Task {

  @Parameters(arity = "1..*", paramLabel = "MODEL", description = "Models as for analyze.")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Mixin
  private SheetChoice sheets;

  @Option(names = "--output", paramLabel = "FILE",
      description = "Write the drawing to FILE instead of standard output: plan.svg is the first"
          + " sheet, with plan-2.svg and so on beside it; plan.html holds all of them, a page each.")
  private Path output;

  @Option(names = "--sheet", paramLabel = "N", description = "Only this sheet (default: all with --output, else the first).")
  private Integer sheet;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    SheetSetup setup = sheets.setup();
    boolean isDocument = output != null && output.toString().toLowerCase(Locale.ROOT).endsWith(".html");
    if (isDocument && sheet != null) {
      throw new UsageException("--sheet is one SVG; a file that ends in .html holds all sheets");
    }
    Takeoff takeoff = settings.takeoff(models, servers, session);
    if (isDocument) {
      session.print(Optional.of(output), out -> PlanDrawing.write(PlanDrawing.document(takeoff, setup), out));
      return ExitStatus.DONE;
    }
    SheetFiles.print(session, PlanDrawing.sheets(takeoff, setup), sheet, output);
    return ExitStatus.DONE;
  }
}
