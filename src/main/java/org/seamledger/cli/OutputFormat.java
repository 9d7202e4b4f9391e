package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.CutList;
import org.seamledger.export.FindingsCsv;
import org.seamledger.export.GateModel;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.NodesCsv;
import org.seamledger.export.OrderCsv;
import org.seamledger.export.TextReport;
import org.seamledger.export.bcf.BcfOptions;
import org.seamledger.export.bcf.BcfPackage;
import org.seamledger.export.submittal.SubmittalPdf;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.export.workbook.WorkbookWriter;
import org.seamledger.finding.Severity;
import org.seamledger.graph.GraphForm;
import org.seamledger.order.PriceList;
import org.seamledger.takeoff.Takeoff;

/** Forms of a result; names as the command line has them. */
enum OutputFormat {
  text(of(TextReport::write), Optional.of(GateForm.text)), json(priced(JsonLedger::write), Optional.of(GateForm.json)),
  csv(of(CsvLedger::write), Optional.of(GateForm.csv)), cuts(of(CutList::write), Optional.empty()),
  order(priced(OrderCsv::write), Optional.empty()),
  findings(of(FindingsCsv::write), Optional.empty()), nodes(of(NodesCsv::write), Optional.empty()),
  junit(of(GateForm.junit), Optional.of(GateForm.junit)),
  sarif(of(GateForm.sarif), Optional.of(GateForm.sarif)), turtle(of(GraphForm.TURTLE::write), Optional.empty()),
  jsonld(of(GraphForm.JSON_LD::write), Optional.empty()), bcf(of(BcfVersion.V3_0)), bcf21("bcf-2.1", of(BcfVersion.V2_1)),
  xlsx(OutputFormat::workbook),
  pdf(OutputFormat::submittal),
  /** Written from the models themselves, see {@link CopiesOutput}. */
  ifc(OutputFormat::copies);

  /**
   * How a result is wanted.
   *
   * @param models what they were named on the command line
   * @param limit severity that shuts a gate
   * @param author whose topics are handed on
   * @param created when these count as made; empty for the model's own date
   * @param prices of what is ordered
   * @param submittal paper, title block and parts of a PDF; its units are a workbook's, too
   */
  record Request(List<String> models, Optional<Severity> limit, String author, Optional<Instant> created,
      Optional<PriceList> prices, SubmittalSetup submittal) {
  }

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  /** Writes a result with the prices of its order. */
  @FunctionalInterface
  private interface PricedWriter {
    void write(Takeoff takeoff, Optional<PriceList> prices, OutputStream out) throws IOException;
  }

  @FunctionalInterface
  private interface RequestWriter {
    void write(Takeoff takeoff, Request request, OutputStream out) throws IOException;
  }

  private final String word;
  private final RequestWriter writer;
  private final Optional<GateForm> many;
  private final boolean isBinary;

  OutputFormat(RequestWriter writer, Optional<GateForm> many) {
    this.word = name();
    this.writer = writer;
    this.many = many;
    this.isBinary = false;
  }

  /** A binary form of one result. */
  OutputFormat(RequestWriter writer) {
    this("", writer);
  }

  OutputFormat(String word, RequestWriter writer) {
    this.word = word.isEmpty() ? name() : word;
    this.writer = writer;
    this.many = Optional.empty();
    this.isBinary = true;
  }

  private static void copies(Takeoff takeoff, Request request, OutputStream out) {
    throw new IllegalStateException("copies of models are written from the models");
  }

  private static void submittal(Takeoff takeoff, Request request, OutputStream out) throws IOException {
    SubmittalPdf.write(takeoff, request.submittal(), out);
  }

  private static void workbook(Takeoff takeoff, Request request, OutputStream out) throws IOException {
    WorkbookWriter.write(takeoff, request.prices(), request.submittal().sheets().units(), out);
  }

  private static RequestWriter of(Writer writer) {
    return (takeoff, request, out) -> writer.write(takeoff, out);
  }

  private static RequestWriter priced(PricedWriter writer) {
    return (takeoff, request, out) -> writer.write(takeoff, request.prices(), out);
  }

  private static RequestWriter of(GateForm form) {
    return (takeoff, request, out) -> form.write(List.of(GateModel.of(takeoff, request.models())), request.limit(), out);
  }

  private static RequestWriter of(BcfVersion version) {
    return (takeoff, request, out) -> BcfPackage.write(takeoff, new BcfOptions(version, request.author(), request.created()), out);
  }

  void write(Takeoff takeoff, Request request, OutputStream out) throws IOException {
    writer.write(takeoff, request, out);
  }

  /** Whether it is nothing for a terminal. */
  boolean isBinary() {
    return isBinary;
  }

  /** As it is typed. */
  @Override
  public String toString() {
    return word;
  }

  /** @throws UsageException where many models have no such form */
  GateForm forMany() {
    return many.orElseThrow(() -> new UsageException("--each has the forms text, json, csv, junit and sarif, not " + word));
  }
}
