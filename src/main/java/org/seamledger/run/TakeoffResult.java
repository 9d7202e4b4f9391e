package org.seamledger.run;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.CutList;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.OrderCsv;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.ProfileDrawing;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.TextReport;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.submittal.SubmittalPdf;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.order.PriceList;
import org.seamledger.takeoff.Takeoff;

/** A takeoff, written out when somebody asks for it. */
public record TakeoffResult(Takeoff takeoff) implements Result {

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
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
    boolean isKnown = takeoff.junctions().stream().anyMatch(j -> j.junction().id().equals(junction))
        || takeoff.nodes().stream().anyMatch(n -> n.id().equals(junction));
    return isKnown ? Optional.of(SectionDrawing.svg(takeoff, junction, setup)) : Optional.empty();
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
  public String junctions() {
    return text(CsvLedger::write);
  }

  @Override
  public Optional<byte[]> handedOn(HandoverForm form, List<AcceptedFinding> accepted) {
    return Optional.of(bytes(takeoff.withAccepted(accepted), form::write));
  }

  @Override
  public Optional<byte[]> submittal(SubmittalSetup setup, List<AcceptedFinding> accepted) {
    return Optional.of(bytes(takeoff.withAccepted(accepted), (t, out) -> SubmittalPdf.write(t, setup, out)));
  }

  @Override
  public Optional<String> report() {
    return Optional.of(text(TextReport::write));
  }

  private String text(Writer writer) {
    return new String(bytes(takeoff, writer), StandardCharsets.UTF_8);
  }

  private static byte[] bytes(Takeoff takeoff, Writer writer) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      writer.write(takeoff, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
