package org.seamledger.journal;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class EventChainTest {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private static List<SiteEvent> chain(int count) {
    List<SiteEvent> events = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      ObjectNode fields = MAPPER.createObjectNode().put("kind", "note").put("text", "event " + i + " \u20ac \"quoted\"\n");
      events.add(EventChain.next(fields, i, events.isEmpty() ? EventChain.START : events.get(i - 2).hash()));
    }
    return events;
  }

  @Test
  void aChangeAGapAndAnotherOrderShow() {
    List<SiteEvent> events = chain(5);
    assertThat(EventChain.fault(events)).isEmpty();
    List<SiteEvent> changed = new ArrayList<>(events);
    changed.set(2, SiteEvent.stored(events.get(2).body().replace("event 3", "event 8"), events.get(2).hash()));
    assertThat(EventChain.fault(changed)).hasValueSatisfying(f -> assertThat(f).contains("event 3").contains("changed"));
    List<SiteEvent> gap = new ArrayList<>(events);
    gap.remove(1);
    assertThat(EventChain.fault(gap)).hasValueSatisfying(f -> assertThat(f).contains("event 2 is missing"));
    List<SiteEvent> swapped = new ArrayList<>(events);
    swapped.set(3, chain(6).get(5));
    assertThat(EventChain.fault(swapped)).isPresent();
  }

  /** RFC 8785, section 3.2.2: the sample's texts and order, with its numbers left out, of which the record has none. */
  @Test
  void textsAndOrderAreThoseOfTheStandardsSample() throws IOException {
    JsonNode sample =
        MAPPER.readTree("{\"string\": \"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\", \"literals\": [null, true, false]}");
    assertThat(CanonicalJson.of(sample)).isEqualTo("{\"literals\":[null,true,false],\"string\":\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
  }
}
