package org.seamledger.schema;

/**
 * An explicit attribute of a class.
 *
 * @param type name of its type in upper case: a defined type, an entity, or a simple type such as {@code STRING}
 * @param aggregate whether it holds a list, set, bag or array
 * @param derived whether the class derives it from others, so that a file states no value
 */
public record AttributeDefinition(String name, String type, boolean aggregate, boolean derived) {

  AttributeDefinition asDerived() {
    return new AttributeDefinition(name, type, aggregate, true);
  }
}
