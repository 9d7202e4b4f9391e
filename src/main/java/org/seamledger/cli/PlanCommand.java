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

@Command(name = "plan", description = "Draw the roof plan to scale, as SVG: faces, falls, seams, every junction with its length. A large roof"
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

  @Option(names = "--output", paramLabel = "FILE", description = "Write the drawing to FILE instead of standard output: plan.svg is the first"
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
    Takeoff takeoff;
    try (ChosenModels chosen = ChosenModels.of(models, servers)) {
      takeoff = session.analyze(settings.on(chosen, session.environment()));
    }
    if (isDocument) {
      session.print(Optional.of(output), out -> PlanDrawing.write(PlanDrawing.document(takeoff, setup), out));
      return ExitStatus.DONE;
    }
    print(session, PlanDrawing.sheets(takeoff, setup));
    return ExitStatus.DONE;
  }

  private void print(Session session, List<String> drawn) {
    if (sheet != null && (sheet < 1 || sheet > drawn.size())) {
      throw new UsageException("--sheet " + sheet + ": this plan has " + (drawn.size() == 1 ? "1 sheet" : "sheets 1 to " + drawn.size()));
    }
    if (sheet != null || output == null || drawn.size() == 1) {
      int shown = sheet == null ? 1 : sheet;
      if (sheet == null && drawn.size() > 1) {
        session.complain("sheet 1 of " + drawn.size() + "; --sheet N gives another, --output FILE writes them all");
      }
      session.print(Optional.ofNullable(output), out -> PlanDrawing.write(drawn.get(shown - 1), out));
      return;
    }
    for (int i = 0; i < drawn.size(); i++) {
      String text = drawn.get(i);
      Path file = i == 0 ? output : beside(output, i + 1);
      session.requireWritable(file);
      session.print(Optional.of(file), out -> PlanDrawing.write(text, out));
    }
  }

  /** The file for another sheet: {@code plan-2.svg} beside {@code plan.svg}. */
  private static Path beside(Path first, int number) {
    String name = first.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return first.resolveSibling(dot <= 0 ? name + "-" + number : name.substring(0, dot) + "-" + number + name.substring(dot));
  }
}
