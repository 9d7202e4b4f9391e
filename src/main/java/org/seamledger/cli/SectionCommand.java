package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "section",
    customSynopsis = "seamledger section [--shapes DIR] [--system FILE] [--decisions FILE] [--paper SIZE] [--units UNITS]"
        + " [--output FILE] MODEL... JUNCTION",
    description = "Draw a section through a junction's detail to scale, as SVG: metal, tape, sealants, fasteners.")
final class SectionCommand implements Task {

  @Parameters(arity = "2..*", paramLabel = "MODEL... JUNCTION",
      description = "Models as for analyze, then the id of a junction or a node, or its beginning.")
  private List<String> words;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Mixin
  private SheetChoice sheets;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the drawing to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    SheetSetup setup = sheets.setup();
    Takeoff takeoff = settings.takeoff(words.subList(0, words.size() - 1), servers, session);
    String id = JunctionChoice.id(takeoff, words.get(words.size() - 1));
    session.print(Optional.ofNullable(output), out -> SectionDrawing.write(takeoff, id, setup, out));
    return ExitStatus.DONE;
  }
}
