package org.seamledger.graph;

import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.NodeFactory;
import org.seamledger.rdf.Vocabulary;

/** Terms of other vocabularies that only the graph of a takeoff uses. */
final class GraphTerms {

  static final String QUDT = "http://qudt.org/schema/qudt/";
  static final String UNIT = "http://qudt.org/vocab/unit/";
  static final String PROV = "http://www.w3.org/ns/prov#";
  static final String XSD = "http://www.w3.org/2001/XMLSchema#";

  private GraphTerms() {
  }

  static Node qudt(String name) {
    return NodeFactory.createURI(QUDT + name);
  }

  static Node unit(String name) {
    return NodeFactory.createURI(UNIT + name);
  }

  static Node prov(String name) {
    return NodeFactory.createURI(PROV + name);
  }

  static Node bot(String name) {
    return NodeFactory.createURI(Vocabulary.BOT_NS + name);
  }

  static Node geo(String name) {
    return NodeFactory.createURI(Vocabulary.GEO_NS + name);
  }

  /** Prefixes in the order in which they are written. */
  static Map<String, String> prefixes(String own) {
    Map<String, String> prefixes = new LinkedHashMap<>();
    prefixes.put("", own);
    prefixes.put("sl", Vocabulary.NS);
    prefixes.put("kind", Vocabulary.KIND_NS);
    prefixes.put("bot", Vocabulary.BOT_NS);
    prefixes.put("geo", Vocabulary.GEO_NS);
    prefixes.put("qudt", QUDT);
    prefixes.put("unit", UNIT);
    prefixes.put("prov", PROV);
    prefixes.put("rdfs", Vocabulary.RDFS_NS);
    prefixes.put("xsd", XSD);
    return prefixes;
  }
}
