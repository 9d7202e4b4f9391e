package org.seamledger.schema;

import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;

/** The classes and types of one schema, by keyword. */
public final class SchemaTables {

  private final Map<String, EntityDefinition> entities;
  private final Map<String, TypeDefinition> types;

  SchemaTables(Map<String, EntityDefinition> entities, Map<String, TypeDefinition> types) {
    this.entities = entities;
    this.types = types;
  }

  public Optional<EntityDefinition> entity(String keyword) {
    return Optional.ofNullable(entities.get(keyword));
  }

  /** All classes, by ascending keyword. */
  public Collection<EntityDefinition> entities() {
    return Collections.unmodifiableCollection(entities.values());
  }

  public Optional<TypeDefinition> type(String keyword) {
    return Optional.ofNullable(types.get(keyword));
  }

  /** Whether a class is another or a subtype of it; false for classes that the schema doesn't have. */
  public boolean isA(String keyword, String supertype) {
    EntityDefinition entity = entities.get(keyword);
    return entity != null && entity.isA(supertype);
  }
}
