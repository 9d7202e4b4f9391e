package org.seamledger.run;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.export.bcf.BcfOptions;
import org.seamledger.export.bcf.BcfPackage;
import org.seamledger.graph.GraphForm;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** Forms in which a result is handed on to other programs. */
public enum HandoverForm {
  BCF("findings.bcf", "application/octet-stream", (takeoff, out) -> bcf(takeoff, BcfVersion.V3_0, out)),
  BCF_2_1("findings-2.1.bcf", "application/octet-stream", (takeoff, out) -> bcf(takeoff, BcfVersion.V2_1, out)),
  TURTLE("graph.ttl", "text/turtle; charset=utf-8", GraphForm.TURTLE::write),
  JSON_LD("graph.jsonld", "application/ld+json", GraphForm.JSON_LD::write);

  @FunctionalInterface
  private interface Writer {
    void write(Takeoff takeoff, OutputStream out) throws IOException;
  }

  private final String file;
  private final String type;
  private final Writer writer;

  HandoverForm(String file, String type, Writer writer) {
    this.file = file;
    this.type = type;
    this.writer = writer;
  }

  private static void bcf(Takeoff takeoff, BcfVersion version, OutputStream out) throws IOException {
    BcfPackage.write(takeoff, new BcfOptions(version, Program.NAME, Optional.empty()), out);
  }

  /** What the file is called. */
  public String file() {
    return file;
  }

  /** Its media type. */
  public String type() {
    return type;
  }

  void write(Takeoff takeoff, OutputStream out) throws IOException {
    writer.write(takeoff, out);
  }
}
