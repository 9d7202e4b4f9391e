package org.seamledger.graph;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.jena.datatypes.xsd.XSDDatatype;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.apache.jena.graph.Triple;
import org.seamledger.geometry.Vec3;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.rdf.Vocabulary;

/** Triples in the order in which they are stated, each once. Everything has an IRI, so that the same takeoff gives the same text. */
final class TripleList {

  private static final int DECIMALS = 6;

  private final String space;
  private final Set<Triple> triples = new LinkedHashSet<>();

  /** @param space that all IRIs of things begin with */
  TripleList(String space) {
    this.space = space;
  }

  Set<Triple> all() {
    return triples;
  }

  String space() {
    return space;
  }

  /** A thing of a sort, by its id, which may hold any character. */
  Node thing(String sort, String id) {
    StringBuilder name = new StringBuilder(space).append(sort).append('-');
    for (byte b : id.getBytes(java.nio.charset.StandardCharsets.UTF_8)) {
      char c = (char) (b & 255);
      boolean isPlain = c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_' || c == '-' || c == '.';
      name.append(isPlain ? String.valueOf(c) : String.format("%%%02X", (int) c));
    }
    return NodeFactory.createURI(name.toString());
  }

  void add(Node subject, Node predicate, Node object) {
    triples.add(Triple.create(subject, predicate, object));
  }

  void type(Node subject, Node... classes) {
    for (Node c : classes) {
      add(subject, Vocabulary.TYPE, c);
    }
  }

  /** A text, left out where it is blank. */
  void text(Node subject, Node predicate, String text) {
    if (!text.isBlank()) {
      add(subject, predicate, NodeFactory.createLiteralString(text.codePoints().map(c -> c >= 0xD800 && c <= 0xDFFF ? 0xFFFD : c)
          .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString()));
    }
  }

  void own(Node subject, String term, String text) {
    text(subject, Vocabulary.term(term), text);
  }

  void count(Node subject, String term, long count) {
    add(subject, Vocabulary.term(term), NodeFactory.createLiteralDT(String.valueOf(count), XSDDatatype.XSDinteger));
  }

  void flag(Node subject, String term, boolean flag) {
    add(subject, Vocabulary.term(term), NodeFactory.createLiteralDT(String.valueOf(flag), XSDDatatype.XSDboolean));
  }

  void number(Node subject, Node predicate, double value) {
    add(subject, predicate, NodeFactory.createLiteralDT(MeasureFormat.plain(value, DECIMALS), XSDDatatype.XSDdecimal));
  }

  /** A number with its unit, as QUDT has it. */
  void quantity(Node subject, String term, double value, String unit) {
    Node quantity = NodeFactory.createURI(subject.getURI() + "." + term);
    add(subject, Vocabulary.term(term), quantity);
    type(quantity, GraphTerms.qudt("Quantity"));
    number(quantity, GraphTerms.qudt("numericValue"), value);
    add(quantity, GraphTerms.qudt("unit"), GraphTerms.unit(unit));
  }

  /** Its place, as GeoSPARQL has it, without a reference system: the model's own coordinates, metres. */
  void geometry(Node subject, String wkt) {
    Node geometry = NodeFactory.createURI(subject.getURI() + ".geometry");
    add(subject, Vocabulary.GEO_HAS_GEOMETRY, geometry);
    type(geometry, GraphTerms.geo("Geometry"));
    add(geometry, Vocabulary.GEO_AS_WKT, NodeFactory.createLiteralDT(wkt,
        org.apache.jena.datatypes.TypeMapper.getInstance().getSafeTypeByName(Vocabulary.GEO_WKT_LITERAL)));
  }

  static String corners(List<Vec3> points) {
    return points.stream().map(TripleList::corner).collect(Collectors.joining(", ", "(", ")"));
  }

  static String corner(Vec3 p) {
    return MeasureFormat.plain(p.x(), DECIMALS) + " " + MeasureFormat.plain(p.y(), DECIMALS) + " " + MeasureFormat.plain(p.z(), DECIMALS);
  }
}
