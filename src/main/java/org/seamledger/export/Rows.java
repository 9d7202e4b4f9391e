package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seamledger.measure.MeasureFormat;

/**
 * Comma-separated values by RFC 4180, UTF-8, being written row by row. A cell that a spreadsheet would take for a formula gets an
 * apostrophe in front, so that a name in a model can't run anything; so does one that begins with such a sign in full width, which some
 * spreadsheets read alike. Where semicolons part cells, those within one stay within quotes.
 */
public final class Rows implements RowSink {

  private static final String LINE_END = "\r\n";
  private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(\\.\\d+)?");
  private static final int PLACES = 6;

  private final Writer writer;

  /** Leaves {@code out} open; the rows are out after {@link #flush}. */
  public Rows(OutputStream out) {
    writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
  }

  @Override
  public void row(List<String> cells) throws IOException {
    writer.write(cells.stream().map(Rows::cell).collect(Collectors.joining(",")));
    writer.write(LINE_END);
  }

  public void flush() throws IOException {
    writer.flush();
  }

  /** A measured number as a cell. */
  public static String number(double value) {
    return MeasureFormat.plain(value, PLACES);
  }

  /** One cell, guarded and quoted as needed. */
  static String cell(String value) {
    String safe = startsFormula(value) && !NUMBER.matcher(value).matches() ? "'" + value : value;
    boolean quoted = safe.chars().anyMatch(c -> c == ',' || c == ';' || c == '"' || c == '\r' || c == '\n');
    return quoted ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
  }

  private static boolean startsFormula(String value) {
    return !value.isEmpty() && "=+-@\t\r\n＝＋－＠".indexOf(value.charAt(0)) >= 0;
  }
}
