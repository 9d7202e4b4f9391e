package org.seamledger.run;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.order.PriceList;

/**
 * A result in every form that the service and the watch give out. The same result gives the same text; it may be kept long, and asked from
 * several threads at once.
 */
public interface Result {

  /** Writes the ledger: the JSON of the contract, as UTF-8. */
  void writeLedger(OutputStream out) throws IOException;

  /** A sheet of the roof plan, from 1, as SVG; empty where the plan has no such sheet. */
  Optional<String> plan(SheetSetup setup, int sheet);

  /** All sheets of the roof plan as one HTML document, a page each. */
  String planDocument(SheetSetup setup);

  /** The section through a junction's detail, as SVG; empty where there is no junction of that id. */
  Optional<String> section(String junction, SheetSetup setup);

  /** A sheet of the trims as they are folded, from 1, as SVG; empty where there is no such sheet. */
  Optional<String> profiles(SheetSetup setup, int sheet);

  /** The shop's cut list, as comma-separated values. */
  String cutList();

  /** The order, as comma-separated values; with prices where there are any. */
  String order(Optional<PriceList> prices);

  /** The junctions, as comma-separated values. */
  String junctions();

  /**
   * The result as other programs take it, with the findings that people accepted; empty where there is no such form.
   *
   * @param accepted in a form that stays true in the next export
   */
  default Optional<byte[]> handedOn(HandoverForm form, List<AcceptedFinding> accepted) {
    return Optional.empty();
  }

  /**
   * Sheets for review and for the crew as PDF, with the findings that people accepted; empty where there are no drawings.
   *
   * @param accepted in a form that stays true in the next export
   */
  default Optional<byte[]> submittal(SubmittalSetup setup, List<AcceptedFinding> accepted) {
    return Optional.empty();
  }

  /** The human-readable report, plain text; empty where there is none. */
  Optional<String> report();
}
