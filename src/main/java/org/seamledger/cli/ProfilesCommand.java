package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import org.seamledger.export.ProfileDrawing;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "profiles", description = "Draw how each trim is folded, as SVG: legs, bends, girth, a small picture each.")
final class ProfilesCommand implements Task {

  @Parameters(arity = "1..*", paramLabel = "MODEL", description = "Models as for analyze.")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Mixin
  private SheetChoice sheets;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the drawing to FILE instead of standard output: the first sheet,"
      + " with the others beside it.")
  private Path output;

  @Option(names = "--sheet", paramLabel = "N", description = "Only this sheet (default: all with --output, else the first).")
  private Integer sheet;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    SheetSetup setup = sheets.setup();
    Takeoff takeoff = settings.takeoff(models, servers, session);
    SheetFiles.print(session, ProfileDrawing.sheets(takeoff, setup), sheet, output);
    return ExitStatus.DONE;
  }
}
