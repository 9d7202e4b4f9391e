package org.seamledger.schema;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Reads a schema's table, a line a definition, names divided by blanks:
 * {@code E name supertype-or-- attributes…} an entity, {@code A …} an abstract one; an attribute is {@code Name:Type}, {@code Name:*Type}
 * an aggregate, {@code !Name} an inherited one that is derived here; {@code T name type} a defined type, {@code *type} a list;
 * {@code N name words…} an enumeration; {@code S name members…} a choice.
 */
final class TableReader {

  private record Draft(String name, String parent, boolean isAbstract, List<String> attributes) {
  }

  private final Map<String, Draft> drafts = new HashMap<>();
  private final Map<String, String> aliases = new HashMap<>();
  private final Map<String, TypeDefinition> types = new TreeMap<>();
  private final Map<String, EntityDefinition> entities = new TreeMap<>();

  private TableReader() {
  }

  static SchemaTables read(IfcRelease release) {
    String name = release.name().toLowerCase(Locale.ROOT) + ".txt";
    TableReader reader = new TableReader();
    try (InputStream in = TableReader.class.getResourceAsStream(name);
        BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      lines.lines().filter(line -> !line.startsWith("#")).forEach(reader::line);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    reader.aliases.keySet().forEach(reader::type);
    reader.drafts.keySet().forEach(reader::entity);
    return new SchemaTables(reader.entities, reader.types);
  }

  private void line(String line) {
    String[] words = line.split(" ");
    List<String> rest = List.of(words).subList(2, words.length);
    String keyword = upper(words[1]);
    switch (words[0]) {
      case "E", "A" -> drafts.put(keyword, new Draft(words[1], upper(rest.get(0)), words[0].equals("A"), rest.subList(1, rest.size())));
      case "T" -> aliases.put(keyword, upper(rest.get(0)));
      case "N" -> types.put(keyword, new TypeDefinition(keyword, BaseType.ENUMERATION, false, rest));
      case "S" -> types.put(keyword, new TypeDefinition(keyword, BaseType.OTHER, false, rest.stream().map(TableReader::upper).toList()));
      default -> throw new IllegalStateException(line);
    }
  }

  private TypeDefinition type(String keyword) {
    TypeDefinition known = types.get(keyword);
    if (known != null) {
      return known;
    }
    String alias = aliases.get(keyword);
    boolean aggregate = alias.startsWith("*");
    String target = aggregate ? alias.substring(1) : alias;
    TypeDefinition of = aliases.containsKey(target) || types.containsKey(target) ? type(target) : null;
    BaseType base = of != null ? of.base() : drafts.containsKey(target) ? BaseType.OTHER : BaseType.valueOf(target);
    TypeDefinition type = new TypeDefinition(keyword, base, aggregate || of != null && of.aggregate(), of == null ? List.of() : of.items());
    types.put(keyword, type);
    return type;
  }

  private EntityDefinition entity(String keyword) {
    EntityDefinition known = entities.get(keyword);
    if (known != null) {
      return known;
    }
    Draft draft = drafts.get(keyword);
    Set<String> ancestors = new HashSet<>(Set.of(keyword));
    List<AttributeDefinition> attributes = new ArrayList<>();
    if (!draft.parent().equals("-")) {
      EntityDefinition parent = entity(draft.parent());
      ancestors.addAll(parent.ancestors());
      attributes.addAll(parent.attributes());
    }
    draft.attributes().forEach(word -> add(word, attributes));
    EntityDefinition entity = new EntityDefinition(draft.name(), keyword, ancestors, draft.isAbstract(), attributes);
    entities.put(keyword, entity);
    return entity;
  }

  private static void add(String word, List<AttributeDefinition> attributes) {
    if (word.startsWith("!")) {
      attributes.replaceAll(a -> a.name().equals(word.substring(1)) ? a.asDerived() : a);
      return;
    }
    String name = word.substring(0, word.indexOf(':'));
    String type = word.substring(name.length() + 1);
    boolean aggregate = type.startsWith("*");
    attributes.add(new AttributeDefinition(name, upper(aggregate ? type.substring(1) : type), aggregate, false));
  }

  private static String upper(String name) {
    return name.toUpperCase(Locale.ROOT);
  }
}
