package org.seamledger.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.seamledger.finding.Sha256;

/**
 * The chain that events form. The hash of an event is SHA-256 (FIPS 180-4) over the UTF-8 of its canonical JSON (RFC 8785), in which
 * {@code previous} is the hash of the event before it, or {@value #START} for the first. Who changes, drops or inserts an event has to
 * change every hash behind it; that the last ones were cut off shows only to who noted a later hash.
 */
public final class EventChain {

  /** Stands for the event before the first. */
  public static final String START = "0000000000000000000000000000000000000000000000000000000000000000";

  private EventChain() {
  }

  /** The event that follows another. */
  public static SiteEvent next(ObjectNode fields, long seq, String previous) {
    fields.put("seq", seq).put("previous", previous);
    String body = CanonicalJson.of(fields);
    return SiteEvent.stored(body, hash(body));
  }

  private static String hash(String body) {
    return Sha256.hex(body.getBytes(StandardCharsets.UTF_8));
  }

  /** What is wrong with a chain, in words; empty where it is whole. */
  public static Optional<String> fault(List<SiteEvent> events) {
    String previous = START;
    long seq = 0;
    for (SiteEvent e : events) {
      seq++;
      if (e.seq() != seq) {
        return Optional.of("event " + seq + " is missing: the next one says that it is number " + e.seq());
      }
      if (!e.text("previous").equals(previous)) {
        return Optional.of("event " + seq + " does not follow the one before it: one of the two was changed");
      }
      if (!hash(CanonicalJson.of(e.fields())).equals(e.hash())) {
        return Optional.of("event " + seq + " was changed: its hash is not that of what it says");
      }
      previous = e.hash();
    }
    return Optional.empty();
  }

  /** The events of a record that was handed out: objects with their {@code hash} among their fields. */
  public static SiteEvent handedOut(JsonNode event) {
    ObjectNode fields = event.deepCopy();
    fields.remove("hash");
    return SiteEvent.stored(fields.toString(), event.path("hash").asText(""));
  }
}
