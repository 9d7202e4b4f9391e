package org.seamledger.export;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Collection;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.KindedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.measure.Format;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/**
 * The ledger as one JSON document: the form that programs read. Lengths are metres, areas square metres, angles degrees, places world
 * coordinates of the model; numbers are rounded to six places. Fields stand in a fixed order and lists in the takeoff's.
 */
public final class JsonLedger {

  /** Raised when a field changes its meaning or goes; new fields don't raise it. */
  public static final int CONTRACT = 1;

  /** A micrometre, a square millimetre: beyond what any model states. */
  private static final int PLACES = 6;
  private static final JsonFactory FACTORY = new JsonFactory();

  private final Takeoff takeoff;
  private final JsonGenerator json;
  private final Map<String, SortedSet<String>> codes;

  private JsonLedger(Takeoff takeoff, JsonGenerator json) {
    this.takeoff = takeoff;
    this.json = json;
    this.codes = takeoff.codesByJunction();
  }

  /** Writes the document and a line end, and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    try (JsonGenerator json = FACTORY.createGenerator(out, JsonEncoding.UTF8)) {
      json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      json.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n")));
      new JsonLedger(takeoff, json).document();
      json.writeRaw('\n');
    }
  }

  private void document() throws IOException {
    json.writeStartObject();
    json.writeNumberField("contract", CONTRACT);
    program();
    models();
    json.writeFieldName("system");
    tree(takeoff.system().toMap());
    tolerances();
    roofFaces();
    junctions();
    elements();
    findings();
    json.writeEndObject();
  }

  private void program() throws IOException {
    json.writeObjectFieldStart("program");
    json.writeStringField("name", Program.NAME);
    json.writeStringField("version", takeoff.version());
    json.writeStringField("shapes", takeoff.shapes());
    json.writeEndObject();
  }

  private void models() throws IOException {
    json.writeArrayFieldStart("models");
    for (ModelInfo model : takeoff.models()) {
      json.writeStartObject();
      json.writeStringField("file", model.file());
      json.writeStringField("sha256", model.sha256());
      json.writeStringField("schema", model.schema());
      json.writeStringField("lengthUnit", model.lengthUnit());
      json.writeStringField("application", model.application());
      json.writeNumberField("bytes", model.bytes());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void tolerances() throws IOException {
    json.writeObjectFieldStart("tolerances");
    number("coincidenceM", takeoff.tolerance().coincidenceM());
    number("gapM", takeoff.tolerance().gapM());
    number("upstandM", takeoff.tolerance().upstandM());
    number("facetTurnDegrees", takeoff.tolerance().facetTurnDegrees());
    number("levelDegrees", takeoff.tolerance().levelDegrees());
    json.writeEndObject();
  }

  /** Maps, lists, words and numbers, as they come. */
  private void tree(Object value) throws IOException {
    if (value instanceof Map<?, ?> map) {
      json.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        json.writeFieldName(entry.getKey().toString());
        tree(entry.getValue());
      }
      json.writeEndObject();
    } else if (value instanceof Collection<?> list) {
      json.writeStartArray();
      for (Object item : list) {
        tree(item);
      }
      json.writeEndArray();
    } else {
      json.writeObject(value);
    }
  }

  private void roofFaces() throws IOException {
    json.writeArrayFieldStart("roofFaces");
    for (RoofFace face : takeoff.faces()) {
      json.writeStartObject();
      json.writeStringField("id", face.id());
      strings("elements", face.elements());
      number("slopeDegrees", face.slopeDegrees());
      number("risePer12", face.risePer12());
      number("fallAzimuthDegrees", face.fallAzimuthDegrees());
      number("areaM2", face.areaM2());
      number("planAreaM2", face.planAreaM2());
      number("perimeterM", face.perimeterM());
      json.writeBooleanField("curved", face.isCurved());
      facets(face);
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Flat pieces of a face, each a list of rings: outsides counter-clockwise seen from above, holes clockwise. */
  private void facets(RoofFace face) throws IOException {
    json.writeArrayFieldStart("facets");
    for (Facet facet : face.facets()) {
      json.writeStartArray();
      for (Region.Ring ring : facet.area().rings()) {
        ring(facet.plane(), ring);
      }
      json.writeEndArray();
    }
    json.writeEndArray();
  }

  private void ring(Plane plane, Region.Ring ring) throws IOException {
    json.writeStartArray();
    for (Vec2 p : ring.points()) {
      point(takeoff.world(plane.at(p.u(), p.v())));
    }
    json.writeEndArray();
  }

  private void junctions() throws IOException {
    json.writeArrayFieldStart("junctions");
    for (KindedJunction kinded : takeoff.junctions()) {
      junction(kinded);
    }
    json.writeEndArray();
  }

  private void junction(KindedJunction kinded) throws IOException {
    Junction junction = kinded.junction();
    json.writeStartObject();
    json.writeStringField("id", junction.id());
    json.writeStringField("kind", kinded.kind());
    number("lengthM", junction.lengthM());
    json.writeArrayFieldStart("path");
    for (Vec3 corner : junction.path()) {
      point(takeoff.world(corner));
    }
    json.writeEndArray();
    strings("faces", junction.faces());
    strings("elements", junction.elements());
    facts(junction.facts().asMap());
    explanation(kinded.explanation());
    strings("findings", codes.getOrDefault(junction.id(), new TreeSet<>()));
    json.writeEndObject();
  }

  private void facts(Map<String, Object> facts) throws IOException {
    json.writeObjectFieldStart("facts");
    for (Map.Entry<String, Object> fact : facts.entrySet()) {
      if (fact.getValue() instanceof Double number) {
        number(fact.getKey(), number);
      } else {
        json.writeObjectField(fact.getKey(), fact.getValue());
      }
    }
    json.writeEndObject();
  }

  private void explanation(Explanation explanation) throws IOException {
    json.writeObjectFieldStart("explanation");
    strings("shapes", explanation.shapes());
    json.writeStringField("nearest", explanation.nearest());
    strings("missed", explanation.missed());
    json.writeEndObject();
  }

  private void elements() throws IOException {
    json.writeArrayFieldStart("elements");
    for (ElementLabel element : takeoff.elements().values()) {
      json.writeStartObject();
      json.writeStringField("globalId", element.globalId());
      json.writeStringField("ifcClass", element.ifcClass());
      json.writeStringField("name", element.name());
      json.writeNumberField("model", element.model());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void findings() throws IOException {
    json.writeArrayFieldStart("findings");
    for (Finding finding : takeoff.findings()) {
      json.writeStartObject();
      json.writeStringField("code", finding.code());
      json.writeStringField("severity", finding.severity().word());
      json.writeStringField("message", finding.message());
      if (finding.junction().isEmpty()) {
        json.writeNullField("junction");
      } else {
        json.writeStringField("junction", finding.junction());
      }
      strings("elements", finding.elements());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private void strings(String field, Collection<String> values) throws IOException {
    json.writeArrayFieldStart(field);
    for (String value : values) {
      json.writeString(value);
    }
    json.writeEndArray();
  }

  private void point(Vec3 p) throws IOException {
    json.writeStartArray();
    json.writeNumber(Format.plain(p.x(), PLACES));
    json.writeNumber(Format.plain(p.y(), PLACES));
    json.writeNumber(Format.plain(p.z(), PLACES));
    json.writeEndArray();
  }

  private void number(String field, double value) throws IOException {
    json.writeFieldName(field);
    json.writeNumber(Format.plain(value, PLACES));
  }
}
