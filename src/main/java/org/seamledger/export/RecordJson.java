package org.seamledger.export;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.seamledger.journal.EventKind;
import org.seamledger.journal.ItemState;
import org.seamledger.journal.PlaceState;
import org.seamledger.journal.SiteEvent;
import org.seamledger.journal.SiteRecord;
import org.seamledger.ledger.OwnersRecord;
import org.seamledger.ledger.SiteLinks;
import org.seamledger.ledger.SitePhotos;

/** The record of the work on a roof as JSON: how it stands, for the page, and whole, for the owner. */
public final class RecordJson {

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String FORM = "seamledger-record";

  private final JsonGenerator out;

  /** Whether words are given that a telephone has already. */
  private final boolean isWhole;

  private RecordJson(JsonGenerator out, boolean isWhole) {
    this.out = out;
    this.isWhole = isWhole;
  }

  private interface Content {
    void write(RecordJson json) throws IOException;
  }

  private static byte[] bytes(boolean isForPeople, Content content) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (JsonGenerator out = MAPPER.createGenerator(bytes)) {
      if (isForPeople) {
        out.useDefaultPrettyPrinter();
      }
      out.writeStartObject();
      content.write(new RecordJson(out, isForPeople));
      out.writeEndObject();
    }
    return bytes.toByteArray();
  }

  /** How the work stands: for each place where something was said or that has something to tick, its points and what was said. */
  public static byte[] state(SiteRecord record) throws IOException {
    return bytes(false, json -> {
      json.out.writeNumberField("version", record.version());
      json.out.writeStringField("head", record.head());
      json.coverage(record.coverage());
      json.places(record);
      json.events("elsewhere", record.elsewhere());
    });
  }

  /** The record for the owner. The chain of events is checked by anybody: see {@link org.seamledger.journal.EventChain}. */
  public static byte[] whole(OwnersRecord owners) throws IOException {
    return bytes(true, json -> {
      JsonGenerator out = json.out;
      SiteRecord record = owners.record();
      out.writeStringField("form", FORM);
      out.writeNumberField("formVersion", 1);
      out.writeStringField("project", owners.project());
      out.writeStringField("title", owners.analysis().title());
      out.writeStringField("revision", owners.analysis().revision().words());
      out.writeStringField("analysis", owners.analysis().id());
      out.writeStringField("result", owners.result());
      json.coverage(record.coverage());
      json.events("weather", owners.events(EventKind.WEATHER));
      json.events("lots", owners.events(EventKind.LOT));
      json.events("deviations", owners.events(EventKind.DEVIATION, EventKind.FAILURE));
      json.photos(owners);
      json.links(owners);
      json.places(record);
      json.chain(record);
    });
  }

  private void photos(OwnersRecord owners) throws IOException {
    out.writeArrayFieldStart("photos");
    for (SiteEvent e : owners.events(EventKind.PHOTO)) {
      SitePhotos.Photo photo = owners.photos().get(e.id());
      out.writeStartObject();
      out.writeStringField("event", e.id());
      out.writeStringField("place", e.text("place"));
      out.writeStringField("point", e.point());
      out.writeStringField("by", e.by());
      out.writeStringField("at", e.at());
      out.writeStringField("sha256", e.text("photo"));
      if (photo != null) {
        out.writeNumberField("width", photo.width());
        out.writeNumberField("height", photo.height());
        out.writeNumberField("bytes", photo.bytes());
        out.writeStringField("location", photo.location());
      }
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  /** Whom each link was made for that events name; the links themselves are nobody's to know. */
  private void links(OwnersRecord owners) throws IOException {
    out.writeArrayFieldStart("links");
    for (SiteLinks.Link link : owners.links()) {
      out.writeStartObject();
      out.writeStringField("id", link.id());
      out.writeStringField("name", link.name());
      out.writeStringField("scope", link.scope().word());
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  private void coverage(SiteRecord.Coverage c) throws IOException {
    out.writeObjectFieldStart("coverage");
    out.writeNumberField("lengthM", rounded(c.lengthM()));
    out.writeNumberField("checkedM", rounded(c.checkedM()));
    out.writeNumberField("signedM", rounded(c.signedM()));
    out.writeNumberField("openPoints", c.openPoints());
    out.writeNumberField("conflicts", c.conflicts());
    out.writeEndObject();
  }

  private static double rounded(double metres) {
    return Math.round(metres * 1e6) / 1e6;
  }

  private void places(SiteRecord record) throws IOException {
    out.writeArrayFieldStart("places");
    for (PlaceState p : record.places()) {
      out.writeStartObject();
      out.writeStringField("id", p.place().id());
      out.writeStringField("kind", p.place().kind());
      out.writeStringField("detail", p.place().detail());
      out.writeNumberField("lengthM", rounded(p.place().lengthM()));
      out.writeStringField("stage", p.stage().word());
      if (p.signature().isPresent()) {
        out.writeObjectFieldStart("signed");
        out.writeStringField("by", p.signature().get().by());
        out.writeStringField("at", p.signature().get().at());
        out.writeEndObject();
      }
      items(p.items());
      events("events", p.events());
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  private void items(List<ItemState> items) throws IOException {
    out.writeArrayFieldStart("items");
    for (ItemState i : items) {
      out.writeStartObject();
      out.writeStringField("id", i.item().id());
      out.writeBooleanField("isStep", i.item().isStep());
      if (isWhole) {
        out.writeStringField("label", i.item().label());
        out.writeStringField("check", i.item().check());
      }
      out.writeStringField("standing", i.standing().word());
      out.writeBooleanField("locked", i.isLocked());
      out.writeArrayFieldStart("answers");
      for (SiteEvent e : i.answers()) {
        out.writeString(e.id());
      }
      out.writeEndArray();
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  /** Without what only the chain needs. */
  private void events(String name, List<SiteEvent> events) throws IOException {
    out.writeArrayFieldStart(name);
    for (SiteEvent e : events) {
      out.writeStartObject();
      out.writeNumberField("seq", e.seq());
      for (String field : List.of("id", "kind", "place", "point", "by", "at", "received", "text", "photo")) {
        out.writeStringField(field, e.text(field));
      }
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  private void chain(SiteRecord record) throws IOException {
    out.writeStringField("head", record.head());
    out.writeArrayFieldStart("chain");
    for (SiteEvent e : record.events()) {
      out.writeStartObject();
      e.fields().properties().forEach(f -> field(f.getKey(), f.getValue()));
      out.writeStringField("hash", e.hash());
      out.writeEndObject();
    }
    out.writeEndArray();
  }

  private void field(String name, JsonNode value) {
    try {
      out.writeFieldName(name);
      out.writeTree(value);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
