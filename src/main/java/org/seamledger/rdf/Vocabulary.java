package org.seamledger.rdf;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.seamledger.junction.Fact;
import org.seamledger.junction.FactList;

/** The names used in graphs and shapes. A fact's property is named like the fact, in the project's namespace. */
public final class Vocabulary {

  /** The project's own terms: classes, facts, and what rules say of themselves. */
  public static final String NS = "https://seamledger.org/ns#";
  /** Names of the shapes that decide kinds. */
  public static final String KIND_NS = "https://seamledger.org/kind#";
  public static final String BOT_NS = "https://w3id.org/bot#";
  public static final String GEO_NS = "http://www.opengis.net/ont/geosparql#";
  public static final String SHACL_NS = "http://www.w3.org/ns/shacl#";
  public static final String RDF_NS = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  public static final String RDFS_NS = "http://www.w3.org/2000/01/rdf-schema#";

  public static final Node FIRST = NodeFactory.createURI(RDF_NS + "first");
  public static final Node REST = NodeFactory.createURI(RDF_NS + "rest");
  public static final Node TYPE = NodeFactory.createURI(RDF_NS + "type");
  public static final Node LABEL = NodeFactory.createURI(RDFS_NS + "label");

  public static final Node JUNCTION = term("Junction");
  public static final Node ROOF_FACE = term("RoofFace");
  public static final Node ROOF_SYSTEM = term("RoofSystem");
  /** GlobalId of an element that a face or junction belongs to. */
  public static final Node GLOBAL_ID = term("globalId");
  /** Coordinate reference system of the lines: the building's local one, metres, Z up. */
  public static final String LOCAL_CRS = NS + "BuildingCoordinates";

  public static final Node BOT_INTERFACE = NodeFactory.createURI(BOT_NS + "Interface");
  public static final Node BOT_INTERFACE_OF = NodeFactory.createURI(BOT_NS + "interfaceOf");
  public static final Node GEO_HAS_GEOMETRY = NodeFactory.createURI(GEO_NS + "hasGeometry");
  public static final Node GEO_AS_WKT = NodeFactory.createURI(GEO_NS + "asWKT");
  public static final Node GEO_HAS_METRIC_LENGTH = NodeFactory.createURI(GEO_NS + "hasMetricLength");
  public static final Node GEO_HAS_METRIC_AREA = NodeFactory.createURI(GEO_NS + "hasMetricArea");
  public static final String GEO_WKT_LITERAL = GEO_NS + "wktLiteral";

  private Vocabulary() {
  }

  /** A term of the project's own namespace. */
  public static Node term(String name) {
    return NodeFactory.createURI(NS + name);
  }

  /** Every fact that a shape may ask for. */
  public static Set<String> facts() {
    return FactList.all().stream().map(Fact::name).collect(Collectors.toCollection(TreeSet::new));
  }
}
