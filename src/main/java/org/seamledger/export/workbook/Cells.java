package org.seamledger.export.workbook;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.Worksheet;
import org.seamledger.export.wording.OneLine;

/** Values as cells can hold them. */
final class Cells {

  /** The longest text that a cell holds. */
  private static final int LONGEST = 32_767;
  private static final int LETTERS = 26;
  /** Readers take it for the character of that code (ECMA-376, ST_Xstring), so it has to be escaped itself. */
  private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  private Cells() {
  }

  /**
   * Writes a value.
   *
   * @throws IllegalArgumentException for a number that is not finite, which no workbook can hold
   */
  static void value(Worksheet sheet, int row, int column, Object value) {
    if (value instanceof String text) {
      text(sheet, row, column, text);
    } else if (value instanceof Boolean flag) {
      text(sheet, row, column, flag ? "yes" : "no");
    } else if (value instanceof BigDecimal decimal) {
      sheet.value(row, column, decimal);
    } else if (value instanceof Number number) {
      if (!Double.isFinite(number.doubleValue())) {
        throw new IllegalArgumentException("no workbook holds the number " + number);
      }
      sheet.value(row, column, number);
    }
  }

  static void text(Worksheet sheet, int row, int column, String text) {
    if (!text.isEmpty()) {
      sheet.value(row, column, clean(text));
    }
  }

  /** On one line, without what XML can't hold, no longer than a cell takes. */
  static String clean(String text) {
    String line = ESCAPE.matcher(OneLine.of(text)).replaceAll("_x005F_x$1_");
    if (line.length() <= LONGEST) {
      return line;
    }
    int end = LONGEST - 1;
    return line.substring(0, Character.isHighSurrogate(line.charAt(end - 1)) ? end - 1 : end) + "…";
  }

  /** {@code A} for 0, {@code AA} for 26. */
  static String letter(int column) {
    return (column >= LETTERS ? letter(column / LETTERS - 1) : "") + (char) ('A' + column % LETTERS);
  }
}
