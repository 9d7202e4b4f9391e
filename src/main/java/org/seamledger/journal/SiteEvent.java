package org.seamledger.journal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;

/**
 * One event of a record, as it is stored: an object in the canonical form of JSON (RFC 8785), and its hash.
 *
 * <p>Fields: {@code seq} its number from 1, {@code id} a UUID by who sent it, {@code kind}, {@code project}, {@code analysis} the revision
 * that the sender had before them, {@code place} a junction's or node's id there or empty for the whole roof, {@code line} the id by
 * which the place goes through all revisions, {@code point} a hold point or step or empty, {@code by} the name that was given, {@code
 * link} the link that let them in or {@code operator}, {@code at} the sender's clock, {@code received} the server's, {@code base} the
 * number of the last event that the sender had seen, {@code after} the sender's own event before this one about the same point or empty,
 * {@code text}, {@code photo} the SHA-256 of a picture or empty, {@code basis} of a sign-off: what was signed, {@code previous} the hash
 * of the event before.
 */
public final class SiteEvent {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final String body;
  private final JsonNode fields;
  private final String hash;

  private SiteEvent(String body, JsonNode fields, String hash) {
    this.body = body;
    this.fields = fields;
    this.hash = hash;
  }

  /** @throws IllegalArgumentException where the text is no JSON object */
  public static SiteEvent stored(String body, String hash) {
    try {
      JsonNode fields = MAPPER.readTree(body);
      if (!fields.isObject()) {
        throw new IllegalArgumentException("an event of the record is no JSON object");
      }
      return new SiteEvent(body, fields, hash);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("an event of the record is no JSON", e);
    }
  }

  /** What is hashed. */
  public String body() {
    return body;
  }

  public String hash() {
    return hash;
  }

  /** The object as it was stored; not to be changed. */
  public JsonNode fields() {
    return fields;
  }

  /** A text of the event; empty where it has none of that name. */
  public String text(String name) {
    return fields.path(name).asText("");
  }

  public long seq() {
    return fields.path("seq").asLong();
  }

  long base() {
    return fields.path("base").asLong();
  }

  public String id() {
    return text("id");
  }

  public EventKind kind() {
    return EventKind.of(text("kind")).orElse(EventKind.NOTE);
  }

  public String line() {
    return text("line");
  }

  public String point() {
    return text("point");
  }

  public String by() {
    return text("by");
  }

  public String at() {
    return text("at");
  }

  JsonNode basis() {
    return fields.path("basis");
  }
}
