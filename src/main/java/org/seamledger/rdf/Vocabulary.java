package org.seamledger.rdf;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;

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

  /** What is measured along a line; {@code org.seamledger.junction} says what each means. */
  public static final List<String> LINE_FACTS = List.of("faceCount", "against", "inclinationDegrees", "lowRiseDegrees",
      "highRiseDegrees", "foldDegrees", "obliquityDegrees", "otherObliquityDegrees", "slopeDegrees", "otherSlopeDegrees",
      "minSlopeDegrees", "upstandM", "widthAcrossFallM", "depthAlongFallM", "diameterM", "neighbourClass", "roofHole", "service", "oblique",
      "curved", "gapM");

  /** What the rules that choose details see besides; {@code org.seamledger.detail} says what each means. */
  public static final List<String> DETAIL_FACTS = List.of("kind", "ridgeVented", "counterflashing", "fixedAt", "sealSeamsBelowDegrees",
      "cricketAboveM", "onSeam");

  /** What the rules that make findings see besides, of junctions, faces and the roof system; {@code org.seamledger.detail} says more. */
  public static final List<String> FINDING_FACTS = List.of("lengthM", "detail", "metalFirst", "beadOnly", "sealantExposed",
      "tapeSpacingM", "tapeCoverageShare", "flowWidthM", "cleatLineM", "eaveAtLowEnd", "leadingSide", "toValleyM", "toPenetrationM",
      "dropSlopeDegrees",
      "panelLengthM", "movementM", "panelMetal", "flashingMetal", "fastenerMetal", "panelThicknessM", "fastenerContact",
      "flashingContact", "movementGapM", "lockedStressMPa", "tapeWidthM", "tapeSpreadM", "lipM", "closureHeightM", "seamHeightM",
      "closureProudM", "lowestSlopeDegrees", "flashingClearanceM", "acidCuring", "installAirC", "sealantLowestC", "sealantHighestC",
      "metalAboveDewPointK", "dewPointMarginK", "slumpStressPa", "yieldStressPa", "freeEdgeM");

  private Vocabulary() {
  }

  /** A term of the project's own namespace. */
  public static Node term(String name) {
    return NodeFactory.createURI(NS + name);
  }

  /** Every fact that a shape may ask for. */
  public static Set<String> facts() {
    TreeSet<String> all = new TreeSet<>(LINE_FACTS);
    all.addAll(DETAIL_FACTS);
    all.addAll(FINDING_FACTS);
    return all;
  }
}
