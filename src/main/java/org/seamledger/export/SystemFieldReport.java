package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.OneLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SystemField;

/** One value of the roof system for people: what it is, what is in force, what it may be, and where it comes from. */
public final class SystemFieldReport {

  private static final String INDENT = "  ";

  private SystemFieldReport() {
  }

  /** Writes the report and flushes; leaves {@code out} open. */
  public static void write(RoofSystem system, SystemField field, OutputStream out) throws IOException {
    TextPage page = new TextPage();
    page.line(field.path() + ": " + field.meaning());
    Object value = system.toMap();
    for (String name : field.path().split("\\.")) {
      value = ((Map<?, ?>) value).get(name);
    }
    page.line(INDENT + "in force  " + OneLine.of(String.valueOf(value)));
    page.line(INDENT + "usual     " + field.usual());
    String may = field.min().isEmpty() ? field.what()
        : (field.what().isEmpty() ? "a whole number" : field.what()) + " from " + field.min() + " to " + field.max();
    String expected = field.choices().isEmpty() ? may : "one of " + String.join(", ", field.choices());
    page.line(INDENT + "expected  " + (expected.isEmpty() ? "a text" : expected));
    page.line(INDENT + "source    " + field.source());
    out.write(page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }
}
