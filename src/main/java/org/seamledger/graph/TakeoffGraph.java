package org.seamledger.graph;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.apache.jena.sparql.graph.GraphFactory;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.Finding;
import org.seamledger.finding.TopicId;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.KindedNode;
import org.seamledger.rdf.Vocabulary;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Takeoff;

/** The graph of a takeoff: models, elements, faces, junctions and joints of panels with what they require, nodes, findings. */
public final class TakeoffGraph {

  private final Takeoff takeoff;
  private final TripleList out;

  private TakeoffGraph(Takeoff takeoff) {
    this.takeoff = takeoff;
    ModelInfo first = takeoff.models().get(0);
    this.out = new TripleList("urn:seamledger:" + TopicId.named("project\n" + (first.project().isBlank() ? first.file() : first.project()))
        + ":");
  }

  private static TripleList list(Takeoff takeoff) {
    TakeoffGraph graph = new TakeoffGraph(takeoff);
    graph.provenance();
    takeoff.elements().values().forEach(graph::element);
    takeoff.faces().forEach(graph::face);
    JunctionTriples junctions = new JunctionTriples(takeoff, graph.out);
    takeoff.detailed().forEach(junctions::add);
    takeoff.joints().forEach(junctions::addJoint);
    takeoff.nodes().forEach(graph::node);
    graph.findings();
    return graph.out;
  }

  /** All triples, in the order in which they are written. */
  static Set<Triple> triples(Takeoff takeoff) {
    return list(takeoff).all();
  }

  /** Prefixes for the text. */
  static Map<String, String> prefixes(Takeoff takeoff) {
    return GraphTerms.prefixes(new TakeoffGraph(takeoff).out.space());
  }

  /** The graph in memory. */
  static Graph of(Takeoff takeoff) {
    Graph graph = GraphFactory.createDefaultGraph();
    triples(takeoff).forEach(graph::add);
    prefixes(takeoff).forEach(graph.getPrefixMapping()::setNsPrefix);
    return graph;
  }

  private void provenance() {
    Node result = out.thing("takeoff", "1");
    Node analysis = out.thing("analysis", "1");
    Node program = out.thing("program", takeoff.version());
    List<Node> files = IntStream.rangeClosed(1, takeoff.models().size()).mapToObj(i -> out.thing("model", String.valueOf(i))).toList();
    out.type(result, Vocabulary.term("Takeoff"), GraphTerms.prov("Entity"));
    out.own(result, "rulesHash", takeoff.shapes());
    out.add(result, GraphTerms.prov("wasGeneratedBy"), analysis);
    files.forEach(file -> out.add(result, GraphTerms.prov("wasDerivedFrom"), file));
    out.type(analysis, GraphTerms.prov("Activity"));
    out.add(analysis, GraphTerms.prov("wasAssociatedWith"), program);
    files.forEach(file -> out.add(analysis, GraphTerms.prov("used"), file));
    out.type(program, GraphTerms.prov("SoftwareAgent"));
    out.text(program, Vocabulary.LABEL, Program.NAME + " " + takeoff.version());
    for (int i = 0; i < files.size(); i++) {
      model(files.get(i), takeoff.models().get(i));
    }
  }

  private void model(Node file, ModelInfo model) {
    out.type(file, Vocabulary.term("Model"), GraphTerms.prov("Entity"));
    out.text(file, Vocabulary.LABEL, model.file());
    out.own(file, "sha256", model.sha256());
    out.own(file, "schema", model.schema());
    out.own(file, "writtenBy", model.application());
    out.own(file, "written", model.date());
  }

  private void element(ElementLabel element) {
    Node subject = out.thing("element", element.globalId());
    out.type(subject, GraphTerms.bot("Element"));
    out.text(subject, Vocabulary.LABEL, element.name());
    out.text(subject, Vocabulary.GLOBAL_ID, element.globalId());
    out.own(subject, "ifcClass", element.ifcClass());
    out.own(subject, "storey", element.storey());
    out.add(subject, GraphTerms.prov("wasDerivedFrom"), out.thing("model", String.valueOf(element.model() + 1)));
  }

  private void face(RoofFace face) {
    Node subject = out.thing("face", face.id());
    out.type(subject, Vocabulary.ROOF_FACE, GraphTerms.bot("Element"));
    out.text(subject, Vocabulary.LABEL, face.id());
    face.elements().forEach(e -> out.add(out.thing("element", e), GraphTerms.bot("hasSubElement"), subject));
    out.quantity(subject, "area", face.areaM2(), "M2");
    out.quantity(subject, "planArea", face.planAreaM2(), "M2");
    out.quantity(subject, "perimeter", face.perimeterM(), "M");
    out.quantity(subject, "slope", face.slopeDegrees(), "DEG");
    out.quantity(subject, "fallAzimuth", face.fallAzimuthDegrees(), "DEG");
    out.flag(subject, "curved", face.isCurved());
    out.number(subject, Vocabulary.GEO_HAS_METRIC_AREA, face.areaM2());
    List<String> polygons = new ArrayList<>();
    face.facets().forEach(f -> f.area().parts().forEach(part -> polygons.add(polygon(f, part))));
    if (!polygons.isEmpty()) {
      out.geometry(subject, "MULTIPOLYGON Z (" + String.join(", ", polygons) + ")");
    }
  }

  private String polygon(Facet facet, Region part) {
    List<String> rings = new ArrayList<>();
    for (Region.Ring ring : part.rings()) {
      List<Vec3> points = new ArrayList<>(ring.points().stream().map(p -> takeoff.world(facet.plane().at(p.u(), p.v()))).toList());
      points.add(points.get(0));
      rings.add(TripleList.corners(points));
    }
    return "(" + String.join(", ", rings) + ")";
  }

  private void node(KindedNode node) {
    Node subject = out.thing("node", node.id());
    out.type(subject, Vocabulary.term("Node"), Vocabulary.BOT_INTERFACE);
    out.text(subject, Vocabulary.LABEL, node.kind().label());
    out.own(subject, "id", node.id());
    out.own(subject, "nodeKind", node.kind().id());
    node.node().junctions().forEach(j -> out.add(subject, Vocabulary.term("meets"), out.thing("junction", j)));
    node.node().faces().forEach(f -> out.add(subject, Vocabulary.BOT_INTERFACE_OF, out.thing("face", f)));
    out.geometry(subject, "POINT Z (" + TripleList.corner(takeoff.world(node.node().at())) + ")");
  }

  private void findings() {
    List<UUID> ids = takeoff.topicIds();
    for (int i = 0; i < takeoff.findings().size(); i++) {
      Finding f = takeoff.findings().get(i);
      Node subject = out.thing("finding", ids.get(i).toString());
      out.type(subject, Vocabulary.term("Finding"));
      out.own(subject, "code", f.code());
      out.own(subject, "severity", f.severity().word());
      out.own(subject, "message", f.message());
      if (!f.junction().isEmpty()) {
        out.add(subject, Vocabulary.term("about"), out.thing("junction", f.junction()));
      }
      f.elements().forEach(e -> out.add(subject, Vocabulary.term("about"), out.thing("element", e)));
      out.flag(subject, "accepted", f.acceptance().isPresent());
      f.acceptance().ifPresent(a -> {
        out.own(subject, "acceptedBy", a.by());
        out.own(subject, "acceptedWhen", a.when());
        out.own(subject, "acceptedReason", a.reason());
      });
    }
  }
}
