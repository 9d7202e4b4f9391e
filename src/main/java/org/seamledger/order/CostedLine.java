package org.seamledger.order;

import java.math.BigDecimal;

/**
 * What a line of the order costs.
 *
 * @param price for one unit, as it was stated
 * @param unit that the price is for
 * @param amount of that unit that is bought
 * @param cost price times amount, to the hundredth
 * @param hours of labour for the net amount, to the hundredth; 0 where none are stated
 * @param note of the price
 */
public record CostedLine(OrderLine line, BigDecimal price, String unit, BigDecimal amount, BigDecimal cost, BigDecimal hours, String note) {
}
