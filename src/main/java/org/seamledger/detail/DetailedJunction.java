package org.seamledger.detail;

import java.util.Optional;

/**
 * A junction with its kind and detail in force: those of the rules, or those that a person chose.
 *
 * @param detail {@link Detail#NONE} where none or several fit: a finding says so
 * @param decided what a person chose here, where somebody did
 */
public record DetailedJunction(KindedJunction junction, Detail detail, Optional<Decided> decided) {

  /** As the rules say. */
  public DetailedJunction(KindedJunction junction, Detail detail) {
    this(junction, detail, Optional.empty());
  }
}
