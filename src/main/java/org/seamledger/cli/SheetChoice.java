package org.seamledger.cli;

import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.export.sheet.Units;
import picocli.CommandLine.Option;

/** What drawings can be told: paper, units, the words of the title block. */
final class SheetChoice {

  @Option(names = "--paper", paramLabel = "SIZE", description = "a3 (default), a4, arch-c, tabloid or letter.")
  private String paper = Paper.A3.word();

  @Option(names = "--units", paramLabel = "UNITS", description = "metric, us, or both (default).")
  private String units = Units.BOTH.word();

  @Option(names = "--project", paramLabel = "TEXT", description = "The project's name, for the title block.")
  private String project = "";

  @Option(names = "--number", paramLabel = "TEXT", description = "The drawing's or project's number.")
  private String number = "";

  @Option(names = "--revision", paramLabel = "TEXT", description = "The drawing's revision.")
  private String revision = "";

  @Option(names = "--date", paramLabel = "TEXT", description = "The model's date (default: as the model's header states it).")
  private String date = "";

  @Option(names = "--drawn", paramLabel = "TEXT", description = "Who drew it.")
  private String drawn = "";

  @Option(names = "--checked", paramLabel = "TEXT", description = "Who checked it.")
  private String checked = "";

  /** @throws UsageException where there is no such paper, or no such units */
  SheetSetup setup() {
    return new SheetSetup(Paper.of(paper).orElseThrow(() -> new UsageException("--paper is one of " + Paper.choices() + ", not " + paper)),
        Units.of(units).orElseThrow(() -> new UsageException("--units is one of " + Units.choices() + ", not " + units)),
        new TitleBlock(project, number, revision, date, drawn, checked));
  }
}
