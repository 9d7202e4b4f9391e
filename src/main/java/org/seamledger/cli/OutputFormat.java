package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import org.seamledger.export.CsvLedger;
import org.seamledger.export.CutList;
import org.seamledger.export.FindingsCsv;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.TextReport;
import org.seamledger.takeoff.Takeoff;

/** Forms of a result; names as the command line has them. */
enum OutputFormat {
  text(TextReport::write), json(JsonLedger::write), csv(CsvLedger::write), cuts(CutList::write), findings(FindingsCsv::write);

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  private final Writer writer;

  OutputFormat(Writer writer) {
    this.writer = writer;
  }

  void write(Takeoff takeoff, OutputStream out) throws IOException {
    writer.write(takeoff, out);
  }
}
