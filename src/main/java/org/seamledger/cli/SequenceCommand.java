package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.crew.CrewRequest;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.run.SequenceForm;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "sequence",
    description = "Show what is done in which order, as a plan of days for a crew: steps, hold points, what to carry up, where to wait.")
final class SequenceCommand implements Task {

  /** Forms of the result. */
  enum Form {
    text, json, svg, pdf
  }

  @Parameters(arity = "1..*", paramLabel = "MODEL", description = "Models as for analyze.")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Option(names = "--crew", paramLabel = "N", description = "People in the crew (default: crew.people of the roof system).")
  private Integer crew;

  @Mixin
  private WeatherChoice weather;

  @Mixin
  private SheetChoice sheets;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text",
      description = "text or json; svg: a picture of the sealing windows; pdf: sheets for the roof (default: text).")
  private Form format;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    CrewRequest request = weather.request(crew);
    SheetSetup setup = sheets.setup();
    if (format == Form.pdf && output == null) {
      session.requireNoTerminal("--format pdf");
    }
    if (format == Form.svg && request.weather().isEmpty()) {
      throw new UsageException("--format svg draws the sealing windows of a weather: it goes with --weather, or with --air and --humidity");
    }
    Takeoff takeoff = settings.takeoff(models, servers, session);
    CrewJob job = weather.job(takeoff, request);
    session.print(Optional.ofNullable(output), out -> SequenceForm.valueOf(format.name().toUpperCase(Locale.ROOT)).write(job, setup, out));
    return ExitStatus.DONE;
  }
}
