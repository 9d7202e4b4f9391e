package org.seamledger.run;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.seamledger.export.crew.CrewJob;
import org.seamledger.export.crew.SequenceJson;
import org.seamledger.export.crew.SequenceReport;
import org.seamledger.export.crew.WindowsDrawing;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.submittal.CrewPdf;

/** Forms of the order of work. */
public enum SequenceForm {
  /** For programs. */
  JSON("application/json"),
  /** For users. */
  TEXT("text/plain; charset=utf-8"),
  /** A picture of the sealing windows; only with weather. */
  SVG("image/svg+xml; charset=utf-8"),
  /** Sheets for the roof. */
  PDF("application/pdf");

  private final String type;

  SequenceForm(String type) {
    this.type = type;
  }

  /** The media type. */
  public String type() {
    return type;
  }

  /**
   * Writes a job and flushes; leaves {@code out} open.
   *
   * @throws IllegalArgumentException where a picture of windows is wanted, and no weather is known
   */
  public void write(CrewJob job, SheetSetup sheets, OutputStream out) throws IOException {
    switch (this) {
      case JSON -> SequenceJson.write(job, out);
      case TEXT -> SequenceReport.write(job, out);
      case PDF -> CrewPdf.write(job, sheets, out);
      case SVG -> out.write(WindowsDrawing.svg(job.windows().orElseThrow(() -> new IllegalArgumentException(
          "svg draws the sealing windows of a weather: it needs a weather file, or air and humidity")), job.takeoff().system(),
          job.request().days()).getBytes(StandardCharsets.UTF_8));
    }
    out.flush();
  }
}
