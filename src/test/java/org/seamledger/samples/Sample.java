package org.seamledger.samples;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A demo building: a house and the form in which its file is written.
 *
 * @param file path below {@code ifc-samples/} without its ending
 * @param title one line about it
 */
public record Sample(String file, String title, House house, Form form) {

  private static final int DECIMALS = 6;

  String ifc() {
    return IfcWriter.text(house, form);
  }

  /** The expected ledger as JSON: lengths by kind, and for each expected line how it is worked out. */
  String expectedJson() {
    StringBuilder json = new StringBuilder("{\n");
    json.append("  \"file\": ").append(quoted(file.substring(file.lastIndexOf('/') + 1) + ".ifc")).append(",\n");
    json.append("  \"title\": ").append(quoted(title)).append(",\n");
    json.append("  \"schema\": ").append(quoted(form.schema().name())).append(",\n");
    json.append("  \"lengthUnit\": ").append(quoted(form.unit().name().toLowerCase(Locale.ROOT))).append(",\n");
    json.append("  \"relativeTolerance\": 0.001,\n  \"lengthsM\": {");
    String comma = "\n";
    for (Map.Entry<String, List<Double>> e : house.expectedByKind().entrySet()) {
      json.append(comma).append("    ").append(quoted(e.getKey())).append(": [")
          .append(String.join(", ", e.getValue().stream().map(Sample::number).toList())).append(']');
      comma = ",\n";
    }
    json.append("\n  },\n  \"derivation\": [");
    comma = "\n";
    for (Map.Entry<ExpectedLine, Integer> e : counted().entrySet()) {
      ExpectedLine line = e.getKey();
      json.append(comma).append("    {\"kind\": ").append(quoted(line.kind())).append(", \"count\": ").append(e.getValue())
          .append(", \"lengthM\": ").append(number(line.lengthM())).append(", \"how\": ").append(quoted(line.how())).append('}');
      comma = ",\n";
    }
    json.append("\n  ]");
    if (!house.modelled().isEmpty()) {
      json.append(",\n  \"modelled\": [").append(String.join(",", house.modelled().stream().map(Sample::modelled).toList()))
          .append("\n  ]");
    }
    return json.append("\n}\n").toString();
  }

  private static String modelled(ExpectedLine line) {
    return "\n    {\"what\": " + quoted(line.kind()) + ", \"lengthM\": " + number(line.lengthM()) + ", \"how\": " + quoted(line.how())
        + "}";
  }

  private Map<ExpectedLine, Integer> counted() {
    Map<ExpectedLine, Integer> counted = new LinkedHashMap<>();
    house.expected().forEach(l -> counted.merge(l, 1, Integer::sum));
    return counted;
  }

  private static String number(double value) {
    return new BigDecimal(value).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
  }

  private static String quoted(String s) {
    return '"' + s.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
