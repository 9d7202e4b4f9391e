package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.PlanDrawing;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "plan", description = "Draw the roof plan to scale, as SVG: faces, falls, seams, every junction with its length.")
final class PlanCommand implements Task {

  @Parameters(arity = "1..*", paramLabel = "MODEL", description = "Models as for analyze.")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the drawing to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    Takeoff takeoff;
    try (ChosenModels chosen = ChosenModels.of(models, servers)) {
      takeoff = session.analyze(settings.on(chosen, session.environment()));
    }
    session.print(Optional.ofNullable(output), out -> PlanDrawing.write(takeoff, out));
    return ExitStatus.DONE;
  }
}
