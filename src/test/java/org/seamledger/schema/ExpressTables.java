package org.seamledger.schema;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Derives the tables of {@code src/main/resources/org/seamledger/schema} from the EXPRESS schemas that the library
 * {@code buildingsmartlibrary} holds; run it to write them again. Only facts go over: names, order, types, supertypes.
 */
public final class ExpressTables {

  static final Map<IfcRelease, String> SOURCES = Map.of(IfcRelease.IFC2X3, "IFC2X3_TC1", IfcRelease.IFC4, "IFC4_ADD2",
      IfcRelease.IFC4X3_ADD2, "IFC4X3_ADD2");

  private static final Pattern TYPE = Pattern.compile("(?s)\\bTYPE (\\w+) =\\s*(.*?);(.*?)END_TYPE;");
  private static final Pattern ENTITY = Pattern.compile("(?s)\\bENTITY (\\w+)(.*?)END_ENTITY;");
  private static final Pattern SUBTYPE = Pattern.compile("SUBTYPE\\s+OF\\s*\\((\\w+)\\)");
  private static final Pattern ATTRIBUTE = Pattern.compile("(?s)^\\s*(\\w+)\\s*:\\s*(?:OPTIONAL\\s+)?(.*)$");
  private static final Pattern DERIVED = Pattern.compile("SELF\\\\\\w+\\.(\\w+)\\s*:");

  private static final Pattern DERIVE = Pattern.compile("(?s)\\bDERIVE\\b(.*?)(\\bINVERSE\\b|\\bWHERE\\b|$)");
  private static final String CLAUSE = "(?m)^\\s*(DERIVE|INVERSE|UNIQUE|WHERE)\\s*$";

  private ExpressTables() {
  }

  static String of(IfcRelease release) throws IOException {
    String text;
    try (InputStream in = ExpressTables.class.getResourceAsStream("/schema/" + SOURCES.get(release) + ".exp")) {
      text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
    String schema = text.replaceAll("(?s)\\(\\*.*?\\*\\)", "").replaceAll("--[^\n]*", "");
    StringBuilder table = new StringBuilder("# Names, order and types of " + release + ", from its EXPRESS schema (buildingSMART "
        + "International"
        + " Ltd., " + SOURCES.get(release) + ").\n");
    for (Matcher m = TYPE.matcher(schema); m.find();) {
      table.append(type(m.group(1), m.group(2).strip())).append('\n');
    }
    for (Matcher m = ENTITY.matcher(schema); m.find();) {
      table.append(entity(m.group(1), m.group(2))).append('\n');
    }
    return table.toString();
  }

  private static String type(String name, String definition) {
    if (definition.matches("(?s)(EXTENSIBLE |GENERIC_ENTITY )*(ENUMERATION|SELECT).*")) {
      String items = definition.substring(definition.indexOf('(') + 1, definition.lastIndexOf(')'));
      return (definition.contains("ENUMERATION") ? "N " : "S ") + name + " "
          + Arrays.stream(items.split(",")).map(String::strip).collect(Collectors.joining(" "));
    }
    return "T " + name + " " + target(definition);
  }

  /** A type without its bounds: {@code LIST [1:?] OF UNIQUE IfcX} is {@code *IfcX}. */
  private static String target(String definition) {
    boolean aggregate = definition.matches("(?s)(LIST|SET|BAG|ARRAY)\\b.*");
    String last = aggregate ? definition.substring(definition.lastIndexOf(" OF ") + 4) : definition;
    String word = last.strip().replaceFirst("^UNIQUE\\s+", "").replaceFirst("\\s*\\(.*", "").replaceFirst("\\s+FIXED$", "").strip();
    return (aggregate ? "*" : "") + word;
  }

  private static String entity(String name, String body) {
    Matcher parent = SUBTYPE.matcher(body);
    StringBuilder line = new StringBuilder(body.substring(0, body.indexOf(';')).contains("ABSTRACT") ? "A " : "E ").append(name).append(' ')
        .append(parent.find() ? parent.group(1) : "-");
    String rest = body.substring(body.indexOf(';') + 1);
    String explicit = rest.split(CLAUSE, 2)[0];
    for (String statement : explicit.split(";")) {
      Matcher attribute = ATTRIBUTE.matcher(statement);
      if (attribute.matches()) {
        line.append(' ').append(attribute.group(1)).append(':').append(target(attribute.group(2).strip()));
      }
    }
    Matcher derive = DERIVE.matcher(rest.substring(explicit.length()));
    if (derive.find()) {
      for (Matcher d = DERIVED.matcher(derive.group(1)); d.find();) {
        line.append(" !").append(d.group(1));
      }
    }
    return line.toString();
  }

  /** Writes the tables again. */
  public static void main(String[] args) throws IOException {
    for (IfcRelease release : IfcRelease.values()) {
      Files.writeString(Path.of("src/main/resources/org/seamledger/schema", release.name().toLowerCase(Locale.ROOT) + ".txt"), of(release));
    }
  }
}
