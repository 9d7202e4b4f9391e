package org.seamledger.rdf;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.jena.datatypes.BaseDatatype;
import org.apache.jena.datatypes.RDFDatatype;
import org.apache.jena.datatypes.xsd.XSDDatatype;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.RoofFace;

/**
 * The whole roof as one graph: every face, every junction with its facts, its line and the faces it joins. Lines are in the building's
 * local coordinates, metres, Z up.
 */
public final class RoofGraph {

  private static final RDFDatatype WKT = new BaseDatatype(Vocabulary.GEO_WKT_LITERAL);

  private final Graph graph = GraphMemFactory.createDefaultGraph();

  private RoofGraph() {
  }

  /**
   * @param more facts of junctions besides those of their lines, such as {@code kind} and {@code detail}, by the junction's id
   */
  public static Graph of(List<RoofFace> faces, List<Junction> junctions, Map<String, Map<String, Object>> more) {
    RoofGraph g = new RoofGraph();
    faces.forEach(g::add);
    for (Junction j : junctions) {
      g.add(j);
      FactGraph.addFacts(g.graph, junction(j.id()), more.getOrDefault(j.id(), Map.of()));
    }
    return g.graph;
  }

  /** The same as Turtle, subjects and predicates in alphabetical order: the same roof gives the same text. */
  public static String turtle(List<RoofFace> faces, List<Junction> junctions, Map<String, Map<String, Object>> more) {
    return TurtleText.of(of(faces, junctions, more));
  }

  /** The node of a junction. */
  public static Node junction(String id) {
    return NodeFactory.createURI("urn:seamledger:junction:" + id);
  }

  /** The node of a roof face. */
  public static Node face(String id) {
    return NodeFactory.createURI("urn:seamledger:face:" + id);
  }

  private void add(RoofFace face) {
    Node node = face(face.id());
    graph.add(node, Vocabulary.TYPE, Vocabulary.ROOF_FACE);
    Map<String, Object> facts = new TreeMap<>();
    facts.put("slopeDegrees", face.slopeDegrees());
    facts.put("curved", face.isCurved());
    FactGraph.addFacts(graph, node, facts);
    addNumber(node, Vocabulary.GEO_HAS_METRIC_AREA, face.areaM2());
    addElements(node, face.elements());
  }

  private void add(Junction junction) {
    Node node = junction(junction.id());
    graph.add(node, Vocabulary.TYPE, Vocabulary.JUNCTION);
    graph.add(node, Vocabulary.TYPE, Vocabulary.BOT_INTERFACE);
    for (String face : junction.faces()) {
      graph.add(node, Vocabulary.BOT_INTERFACE_OF, face(face));
    }
    FactGraph.addFacts(graph, node, junction.facts().asMap());
    addElements(node, junction.elements());
    Node line = NodeFactory.createURI(node.getURI() + ":line");
    graph.add(node, Vocabulary.GEO_HAS_GEOMETRY, line);
    graph.add(line, Vocabulary.GEO_AS_WKT, NodeFactory.createLiteralDT(wkt(junction.path()), WKT));
    addNumber(line, Vocabulary.GEO_HAS_METRIC_LENGTH, junction.lengthM());
  }

  private void addElements(Node node, List<String> elements) {
    for (String id : elements) {
      graph.add(node, Vocabulary.GLOBAL_ID, NodeFactory.createLiteralString(id));
    }
  }

  private void addNumber(Node node, Node property, double value) {
    graph.add(node, property, NodeFactory.createLiteralByValue(Math.rint(value * 1e6) / 1e6, XSDDatatype.XSDdouble));
  }

  private static String wkt(List<Vec3> path) {
    return "<" + Vocabulary.LOCAL_CRS + "> " + path.stream()
        .map(p -> String.format(Locale.ROOT, "%.4f %.4f %.4f", p.x(), p.y(), p.z()))
        .collect(Collectors.joining(", ", "LINESTRING Z (", ")"));
  }
}
