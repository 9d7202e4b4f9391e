package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.CutList;
import org.seamledger.export.FindingsCsv;
import org.seamledger.export.GateModel;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.TextReport;
import org.seamledger.finding.Severity;
import org.seamledger.takeoff.Takeoff;

/** Forms of a result; names as the command line has them. */
enum OutputFormat {
  text(of(TextReport::write), Optional.of(GateForm.text)), json(of(JsonLedger::write), Optional.of(GateForm.json)),
  csv(of(CsvLedger::write), Optional.of(GateForm.csv)), cuts(of(CutList::write), Optional.empty()),
  findings(of(FindingsCsv::write), Optional.empty()), junit(of(GateForm.junit), Optional.of(GateForm.junit)),
  sarif(of(GateForm.sarif), Optional.of(GateForm.sarif)), ifc(OutputFormat::copies, Optional.empty());

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  /** Writes a result of models that were named so, at a gate that this severity shuts. */
  @FunctionalInterface
  private interface GateWriter {
    void write(Takeoff takeoff, List<String> models, Optional<Severity> limit, OutputStream out) throws IOException;
  }

  private final GateWriter writer;
  private final Optional<GateForm> many;

  OutputFormat(GateWriter writer, Optional<GateForm> many) {
    this.writer = writer;
    this.many = many;
  }

  /** {@link CopiesOutput} writes them: they need the models, too. */
  private static void copies(Takeoff takeoff, List<String> models, Optional<Severity> limit, OutputStream out) {
    throw new IllegalStateException("copies of models are written from the models");
  }

  private static GateWriter of(Writer writer) {
    return (takeoff, models, limit, out) -> writer.write(takeoff, out);
  }

  private static GateWriter of(GateForm form) {
    return (takeoff, models, limit, out) -> form.write(List.of(GateModel.of(takeoff, models)), limit, out);
  }

  void write(Takeoff takeoff, List<String> models, Optional<Severity> limit, OutputStream out) throws IOException {
    writer.write(takeoff, models, limit, out);
  }

  /** @throws UsageException where many models have no such form */
  GateForm forMany() {
    return many.orElseThrow(() -> new UsageException("--each has the forms text, json, csv, junit and sarif, not " + name()));
  }
}
