/**
 * Formulas of quantities, each a small pure class: lengths in metres, volumes in cubic metres, angles in degrees, shares of one.
 *
 * <p>Every formula was derived from first principles and agrees with a second method on the worked examples in the tests. Figures that
 * the trade uses without a public source (a tape's reach, the size of a tape under a fastening flange) are arguments, never constants.
 */
package org.seamledger.quantity.formula;
