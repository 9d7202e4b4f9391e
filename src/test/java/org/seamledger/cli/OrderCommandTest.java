package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.takeoff.Analysis;

/** The order, its prices, its parts and alternates from the command line. */
class OrderCommandTest {

  private static final String MODEL = "ifc-samples/gatehouse.ifc";

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... words) {
    out.reset();
    err.reset();
    return new Cli(Analysis::run, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  /** Cells of a row by RFC 4180. */
  private static List<String> cells(String row) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (char c : row.toCharArray()) {
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }

  @Test
  void jsonAndTableAgreeFieldByField() throws IOException {
    assertThat(run("analyze", MODEL, "--format", "json")).isZero();
    JsonNode order = new ObjectMapper().readTree(out()).path("order");
    assertThat(run("analyze", MODEL, "--format", "order")).isZero();
    List<String> rows = out().lines().toList();
    List<String> head = cells(rows.get(0));
    assertThat(rows).hasSize(order.size() + 1);
    for (int i = 0; i < order.size(); i++) {
      List<String> row = cells(rows.get(i + 1));
      assertThat(row).hasSameSizeAs(head);
      for (String word : List.of("id", "group", "item", "size", "unit", "orderUnit")) {
        assertThat(row.get(head.indexOf(word))).as(word).isEqualTo(order.get(i).path(word).textValue().replace("\"", ""));
      }
      for (String number : List.of("net", "wastePercent", "withWaste", "pack", "order")) {
        assertThat(order.get(i).path(number).isNumber()).as(number).isTrue();
        double value = order.get(i).path(number).doubleValue();
        assertThat(Double.parseDouble(row.get(head.indexOf(number)))).as(row.get(0) + " " + number).isCloseTo(value, within(2e-6));
      }
      List<String> junctions = new ArrayList<>();
      order.get(i).path("junctions").forEach(j -> junctions.add(j.textValue()));
      assertThat(row.get(head.indexOf("junctions"))).isEqualTo(String.join(" ", junctions));
    }
    assertThat(rows.stream().map(r -> r.replaceFirst(",.*", ""))).contains("clip", "underlayment", "tape", "bead-concealed", "bead-exposed",
        "non-curing", "closure", "fastener:deck-screw", "trim:ridge cap").doesNotContain("closure-vented");
    String vented = file("vented.json", "{\"ridge\": {\"vented\": true}}");
    assertThat(run("analyze", MODEL, "--format", "order", "--system", vented)).isZero();
    assertThat(out()).contains("\r\nclosure-vented,");
  }

  @Test
  void aMistakeInAPriceListHasItsPlace() throws IOException {
    String prices = file("prices.csv", "id,unit,price\ntape,roll,12.50\nclip,box,twelve\n");
    assertThat(run("analyze", MODEL, "--format", "order", "--prices", prices)).isEqualTo(2);
    assertThat(err()).contains("prices.csv: line 3, column 10: expected a price such as 12.50", "found \"twelve\"");
    assertThat(out()).isEmpty();
    assertThat(run("analyze", MODEL, "--format", "order", "--prices", folder.resolve("none.csv").toString())).isEqualTo(2);
    assertThat(err()).contains("none.csv").doesNotContain("Exception");
    assertThat(run("analyze", MODEL, "--format", "order", "--prices", file("empty.csv", ""))).isEqualTo(2);
    assertThat(err()).contains("empty.csv: line 1, column 1: expected a head line with id, unit and price, found nothing");
  }

  @Test
  void theOrderIsDividedOnlyAsAnOrder() {
    assertThat(run("analyze", MODEL, "--format", "order", "--by", "face")).isZero();
    assertThat(out()).startsWith("by,key,id,").contains("\r\nface,F1,", "for each that shares it", "\"all, each once\"");
    assertThat(run("analyze", MODEL, "--format", "json", "--by", "face")).isEqualTo(2);
    assertThat(err()).contains("--by divides the order");
    assertThat(run("analyze", MODEL, "--format", "order", "--by", "colour")).isEqualTo(2);
    assertThat(err()).contains("--by", "colour");
  }

  @Test
  void alternatesAreComparedOrRefused() throws IOException {
    assertThat(run("alternates", MODEL, "--alternate", "wide pans: panel.coverage = 18 in; tape.roll = 80 ft", "--format", "csv")).isZero();
    assertThat(out()).contains("order,tape,sealing tape,wide pans,").contains(",stays\r\n");
    assertThat(run("alternates", MODEL)).isEqualTo(2);
    assertThat(err()).contains("at least two systems");
    for (List<String> wrong : List.of(List.of("a: panel.colour = red", "found \"panel.colour\""),
        List.of("a: panel.coverage", "FIELD = VALUE"),
        List.of("a: panel.coverage = 18", "no unit"), List.of("panel.coverage = 18 in", "NAME: FIELD = VALUE"),
        List.of("a: tape.roll = 1 ft; tape.roll = 2 ft", "each field once"))) {
      assertThat(run("alternates", MODEL, "--alternate", wrong.get(0))).as(wrong.get(0)).isEqualTo(2);
      assertThat(err()).contains(wrong.get(1)).doesNotContain("adding up");
      assertThat(out()).isEmpty();
    }
    assertThat(run("alternates", MODEL, "--system", file("bad.json", "{\"panel\": {\"coverage\": \"2 in\"}}"))).isEqualTo(2);
    assertThat(err()).contains("bad.json: panel.coverage: expected a length from 3 in to 48 in, found \"2 in\"");
  }

  @Test
  void aValueOfTheSystemIsExplained() {
    assertThat(run("explain", MODEL, "tape.reach")).isZero();
    assertThat(out()).contains("how far to each side a fastener presses it", "2 in", "a length from 1/4 in to 12 in",
        "common practice, no source");
  }

  /** The workbook's lengths in the units asked for; 0.3048 m are a foot by definition (NIST SP 811). */
  @Test
  void workbookIsInTheChosenUnits() throws IOException {
    Map<String, List<String>> heads = Map.of("metric", List.of("Length, m"), "us", List.of("Length, ft"), "both",
        List.of("Length, m", "Length, ft"));
    Map<String, Double> lengths = new HashMap<>();
    for (String units : heads.keySet()) {
      Path book = folder.resolve(units + ".xlsx");
      assertThat(run("analyze", MODEL, "--format", "xlsx", "--units", units, "--output", book.toString())).as(err()).isZero();
      try (var opened = new XSSFWorkbook(Files.newInputStream(book))) {
        Row head = opened.getSheet("Junctions").getRow(3);
        List<String> found = new ArrayList<>();
        for (Cell cell : head) {
          if (cell.getStringCellValue().startsWith("Length, ")) {
            found.add(cell.getStringCellValue());
            lengths.put(units + cell.getStringCellValue(),
                opened.getSheet("Junctions").getRow(4).getCell(cell.getColumnIndex()).getNumericCellValue());
          }
        }
        assertThat(found).as(units).isEqualTo(heads.get(units));
      }
    }
    assertThat(lengths.get("usLength, ft") * 0.3048).isCloseTo(lengths.get("metricLength, m"), within(2e-3));
    assertThat(run("analyze", MODEL, "--format", "xlsx", "--units", "cubits", "--output", folder.resolve("no.xlsx").toString()))
        .isEqualTo(2);
    assertThat(err()).contains("--units is one of", "cubits");
  }
}
