package org.seamledger.schema;

import java.util.List;

/**
 * A defined type, an enumeration or a choice of types.
 *
 * @param keyword its name in upper case
 * @param base what its values are
 * @param aggregate whether a value is a list
 * @param items an enumeration's words; of a choice the keywords that it consists of
 */
public record TypeDefinition(String keyword, BaseType base, boolean aggregate, List<String> items) {

  public TypeDefinition {
    items = List.copyOf(items);
  }

  /** Whether it is a choice of other types. */
  public boolean isSelect() {
    return base == BaseType.OTHER;
  }
}
