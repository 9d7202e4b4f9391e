package org.seamledger.graph;

import java.util.Map;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.rdf.Vocabulary;
import org.seamledger.takeoff.Takeoff;

/** What the graph says of junctions, and of joints of panels. */
final class JunctionTriples {

  private static final double ML_PER_M3 = 1e6;

  private final Takeoff takeoff;
  private final TripleList out;

  JunctionTriples(Takeoff takeoff, TripleList out) {
    this.takeoff = takeoff;
    this.out = out;
  }

  void add(DetailedJunction detailed) {
    Node subject = line(detailed, Vocabulary.JUNCTION, Vocabulary.BOT_INTERFACE);
    detailed.junction().junction().elements().forEach(e -> out.add(subject, Vocabulary.BOT_INTERFACE_OF, out.thing("element", e)));
    detailed.junction().junction().faces().forEach(f -> out.add(subject, Vocabulary.BOT_INTERFACE_OF, out.thing("face", f)));
  }

  /** A line within a face, at which its panels are divided: no interface of the face with anything else. */
  void addJoint(DetailedJunction detailed) {
    Node subject = line(detailed, Vocabulary.term("PanelJoint"));
    detailed.junction().junction().faces().forEach(f -> out.add(subject, Vocabulary.term("onFace"), out.thing("face", f)));
  }

  private Node line(DetailedJunction detailed, Node... types) {
    Junction junction = detailed.junction().junction();
    Node subject = out.thing("junction", junction.id());
    out.type(subject, types);
    out.text(subject, Vocabulary.LABEL, detailed.junction().type().label());
    out.own(subject, "id", junction.id());
    out.own(subject, "kind", detailed.junction().kind());
    out.add(subject, Vocabulary.term("kindShape"), NodeFactory.createURI(Vocabulary.KIND_NS + detailed.junction().kind()));
    if (!detailed.detail().equals(Detail.NONE)) {
      out.own(subject, "detail", detailed.detail().id());
      out.flag(subject, "metalFirst", detailed.detail().metalFirst());
    }
    out.quantity(subject, "length", junction.lengthM(), "M");
    out.number(subject, GraphTerms.geo("hasMetricLength"), junction.lengthM());
    out.geometry(subject, "LINESTRING Z " + TripleList.corners(junction.path().stream().map(takeoff::world).toList()));
    junction.facts().asMap().forEach((name, value) -> fact(subject, name, value));
    requires(subject, takeoff.quantities().byJunction().get(junction.id()));
    return subject;
  }

  private void fact(Node subject, String name, Object value) {
    if (value instanceof Double d) {
      out.number(subject, Vocabulary.term(name), d);
    } else if (value instanceof Integer i) {
      out.count(subject, name, i);
    } else if (value instanceof Boolean b) {
      out.flag(subject, name, b);
    } else {
      out.own(subject, name, value.toString());
    }
  }

  private void requires(Node junction, JunctionQuantities quantities) {
    int n = 0;
    for (MetalLine line : quantities.metal()) {
      Node item = item(junction, ++n, "MetalPart", line.part(), line.face());
      out.count(item, "pieces", line.pieces());
      out.quantity(item, "length", line.lengthM(), "M");
    }
    for (SealLine line : quantities.seals()) {
      Node item = item(junction, ++n, "Seal", line.place(), line.face());
      for (Map.Entry<String, String> word : Map.of("form", line.form().word(), "role", line.role().word(), "exposure",
          line.exposure().word()).entrySet().stream().sorted(Map.Entry.comparingByKey()).toList()) {
        out.own(item, word.getKey(), word.getValue());
      }
      out.quantity(item, "length", line.lengthM(), "M");
      out.quantity(item, "volume", line.volumeM3() * ML_PER_M3, "MilliL");
    }
    for (FastenerRow row : quantities.fasteners()) {
      Node item = item(junction, ++n, "FastenerLine", row.place(), row.face());
      out.count(item, "count", row.count());
      out.quantity(item, "spacing", row.spacingM(), "M");
    }
  }

  private Node item(Node junction, int place, String type, String label, String face) {
    Node item = NodeFactory.createURI(junction.getURI() + "." + place);
    out.add(junction, Vocabulary.term("requires"), item);
    out.type(item, Vocabulary.term(type));
    out.text(item, Vocabulary.LABEL, label);
    if (!face.isEmpty()) {
      out.add(item, Vocabulary.term("onFace"), out.thing("face", face));
    }
    return item;
  }
}
