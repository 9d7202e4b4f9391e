package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.CutList;
import org.seamledger.export.FindingsCsv;
import org.seamledger.export.NodesCsv;
import org.seamledger.export.GateModel;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.OrderCsv;
import org.seamledger.export.TextReport;
import org.seamledger.finding.Severity;
import org.seamledger.order.PriceList;
import org.seamledger.takeoff.Takeoff;

/** Forms of a result; names as the command line has them. */
enum OutputFormat {
  text(of(TextReport::write), Optional.of(GateForm.text)), json(priced(JsonLedger::write), Optional.of(GateForm.json)),
  csv(of(CsvLedger::write), Optional.of(GateForm.csv)), cuts(of(CutList::write), Optional.empty()),
  order(priced(OrderCsv::write), Optional.empty()),
  findings(of(FindingsCsv::write), Optional.empty()), nodes(of(NodesCsv::write), Optional.empty()),
  junit(of(GateForm.junit), Optional.of(GateForm.junit)),
  sarif(of(GateForm.sarif), Optional.of(GateForm.sarif));

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  /** Writes a result with the prices of its order. */
  @FunctionalInterface
  private interface PricedWriter {
    void write(Takeoff takeoff, Optional<PriceList> prices, OutputStream out) throws IOException;
  }

  /** What forms need besides the result: the models' names on the command line, the severity that shuts a gate, the prices. */
  record Subject(List<String> models, Optional<Severity> limit, Optional<PriceList> prices) {
  }

  /** Writes a result of models that were named so, at a gate that this severity shuts. */
  @FunctionalInterface
  private interface GateWriter {
    void write(Takeoff takeoff, Subject subject, OutputStream out) throws IOException;
  }

  private final GateWriter writer;
  private final Optional<GateForm> many;

  OutputFormat(GateWriter writer, Optional<GateForm> many) {
    this.writer = writer;
    this.many = many;
  }

  private static GateWriter of(Writer writer) {
    return (takeoff, subject, out) -> writer.write(takeoff, out);
  }

  private static GateWriter priced(PricedWriter writer) {
    return (takeoff, subject, out) -> writer.write(takeoff, subject.prices(), out);
  }

  private static GateWriter of(GateForm form) {
    return (takeoff, subject, out) -> form.write(List.of(GateModel.of(takeoff, subject.models())), subject.limit(), out);
  }

  void write(Takeoff takeoff, Subject subject, OutputStream out) throws IOException {
    writer.write(takeoff, subject, out);
  }

  /** @throws UsageException where many models have no such form */
  GateForm forMany() {
    return many.orElseThrow(() -> new UsageException("--each has the forms text, json, csv, junit and sarif, not " + name()));
  }
}
