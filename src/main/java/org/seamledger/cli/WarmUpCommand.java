package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.seamledger.element.ModelInfo;
import org.seamledger.takeoff.Inputs;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Touches the classes that commands need, while the launcher has Java note them for its archive. Leaves no result. */
@Command(name = "warm-up", hidden = true, description = "For the launcher: load what commands need, and write nothing.")
final class WarmUpCommand implements Task {

  @Parameters(arity = "1..*", paramLabel = "MODEL")
  private List<Path> models;

  @Override
  public int run(Session session) {
    for (Path model : models) {
      Takeoff takeoff = session.analyze(new Settings().on(Inputs.ofFiles(List.of(model)), session.environment()));
      for (OutputFormat format : EnumSet.complementOf(EnumSet.of(OutputFormat.ifc, OutputFormat.pdf))) {
        writeNowhere(format, takeoff);
      }
    }
    try {
      ServiceWarmUp.run(session, models.get(0));
    } catch (IOException e) {
      throw new OutputException("of a service", e);
    }
    return ExitStatus.DONE;
  }

  private static void writeNowhere(OutputFormat format, Takeoff takeoff) {
    List<String> models = takeoff.models().stream().map(ModelInfo::file).toList();
    try {
      OutputFormat.Request request = new OutputFormat.Request(models, Optional.empty(), Program.NAME, Optional.empty(), Optional.empty(),
          SubmittalSetup.DEFAULT);
      format.write(takeoff, request, OutputStream.nullOutputStream());
    } catch (IOException e) {
      throw new OutputException("nowhere", e);
    }
  }
}
