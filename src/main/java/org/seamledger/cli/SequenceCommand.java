package org.seamledger.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.crew.SequenceJson;
import org.seamledger.export.crew.SequenceReport;
import org.seamledger.sequence.CrewPlan;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "sequence",
    description = "Show what is done in which order, as a plan of days for a crew: steps, hold points, what to carry up, where to wait.")
final class SequenceCommand implements Task {

  private static final int MOST_PEOPLE = 100;

  /** Forms of the result. */
  enum Form {
    text, json
  }

  @Parameters(arity = "1..*", paramLabel = "MODEL", description = "Models as for analyze.")
  private List<String> models;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Option(names = "--crew", paramLabel = "N", description = "People in the crew (default: crew.people of the roof system).")
  private Integer crew;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text", description = "text or json (default: text).")
  private Form format;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    if (crew != null && (crew < 1 || crew > MOST_PEOPLE)) {
      throw new UsageException("--crew needs a number of people from 1 to " + MOST_PEOPLE + ", found " + crew);
    }
    Takeoff takeoff = settings.takeoff(models, servers, session);
    CrewPlan plan = CrewPlan.of(takeoff.sequence(), takeoff.system(), crew == null ? 0 : crew);
    session.print(Optional.ofNullable(output), out -> {
      if (format == Form.json) {
        SequenceJson.write(takeoff, plan, out);
      } else {
        SequenceReport.write(takeoff, plan, out);
      }
    });
    return ExitStatus.DONE;
  }
}
