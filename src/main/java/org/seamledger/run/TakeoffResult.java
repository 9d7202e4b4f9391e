package org.seamledger.run;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.CutList;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.OrderCsv;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.ProfileDrawing;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.SubtotalsCsv;
import org.seamledger.export.SurroundingsJson;
import org.seamledger.export.TextReport;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.crew.CrewRequest;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.submittal.SubmittalPdf;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.export.workbook.WorkbookWriter;
import org.seamledger.graph.GraphQuery;
import org.seamledger.order.Alternate;
import org.seamledger.order.PriceList;
import org.seamledger.order.Subtotals;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.source.ModelSource;
import org.seamledger.takeoff.DetailOptions;
import org.seamledger.takeoff.Takeoff;

/**
 * A takeoff, written out when somebody asks for it.
 *
 * @param shapes folder of the shapes that it followed; the program's own where empty
 */
public record TakeoffResult(Takeoff takeoff, Optional<Path> shapes) implements Result {

  /** By the program's own shapes. */
  public TakeoffResult(Takeoff takeoff) {
    this(takeoff, Optional.empty());
  }

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  @FunctionalInterface
  private interface OutputWork {
    void write(OutputStream out) throws IOException;
  }

  @Override
  public void writeLedger(OutputStream out) throws IOException {
    JsonLedger.write(takeoff, out);
  }

  @Override
  public Optional<String> plan(SheetSetup setup, int sheet) {
    return one(PlanDrawing.sheets(takeoff, setup), sheet);
  }

  @Override
  public String planDocument(SheetSetup setup) {
    return PlanDrawing.document(takeoff, setup);
  }

  @Override
  public Optional<String> section(String junction, SheetSetup setup) {
    boolean isKnown = takeoff.lines().stream().anyMatch(j -> j.junction().junction().id().equals(junction))
        || takeoff.nodes().stream().anyMatch(n -> n.id().equals(junction));
    return isKnown ? Optional.of(SectionDrawing.svg(takeoff, junction, setup)) : Optional.empty();
  }

  @Override
  public List<byte[]> sectionParts() {
    return SectionDrawing.parts(takeoff);
  }

  @Override
  public Optional<String> section(String junction, String detail, SheetSetup setup) {
    return DetailOptions.of(takeoff, shapes).with(junction, detail).map(t -> SectionDrawing.svg(t, junction, setup));
  }

  @Override
  public Optional<List<DetailOptions.Option>> details(String junction, String kind) {
    return DetailOptions.of(takeoff, shapes).at(junction, kind);
  }

  @Override
  public Optional<String> profiles(SheetSetup setup, int sheet) {
    return one(ProfileDrawing.sheets(takeoff, setup), sheet);
  }

  private static Optional<String> one(List<String> sheets, int sheet) {
    return sheet < 1 || sheet > sheets.size() ? Optional.empty() : Optional.of(sheets.get(sheet - 1));
  }

  @Override
  public String cutList() {
    return text(CutList::write);
  }

  @Override
  public String order(Optional<PriceList> prices) {
    return text((t, out) -> OrderCsv.write(t, prices, out));
  }

  @Override
  public String subtotals(Subtotals.By by, Optional<PriceList> prices) {
    return text((t, out) -> SubtotalsCsv.write(t, prices, by, out));
  }

  @Override
  public Optional<Alternate> alternate(String name, Optional<PriceList> prices) {
    return Optional.of(Alternate.of(name, takeoff, prices));
  }

  @Override
  public Optional<RoofSystem> system() {
    return Optional.of(takeoff.system());
  }

  @Override
  public String junctions() {
    return text(CsvLedger::write);
  }

  @Override
  public Optional<byte[]> handedOn(HandoverForm form, FindingReviews reviews) {
    return Optional.of(bytes(out -> form.write(reviews.on(takeoff), out)));
  }

  @Override
  public Optional<byte[]> workbook(Optional<PriceList> prices, DrawingUnits units, FindingReviews reviews) {
    return Optional.of(bytes(out -> WorkbookWriter.write(reviews.on(takeoff), prices, units, out)));
  }

  @Override
  public boolean copy(int model, ModelSource source, FindingReviews reviews, OutputStream out) throws IOException {
    ModelCopies.write(reviews.on(takeoff), model, source, out);
    return true;
  }

  @Override
  public Optional<GraphQuery> graph() {
    return Optional.of(new GraphQuery(takeoff));
  }

  @Override
  public List<UUID> topicIds() {
    return takeoff.topicIds();
  }

  @Override
  public Optional<String> surroundings() {
    return Optional.of(text(SurroundingsJson::write));
  }

  @Override
  public Optional<byte[]> submittal(SubmittalSetup setup, FindingReviews reviews) {
    return Optional.of(bytes(out -> SubmittalPdf.write(reviews.on(takeoff), setup, out)));
  }

  @Override
  public Optional<byte[]> sequence(SequenceForm form, CrewRequest request, SheetSetup sheets) {
    CrewJob job = CrewJob.of(takeoff, request);
    return Optional.of(bytes(out -> form.write(job, sheets, out)));
  }

  @Override
  public Optional<String> report() {
    return Optional.of(text(TextReport::write));
  }

  private String text(Writer writer) {
    return new String(bytes(out -> writer.write(takeoff, out)), StandardCharsets.UTF_8);
  }

  private static byte[] bytes(OutputWork work) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      work.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
