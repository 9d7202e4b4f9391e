package org.seamledger.junction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Iterator;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Facts beside a map of the same names and values. */
class FactsTest {

  private static final Map<String, Object> MAP = new TreeMap<>(Map.of("slopeDegrees", 26.5, "faces", 2, "curved", true, "contact", "wall"));

  @Test
  void factsAreFoundByTheirNames() {
    Facts facts = Facts.of(MAP);
    assertThat(facts.number("slopeDegrees")).isEqualTo(26.5);
    assertThat(facts.number("faces")).isEqualTo(2);
    assertThat(facts.number("contact")).isNaN();
    assertThat(facts.number("aName")).isNaN();
    assertThat(facts.flag("curved")).isTrue();
    assertThat(facts.flag("zName")).isFalse();
    assertThat(facts.word("contact")).isEqualTo("wall");
    assertThat(facts.word("faces")).isEmpty();
    assertThat(facts.has("faces")).isTrue();
    assertThat(facts.has("slope")).isFalse();
    assertThat(facts.number(new String("slopeDegrees"))).as("a name that was read").isEqualTo(26.5);
  }

  @Test
  void asAMapTheyAreSortedAndStayAsTheyAre() {
    Map<String, Object> map = Facts.of(MAP).asMap();
    assertThat(map).isEqualTo(MAP).hasSameHashCodeAs(MAP).hasToString(MAP.toString()).hasSize(4);
    assertThat(map.keySet()).containsExactly("contact", "curved", "faces", "slopeDegrees");
    assertThat(map.get("faces")).isEqualTo(2);
    assertThat(map.get("slope")).isNull();
    assertThat(map.containsKey("curved")).isTrue();
    assertThat(map.get((Object) 3)).isNull();
    assertThatThrownBy(() -> map.put("faces", 3)).isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> map.remove("faces")).isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> map.entrySet().iterator().next().setValue(3)).isInstanceOf(UnsupportedOperationException.class);
    Iterator<Map.Entry<String, Object>> entries = Facts.builder().build().asMap().entrySet().iterator();
    assertThatThrownBy(entries::next).isInstanceOf(NoSuchElementException.class);
  }

  @Test
  void theLastOfANameCountsAndWhatWasBuiltStays() {
    Facts.Builder builder = Facts.builder().number("lengthM", 1).number("lengthM", -0.0).number("depthM", Double.NaN);
    Facts facts = builder.build();
    builder.number("lengthM", 3);
    assertThat(facts).isEqualTo(Facts.of(Map.of("lengthM", 0.0))).hasSameHashCodeAs(Facts.of(Map.of("lengthM", 0.0)))
        .hasToString("{lengthM=0.0}").isNotEqualTo(builder.build());
    assertThat(facts.toBuilder().flag("curved", false).build()).isEqualTo(Facts.of(Map.of("lengthM", 0.0, "curved", false)));
  }
}
