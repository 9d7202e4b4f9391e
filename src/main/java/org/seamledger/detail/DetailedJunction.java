package org.seamledger.detail;

/**
 * A junction with its kind and the detail that the rules chose.
 *
 * @param detail {@link Detail#NONE} where none or several fit: a finding says so
 */
public record DetailedJunction(KindedJunction junction, Detail detail) {
}
