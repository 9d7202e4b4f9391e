package org.seamledger.run;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.seamledger.export.crew.CrewRequest;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.graph.GraphQuery;
import org.seamledger.order.Alternate;
import org.seamledger.order.PriceList;
import org.seamledger.order.Subtotals;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.source.ModelSource;
import org.seamledger.takeoff.DetailOptions;

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

  /** What its sections show, in parts to keep, for {@link org.seamledger.export.SectionDrawing}; none where it has no sections. */
  default List<byte[]> sectionParts() {
    return List.of();
  }

  /** The same as it would be with another detail; empty where there is no such junction or detail. */
  default Optional<String> section(String junction, String detail, SheetSetup setup) {
    return Optional.empty();
  }

  /**
   * Details for a junction, those that fit it first; empty where there is no junction of that id.
   *
   * @param kind that the junction is taken for; empty for its own
   */
  default Optional<List<DetailOptions.Option>> details(String junction, String kind) {
    return Optional.empty();
  }

  /** A sheet of the trims as they are folded, from 1, as SVG; empty where there is no such sheet. */
  Optional<String> profiles(SheetSetup setup, int sheet);

  /** The shop's cut list, as comma-separated values. */
  String cutList();

  /** The order, as comma-separated values; with prices where there are any. */
  String order(Optional<PriceList> prices);

  /** The order divided by what it belongs to, as comma-separated values; with costs where there are prices. */
  String subtotals(Subtotals.By by, Optional<PriceList> prices);

  /** The order and the findings, to compare with those of the same roof under another system; empty where there is no order. */
  default Optional<Alternate> alternate(String name, Optional<PriceList> prices) {
    return Optional.empty();
  }

  /** The roof system in force; empty where it isn't known. */
  default Optional<RoofSystem> system() {
    return Optional.empty();
  }

  /** The junctions, as comma-separated values. */
  String junctions();

  /** The result as other programs take it, with what people said about its findings; empty where there is no such form. */
  default Optional<byte[]> handedOn(HandoverForm form, FindingReviews reviews) {
    return Optional.empty();
  }

  /** What stands near the roof, as JSON for pictures; empty where nothing is known of it. */
  default Optional<String> surroundings() {
    return Optional.empty();
  }

  /** The result as a workbook, with prices where there are any; empty where there is none. */
  default Optional<byte[]> workbook(Optional<PriceList> prices, DrawingUnits units, FindingReviews reviews) {
    return Optional.empty();
  }

  /**
   * Writes the copy of one of its models with the answers in it, packed as the model is.
   *
   * @param model its position among the result's models, from 0
   * @return whether there are such copies
   * @throws org.seamledger.finding.UnreadableModelException where the model can't be read any more, is another one by now, or is of no
   *     schema that can be written
   */
  default boolean copy(int model, ModelSource source, FindingReviews reviews, OutputStream out) throws IOException {
    return false;
  }

  /** Its graph for queries; empty where there is none. */
  default Optional<GraphQuery> graph() {
    return Optional.empty();
  }

  /** Ids of the topics that its findings are handed on as, in their order. */
  default List<UUID> topicIds() {
    return List.of();
  }

  /** Sheets for review and for the crew as PDF, with what people said about its findings; empty where there are no drawings. */
  default Optional<byte[]> submittal(SubmittalSetup setup, FindingReviews reviews) {
    return Optional.empty();
  }

  /**
   * The order of work as a crew's plan; empty where it isn't known.
   *
   * @throws IllegalArgumentException with a line that says what the request asks for and can't have
   */
  default Optional<byte[]> sequence(SequenceForm form, CrewRequest request, SheetSetup sheets) {
    return Optional.empty();
  }

  /** The human-readable report, plain text; empty where there is none. */
  Optional<String> report();
}
