package org.seamledger.order;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class PriceListTest {

  @Test
  void readsWhatSpreadsheetsWrite() {
    PriceList list = PriceList.parse("\ufeffid;unit;price;note\r\n\"trim:*\";length;12.5;\"by \"\"us\"\"; all\"\r\n\r\n", "p.csv");
    assertThat(list.rows()).hasSize(1);
    assertThat(list.rows().get(0).note()).isEqualTo("by \"us\"; all");
    assertThat(list.rows().get(0).price()).isEqualByComparingTo("12.5");
  }

  @Test
  void theRowThatStatesMostWins() {
    PriceList list = PriceList.parse("id,unit,price\n*,piece,1\ntrim:*,m,2\ntrim:ridge cap,m,3\n", "p.csv");
    assertThat(list.of("trim:ridge cap").orElseThrow().price()).isEqualByComparingTo("3");
    assertThat(list.of("trim:eave trim").orElseThrow().price()).isEqualByComparingTo("2");
    assertThat(list.of("clip").orElseThrow().price()).isEqualByComparingTo("1");
  }

  @Test
  void everyMistakeHasItsPlace() {
    assertThatThrownBy(() -> PriceList.parse("id,unit,price,note\ntape,roll,\"12,50\",\nclip,stone,1,\n,m,1,\ntape,m,-3,\n", "p.csv"))
        .isInstanceOf(PriceFormatException.class)
        .hasMessageContaining(
            "p.csv: line 2, column 11: expected a price such as 12.50, with a point and without a currency, found \"12,50\"")
        .hasMessageContaining("line 3, column 6: expected one of the units piece, m,").hasMessageContaining("found \"stone\"")
        .hasMessageContaining("line 4, column 1: expected the id of a line of the order")
        .hasMessageContaining("line 5, column 8: expected a price");
    assertThatThrownBy(() -> PriceList.parse("", "p.csv")).hasMessageContaining("line 1, column 1: expected a head line");
    assertThatThrownBy(() -> PriceList.parse("id,unit\n", "p.csv")).hasMessageContaining("expected a column price, found none");
    assertThatThrownBy(() -> PriceList.parse("id,unit,price,colour\n", "p.csv")).hasMessageContaining("line 1, column 15")
        .hasMessageContaining("\"colour\"");
    assertThatThrownBy(() -> PriceList.parse("id,unit,price\nclip,box,1\nclip,box,2\n", "p.csv")).hasMessageContaining("line 3, column 1")
        .hasMessageContaining("each id or pattern once");
    assertThatThrownBy(() -> PriceList.parse("id,unit,price,currency\nclip,box,1,EUR\ntape,roll,2,USD\n", "p.csv"))
        .hasMessageContaining("line 3, column 13").hasMessageContaining("one currency");
  }
}
