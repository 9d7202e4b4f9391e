package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.GateModel;
import org.seamledger.export.GateTable;
import org.seamledger.export.JUnitReport;
import org.seamledger.export.SarifLog;
import org.seamledger.finding.Severity;

/** Forms of what a gate says of models; names as the command line has them. */
enum GateForm {
  text(GateTable::text), json(GateTable::json), csv(GateTable::csv),
  // What nobody set a limit for fails where it is a violation: a report of tests in which nothing can fail tells nobody anything.
  junit((models, limit, out) -> JUnitReport.write(models, limit.orElse(Severity.VIOLATION), out)),
  sarif((models, limit, out) -> SarifLog.write(models, out));

  @FunctionalInterface
  private interface Writer {
    void write(List<GateModel> models, Optional<Severity> limit, OutputStream out) throws IOException;
  }

  private final Writer writer;

  GateForm(Writer writer) {
    this.writer = writer;
  }

  void write(List<GateModel> models, Optional<Severity> limit, OutputStream out) throws IOException {
    writer.write(models, limit, out);
  }
}
