package org.seamledger.ids;

import java.util.Collections;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.IfcRelease;
import org.seamledger.schema.SchemaTables;

/**
 * The names that an entity facet may use in a schema: its classes that have instances, and in IFC2X3 also those that came with IFC4 where
 * IFC2X3 has only the class of the type (IDS 1.0, entity-facet.md, "Special cases in IFC2X3"): {@code IFCAIRTERMINAL} is an occurrence
 * whose type is an {@code IFCAIRTERMINALTYPE}.
 */
public final class EntityNames {

  private static final String TYPE = "TYPE";

  /** Made once, when a model or specification of IFC2X3 first asks. */
  private static final class ByType {
    static final Map<String, EntityDefinition> NAMES = Collections.unmodifiableMap(read());
  }

  private EntityNames() {
  }

  /** The names that fit, each with the class that says which attributes there are. */
  public static Map<String, EntityDefinition> matching(IfcRelease release, Predicate<String> name) {
    Map<String, EntityDefinition> found = new TreeMap<>();
    release.tables().entities().stream().filter(e -> !e.isAbstract() && name.test(e.keyword())).forEach(e -> found.put(e.keyword(), e));
    if (release == IfcRelease.IFC2X3) {
      byType().forEach((keyword, entity) -> {
        if (name.test(keyword)) {
          found.put(keyword, entity);
        }
      });
    }
    return found;
  }

  /** Names that IFC2X3 knows by the type only, each with the class of the occurrences. */
  static Map<String, EntityDefinition> byType() {
    return ByType.NAMES;
  }

  private static Map<String, EntityDefinition> read() {
    Map<String, EntityDefinition> found = new TreeMap<>();
    SchemaTables old = IfcRelease.IFC2X3.tables();
    SchemaTables later = IfcRelease.IFC4.tables();
    for (EntityDefinition type : old.entities()) {
      String name = type.keyword().endsWith(TYPE) ? type.keyword().substring(0, type.keyword().length() - TYPE.length()) : "";
      if (!type.isAbstract() && old.entity(name).isEmpty() && later.entity(name).filter(e -> !e.isAbstract()).isPresent()) {
        occurrence(old, type).ifPresent(o -> found.put(name, o));
      }
    }
    return found;
  }

  /** The nearest class of occurrences that goes with a class of types, by their names. */
  private static Optional<EntityDefinition> occurrence(SchemaTables tables, EntityDefinition type) {
    return type.ancestors().stream().filter(a -> a.endsWith(TYPE) && !a.equals(type.keyword()))
        .map(a -> tables.entity(a.substring(0, a.length() - TYPE.length()))).flatMap(Optional::stream)
        .filter(e -> e.isA("IFCPRODUCT")).max(Comparator.comparingInt(e -> e.ancestors().size()));
  }

  /** What an occurrence in IFC2X3 is called by its type; empty where the type adds no name. */
  public static String nameByType(String typeKeyword) {
    String name = typeKeyword.endsWith(TYPE) ? typeKeyword.substring(0, typeKeyword.length() - TYPE.length()) : "";
    return byType().containsKey(name) ? name : "";
  }
}
