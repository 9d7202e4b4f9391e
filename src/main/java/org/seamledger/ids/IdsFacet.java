package org.seamledger.ids;

import java.util.Optional;

/** What an element is asked for, by the six facets of IDS 1.0. {@code at} is where it stands in its document. */
public sealed interface IdsFacet {

  /** A place in the document. */
  record At(int line, int column) {
  }

  At at();

  record EntityFacet(At at, ValueConstraint name, Optional<ValueConstraint> predefinedType) implements IdsFacet {
  }

  record AttributeFacet(At at, ValueConstraint name, Optional<ValueConstraint> value) implements IdsFacet {
  }

  record ClassificationFacet(At at, ValueConstraint system, Optional<ValueConstraint> value) implements IdsFacet {
  }

  /** @param dataType keyword of a type, such as {@code IFCLABEL} */
  record PropertyFacet(At at, ValueConstraint propertySet, ValueConstraint baseName, Optional<String> dataType,
      Optional<ValueConstraint> value) implements IdsFacet {
  }

  record MaterialFacet(At at, Optional<ValueConstraint> value) implements IdsFacet {
  }

  /** @param relation as the document writes it; empty for all of them */
  record PartOfFacet(At at, Optional<String> relation, EntityFacet whole) implements IdsFacet {
  }
}
