package org.seamledger.schema;

import java.util.List;
import java.util.Set;

/**
 * A class of a schema.
 *
 * @param name as the schema writes it, such as {@code IfcWall}
 * @param keyword the name in upper case, as files have it
 * @param ancestors keywords of all supertypes and of itself
 * @param isAbstract whether no instance can be of this class itself
 * @param attributes all explicit ones, inherited first: the order of parameters in a file
 */
public record EntityDefinition(String name, String keyword, Set<String> ancestors, boolean isAbstract,
    List<AttributeDefinition> attributes) {

  public EntityDefinition {
    ancestors = Set.copyOf(ancestors);
    attributes = List.copyOf(attributes);
  }

  /** Whether it is that class or a subtype of it. */
  public boolean isA(String supertype) {
    return ancestors.contains(supertype);
  }

  /** Where an attribute stands among the parameters, from 0; -1 where there is none of that name. */
  public int indexOf(String attribute) {
    for (int i = 0; i < attributes.size(); i++) {
      if (attributes.get(i).name().equals(attribute)) {
        return i;
      }
    }
    return -1;
  }
}
