package org.seamledger.schema;

/** What a defined type's values are in the end, by EXPRESS. */
public enum BaseType {
  STRING, REAL, INTEGER, NUMBER, BOOLEAN, LOGICAL, BINARY, ENUMERATION,
  /** A choice between other types, or a reference to an entity. */
  OTHER;
}
