package org.seamledger.cli;

import java.util.Optional;
import org.seamledger.export.submittal.PageSet;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.order.PriceList;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a submittal can be told: its sheets, and which parts of it are wanted. */
final class SubmittalChoice {

  @Mixin
  private SheetChoice sheets;

  @Option(names = "--pages", paramLabel = "SETS", defaultValue = "all",
      description = "Of --format pdf: all (default), architect, crew, or some of cover, contents, key-plan, schedule, details, nodes, "
          + "order, findings, assumptions, cautions, in the order wanted, with commas between.")
  private String pages;

  /** @throws UsageException where there is no such paper, no such units, or no such part */
  SubmittalSetup setup(Optional<PriceList> prices) {
    return new SubmittalSetup(sheets.setup(), PageSet.of(pages).orElseThrow(
        () -> new UsageException("--pages is one or more of " + PageSet.choices() + ", with commas between, not " + pages)), prices);
  }
}
