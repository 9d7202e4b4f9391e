package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;
import org.seamledger.element.ModelInfo;
import org.seamledger.export.json.JsonDrainage;
import org.seamledger.export.json.JsonFixity;
import org.seamledger.export.json.JsonJunctions;
import org.seamledger.export.json.JsonNodes;
import org.seamledger.export.json.JsonOrder;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.export.json.JsonQuantities;
import org.seamledger.export.json.JsonRoof;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.FindingAdvice;
import org.seamledger.export.wording.FindingRisk;
import org.seamledger.export.wording.ScopeText;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Remark;
import org.seamledger.order.OrderList;
import org.seamledger.order.PriceList;
import org.seamledger.order.PricedOrder;
import org.seamledger.quantity.Estimate;
import org.seamledger.quantity.Estimates;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/**
 * The ledger as one JSON document: the form that programs read. Lengths are metres, areas square metres, angles degrees, places world
 * coordinates of the model; numbers are rounded to six places. Fields stand in a fixed order and lists in the takeoff's.
 */
public final class JsonLedger {

  /** Raised when a field changes its meaning or goes; new fields don't raise it. */
  public static final int CONTRACT = 1;

  private final Takeoff takeoff;
  private final Optional<PriceList> prices;
  private final JsonOutput json;
  private final FindingRisk risk;

  private JsonLedger(Takeoff takeoff, Optional<PriceList> prices, JsonOutput json) {
    this.takeoff = takeoff;
    this.prices = prices;
    this.json = json;
    this.risk = new FindingRisk(takeoff);
  }

  /** Writes the document and a line end, and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    write(takeoff, Optional.empty(), out);
  }

  /** The same with the order's prices. */
  public static void write(Takeoff takeoff, Optional<PriceList> prices, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      JsonLedger ledger = new JsonLedger(takeoff, prices, json);
      json.document(ledger::fields);
    }
  }

  private void fields() throws IOException {
    json.count("contract", CONTRACT);
    json.object("program", this::program);
    json.objects("models", takeoff.models(), this::model);
    json.tree("system", takeoff.system().toMap());
    json.object("tolerances", this::tolerances);
    json.tree("surfaceLimits", takeoff.limits().byName());
    JsonRoof roof = new JsonRoof(takeoff, json);
    roof.faces();
    roof.coverage();
    new JsonDrainage(takeoff, json).drainage();
    JsonJunctions junctions = new JsonJunctions(takeoff, json);
    junctions.junctions();
    junctions.kinds();
    junctions.details();
    junctions.choices();
    new JsonNodes(takeoff, json, junctions).write();
    new JsonQuantities(takeoff, json).quantities();
    new JsonFixity(takeoff, json).panels();
    junctions.joints();
    OrderList order = OrderList.of(takeoff);
    new JsonOrder(order, prices.map(p -> PricedOrder.of(order, p)), json).order();
    json.objects("elements", takeoff.elements().values(), this::element);
    json.objects("findings", takeoff.findings(), this::finding);
    ModelPoints.write(takeoff, json);
    json.objects("estimates", Estimates.of(takeoff.faces(), takeoff.quantities()), this::estimate);
    json.word("scope", ScopeText.SCOPE.text());
    json.word("cautions", ScopeText.SAFETY.text());
  }

  private void program() throws IOException {
    json.word("name", Program.NAME);
    json.word("version", takeoff.version());
    json.word("shapes", takeoff.shapes());
  }

  private void model(ModelInfo model) throws IOException {
    json.word("file", model.file());
    json.word("sha256", model.sha256());
    json.word("schema", model.schema());
    json.word("lengthUnit", model.lengthUnit());
    json.word("application", model.application());
    json.count("bytes", model.bytes());
    json.word("date", model.written());
    if (model.placement().isPresent()) {
      json.word("placement", model.placement().get());
    }
  }

  private void tolerances() throws IOException {
    json.number("coincidenceM", takeoff.tolerance().coincidenceM());
    json.number("gapM", takeoff.tolerance().gapM());
    json.number("upstandM", takeoff.tolerance().upstandM());
    json.number("facetTurnDegrees", takeoff.tolerance().facetTurnDegrees());
    json.number("flashingM", takeoff.tolerance().flashingM());
  }

  private void element(ElementLabel element) throws IOException {
    json.word("globalId", element.globalId());
    json.word("ifcClass", element.ifcClass());
    json.word("name", element.name());
    json.count("model", element.model());
    json.word("storey", element.storey());
  }

  private void finding(Finding finding) throws IOException {
    json.word("code", finding.code());
    json.word("severity", finding.severity().word());
    json.word("message", finding.message());
    json.word("reason", FindingAdvice.reason(takeoff, finding.code()));
    json.word("action", FindingAdvice.action(takeoff, finding.code()));
    json.word("who", FindingAdvice.who(takeoff, finding.code()));
    json.number("risk", risk.of(finding));
    json.wordOrNull("junction", finding.junction());
    json.words("junctions", finding.junctions());
    json.words("elements", finding.elements());
    json.objects("elementDetails", ElementNames.details(takeoff, finding.elements()), this::detail);
    if (finding.acceptance().isPresent()) {
      json.object("accepted", () -> acceptance(finding.acceptance().get()));
    }
    if (!finding.remarks().isEmpty()) {
      json.objects("remarks", finding.remarks(), this::remark);
    }
    if (finding.remedy().isPresent()) {
      json.object("placement", () -> placement(finding.remedy().get()));
    }
  }

  private void detail(ElementNames.Detail element) throws IOException {
    json.word("globalId", element.label().globalId());
    json.word("class", element.label().ifcClass());
    json.word("name", element.label().name());
    json.word("storey", element.label().storey());
    json.word("file", element.file());
  }

  private void acceptance(Acceptance acceptance) throws IOException {
    json.word("by", acceptance.by());
    json.wordOrNull("when", acceptance.when());
    json.word("reason", acceptance.reason());
  }

  private void remark(Remark remark) throws IOException {
    json.wordOrNull("by", remark.by());
    json.wordOrNull("when", remark.when());
    json.word("text", remark.text());
  }

  private void placement(Finding.Remedy remedy) throws IOException {
    json.count("model", remedy.model());
    json.word("movement", remedy.movement());
  }

  private void estimate(Estimate e) throws IOException {
    json.word("topic", e.topic());
    json.word("name", e.name());
    json.word("value", e.value());
    json.word("basis", e.basis());
  }
}
