package org.seamledger.order;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Prices by lines of an order.
 *
 * @param file the name it goes by
 * @param currency text as the file has it, or empty
 * @param rows in the file's order
 */
public record PriceList(String file, String currency, List<Row> rows) {

  public PriceList {
    rows = List.copyOf(rows);
  }

  /**
   * A price.
   *
   * @param line of the file, from 1
   * @param id of a line of the order, or a pattern in which {@code *} stands for anything
   * @param unit that it is for, in the words of {@link PriceUnit}
   * @param hours of labour for one unit
   */
  public record Row(int line, String id, String unit, BigDecimal price, BigDecimal hours, String note) {

    boolean isPattern() {
      return id.indexOf('*') >= 0;
    }

    boolean matches(String orderId) {
      return !isPattern() ? id.equals(orderId)
          : Pattern.matches(Pattern.quote(id).replace("*", "\\E.*\\Q"), orderId);
    }

    /** The more of the id a row states, the sooner it applies. */
    int stated() {
      return isPattern() ? id.replace("*", "").length() : Integer.MAX_VALUE;
    }
  }

  /** The row that states most of a line's id; of equals the first. */
  Optional<Row> of(String orderId) {
    Row best = null;
    for (Row row : rows) {
      if (row.matches(orderId) && (best == null || row.stated() > best.stated())) {
        best = row;
      }
    }
    return Optional.ofNullable(best);
  }

  /**
   * Reads a price list.
   *
   * @throws PriceFormatException if it can't be used, with the place of the first mistake of each line
   */
  public static PriceList parse(String text, String file) {
    return PriceReader.read(text, file);
  }
}
