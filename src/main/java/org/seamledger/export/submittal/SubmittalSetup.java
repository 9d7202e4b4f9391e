package org.seamledger.export.submittal;

import java.util.List;
import java.util.Optional;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.order.PriceList;

/**
 * What a person chooses about a submittal.
 *
 * @param sheets paper, units, title block
 * @param pages which parts, in their order
 * @param prices of what is ordered
 */
public record SubmittalSetup(SheetSetup sheets, List<PageSet> pages, Optional<PriceList> prices) {

  public static final SubmittalSetup DEFAULT = new SubmittalSetup(SheetSetup.DEFAULT, PageSet.ALL, Optional.empty());

  public SubmittalSetup {
    pages = List.copyOf(pages);
  }
}
