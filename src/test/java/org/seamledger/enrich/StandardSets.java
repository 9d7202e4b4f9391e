package org.seamledger.enrich;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seamledger.schema.IfcRelease;

/**
 * The body's tables behind its rules: property and quantity sets of the standard, and the identifiers that representations may have.
 * Their types are those that the functions IfcShapeRepresentationTypes and IfcTopologyRepresentationTypes of the EXPRESS schemas name,
 * as the library {@code buildingsmartlibrary} holds them.
 */
final class StandardSets {

  /**
   * A property or quantity set of the standard.
   *
   * @param onTypes whether objects' types may have it
   * @param applicable classes, with a predefined type behind a slash where it is for that alone
   * @param items what it may hold, by name
   */
  record StandardSet(boolean onTypes, List<String> applicable, Map<String, Item> items) {
  }

  /** One item's class, the type of its value (empty: none stated), and the values of its enumeration. */
  record Item(String entity, String dataType, Set<String> values) {
  }

  private static final Pattern APPLICABLE = Pattern.compile("'(Ifc\\w+(?:/\\w+)?)'");
  private static final Pattern PREDEFINED = Pattern.compile("(Ifc\\w+)\\.PredefinedType=(\\w+)");
  private static final Pattern ITEM = Pattern.compile("\\{'property_name': '([^']*)', 'property_type': '(\\w+)'");
  private static final Pattern DATA_TYPE = Pattern.compile("'instance': '(\\w+)'(?:, 'values': \\[([^\\]]*)\\])?");
  private static final Pattern QUOTED = Pattern.compile("'([^']*)'");

  private final Map<String, StandardSet> sets = new HashMap<>();
  private final Set<String> identifiers;
  private final boolean statesQuantities;
  private final Set<String> shapeTypes;
  private final Set<String> topologyTypes;

  private StandardSets(Path folder, Path identifiers, String schema) throws IOException {
    try (InputStream in = StandardSets.class.getResourceAsStream("/schema/" + schema + ".exp")) {
      String express = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      this.shapeTypes = cases(express, "IfcShapeRepresentationTypes");
      this.topologyTypes = cases(express, "IfcTopologyRepresentationTypes");
    }
    read(folder.resolve("pset_definitions.csv"));
    Path quantities = folder.resolve("qto_definitions.csv");
    this.statesQuantities = Files.exists(quantities);
    if (statesQuantities) {
      read(quantities);
    }
    this.identifiers = Files.readAllLines(identifiers).stream().map(l -> l.split(",")[0].strip()).collect(Collectors.toSet());
  }

  /** Tables of a schema; the body publishes identifiers for IFC4 and later, and holds IFC2X3 to those of IFC4. */
  static StandardSets of(Path tables, IfcRelease release) {
    Map<IfcRelease, String> folders = Map.of(IfcRelease.IFC2X3, "IFC2X3", IfcRelease.IFC4, "IFC4", IfcRelease.IFC4X3_ADD2, "IFC4X3");
    Map<IfcRelease, String> schemas =
        Map.of(IfcRelease.IFC2X3, "IFC2X3_TC1", IfcRelease.IFC4, "IFC4_ADD2", IfcRelease.IFC4X3_ADD2, "IFC4X3_ADD2");
    String names = release == IfcRelease.IFC4X3_ADD2 ? "IFC4X3" : "IFC4";
    try {
      return new StandardSets(tables.resolve(folders.get(release)),
          tables.resolve(names).resolve("valid_ShapeRepresentationIdentifier.csv"), schemas.get(release));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Labels of the cases of a function in EXPRESS. */
  private static Set<String> cases(String express, String function) {
    Matcher text = Pattern.compile("(?s)FUNCTION " + function + "\\b(.*?)END_FUNCTION").matcher(express);
    if (!text.find()) {
      throw new IllegalStateException("no function " + function);
    }
    return Pattern.compile("'(\\w+)'\\s*:").matcher(text.group(1)).results().map(m -> m.group(1)).collect(Collectors.toSet());
  }

  private void read(Path table) throws IOException {
    List<String> lines = Files.readAllLines(table);
    for (String line : lines.subList(1, lines.size())) {
      int items = line.indexOf("\"[{");
      String head = items < 0 ? line : line.substring(0, items);
      List<String> applicable = APPLICABLE.matcher(head).results().map(m -> m.group(1)).toList();
      Matcher predefined = PREDEFINED.matcher(head);
      if (predefined.find()) {
        applicable = List.of(predefined.group(1) + "/" + predefined.group(2));
      }
      boolean onTypes = !head.contains("OCCURRENCEDRIVEN") && !head.contains("PERFORMANCEDRIVEN");
      sets.put(line.substring(0, line.indexOf(',')), new StandardSet(onTypes, applicable, items(line.substring(Math.max(items, 0)))));
    }
  }

  private static Map<String, Item> items(String text) {
    Map<String, Item> items = new HashMap<>();
    Matcher item = ITEM.matcher(text);
    int from = item.find() ? 0 : text.length();
    while (from < text.length()) {
      String name = item.group(1);
      String entity = item.group(2);
      int behind = item.end();
      from = item.find() ? item.start() : text.length();
      Matcher type = DATA_TYPE.matcher(text.substring(behind, from));
      Set<String> values = new HashSet<>();
      boolean typed = type.find();
      if (typed && type.group(2) != null) {
        QUOTED.matcher(type.group(2)).results().forEach(m -> values.add(m.group(1)));
      }
      items.put(name, new Item(entity, typed ? type.group(1) : "", values));
    }
    return items;
  }

  /** A set of the standard; empty: it has none of that name. */
  Optional<StandardSet> named(String name) {
    return Optional.ofNullable(sets.get(name));
  }

  boolean isIdentifier(String text) {
    return identifiers.contains(text);
  }

  boolean isShapeType(String text) {
    return shapeTypes.contains(text);
  }

  boolean isTopologyType(String text) {
    return topologyTypes.contains(text);
  }

  /** IFC2X3 has no table of quantities. */
  boolean statesQuantities() {
    return statesQuantities;
  }
}
