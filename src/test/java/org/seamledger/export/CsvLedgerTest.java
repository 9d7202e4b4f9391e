package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class CsvLedgerTest {

  private static List<String> rows(Takeoff takeoff) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CsvLedger.write(takeoff, out);
    String text = out.toString(StandardCharsets.UTF_8);
    assertThat(text).endsWith("\r\n");
    return List.of(text.split("\r\n"));
  }

  @Test
  void oneRowAJunctionUnderOneHeader() throws IOException {
    List<String> rows = rows(Takeoffs.boatHouse());
    assertThat(rows).hasSize(4);
    assertThat(rows.get(0)).startsWith("id,kind,lengthM,lengthFtIn,faces,");
    // 10 m are 32.8084 ft: 32 ft 9.70 in, 9 11/16 in to the nearest sixteenth.
    assertThat(rows.get(3)).startsWith("ridge1,ridge,10,32 ft 9 11/16 in,F1 F2,0,53.130102,");
    assertThat(rows.get(2)).endsWith(",kind/unclassified,,,,0,0,boat-house.ifc,");
    assertThat(rows.get(0)).contains(",detail,tapeM,beadM,beadMl,inSeamM,closures,fasteners,");
    assertThat(rows.get(3)).contains(",ridge-by-hand,40,0,0,0,0,198,");
    assertThat(rows).allMatch(row -> row.split(",", -1).length == rows.get(0).split(",", -1).length);
  }

  /** RFC 4180, sections 2.5 to 2.7; the guard is a spreadsheet's rule for what begins a formula. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
      "plain|plain", "a,b|\"a,b\"", "say \"so\"|\"say \"\"so\"\"\"", "=1+1|'=1+1", "=\"x\"|\"'=\"\"x\"\"\"", "@SUM(A1)|'@SUM(A1)",
      "+cmd|'+cmd", "-cmd|'-cmd", "-1.5|-1.5", "+2|+2", "-1-1|'-1-1", "-1e5|'-1e5"})
  void cellsAreQuotedAndGuarded(String value, String cell) {
    assertThat(Rows.cell(value)).isEqualTo(cell);
  }

  @Test
  void lineEndsAndTabsInANameStayInTheirCell() {
    assertThat(Rows.cell("two\r\nlines")).isEqualTo("\"two\r\nlines\"");
    assertThat(Rows.cell("\t=1")).isEqualTo("'\t=1");
    assertThat(Rows.cell("")).isEmpty();
  }

  @Test
  void aFormulaInANameIsNone() throws IOException {
    assertThat(rows(Takeoffs.boatHouse("=HYPERLINK(\"x\")")).get(1)).contains(",\"'=HYPERLINK(\"\"x\"\")\",");
  }
}
