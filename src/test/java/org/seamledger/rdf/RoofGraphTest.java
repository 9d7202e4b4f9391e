package org.seamledger.rdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.riot.Lang;
import org.apache.jena.riot.RDFParser;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;

class RoofGraphTest {

  private static final Junction HIP = new Junction("abc", List.of(new Vec3(0, 0, 3), new Vec3(3, 3, 4.5)), List.of("F1", "F2"),
      List.of("0RoofElement0000000001"),
      Facts.builder().word("against", "face").count("faceCount", 2).number("inclinationDegrees", 19.4712206)
          .flag("curved", false).build());

  @Test
  void aJunctionIsAnInterfaceOfItsFacesWithItsFactsAndItsLine() {
    Graph g = RoofGraph.of(List.of(), List.of(HIP), Map.of("abc", Map.of("kind", "hip")));
    Node j = RoofGraph.junction("abc");
    assertThat(g.contains(j, Vocabulary.TYPE, Vocabulary.BOT_INTERFACE)).isTrue();
    assertThat(g.contains(j, Vocabulary.BOT_INTERFACE_OF, RoofGraph.face("F2"))).isTrue();
    assertThat(value(g, j, "inclinationDegrees")).isEqualTo(19.471);
    assertThat(value(g, j, "kind")).isEqualTo("hip");
    Node line = g.find(j, Vocabulary.GEO_HAS_GEOMETRY, Node.ANY).next().getObject();
    assertThat(g.find(line, Vocabulary.GEO_AS_WKT, Node.ANY).next().getObject().getLiteralLexicalForm())
        .endsWith("LINESTRING Z (0.0000 0.0000 3.0000, 3.0000 3.0000 4.5000)");
    // √(9 + 9 + 2.25) = 4.5
    assertThat(g.find(line, Vocabulary.GEO_HAS_METRIC_LENGTH, Node.ANY).next().getObject().getLiteralValue()).isEqualTo(4.5);
  }

  @Test
  void theTextReadsBackAsTheSameGraph() {
    Map<String, Map<String, Object>> more = Map.of("abc", Map.of("kind", "hip", "detail", "hip"));
    String text = RoofGraph.turtle(List.of(), List.of(HIP), more);
    Graph read = GraphMemFactory.createDefaultGraph();
    RDFParser.fromString(text, Lang.TTL).parse(read);
    assertThat(read.isIsomorphicWith(RoofGraph.of(List.of(), List.of(HIP), more))).as(text).isTrue();
    assertThat(RoofGraph.turtle(List.of(), List.of(HIP), more)).isEqualTo(text);
  }

  private static Object value(Graph g, Node s, String fact) {
    return g.find(s, Vocabulary.term(fact), Node.ANY).next().getObject().getLiteralValue();
  }
}
