package org.seamledger.graph;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.jena.graph.Graph;
import org.apache.jena.riot.Lang;
import org.apache.jena.riot.RDFDataMgr;
import org.apache.jena.sparql.graph.GraphFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.progress.Progress;
import org.seamledger.rdf.Vocabulary;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class TakeoffGraphTest {

  private static Takeoff gatehouse() {
    return Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples/gatehouse.ifc"))), Progress.NONE);
  }

  private static byte[] text(Takeoff takeoff, GraphForm form) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    form.write(takeoff, out);
    return out.toByteArray();
  }

  private static Graph read(byte[] text, Lang lang) {
    Graph graph = GraphFactory.createDefaultGraph();
    RDFDataMgr.read(graph, new ByteArrayInputStream(text), lang);
    return graph;
  }

  private static void bothTextsAreTheGraph(Takeoff takeoff) throws IOException {
    Graph turtle = read(text(takeoff, GraphForm.TURTLE), Lang.TURTLE);
    assertThat(turtle.isIsomorphicWith(TakeoffGraph.of(takeoff))).isTrue();
    assertThat(read(text(takeoff, GraphForm.JSON_LD), Lang.JSONLD11).isIsomorphicWith(turtle)).isTrue();
    assertThat(turtle.size()).isGreaterThan(50);
  }

  @Test
  void turtleAndJsonLdAreTheSameGraph() throws IOException {
    bothTextsAreTheGraph(gatehouse());
    bothTextsAreTheGraph(Takeoffs.boatHouse("<b>\"A\" & 'B'</b> \\ \u0000\u0007 \u202eגג\u202c سقف \ud83c\udfe0 \uffff \ud800\n"));
  }

  /** A model without a roof is a graph of itself and its findings. */
  @Test
  void noRoof(@TempDir Path folder) throws IOException {
    Path model = Files.writeString(folder.resolve("bare.ifc"), """
        ISO-10303-21;HEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('bare','','',(''),'','','');FILE_SCHEMA(('IFC4'));ENDSEC;DATA;
        #1=IFCPROJECT('0hGinPNwiSDrAurecV39RR',$,'Bare',$,$,$,$,$,$);
        ENDSEC;END-ISO-10303-21;
        """);
    Takeoff bare = Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
    Graph turtle = read(text(bare, GraphForm.TURTLE), Lang.TURTLE);
    assertThat(turtle.isIsomorphicWith(TakeoffGraph.of(bare))).isTrue();
    assertThat(read(text(bare, GraphForm.JSON_LD), Lang.JSONLD11).isIsomorphicWith(turtle)).isTrue();
    assertThat(turtle.size()).isPositive();
  }

  @Test
  void sameModelSameBytes() throws IOException {
    for (GraphForm form : GraphForm.values()) {
      assertThat(text(gatehouse(), form)).isEqualTo(text(gatehouse(), form));
    }
  }

  /** Every term of the project is in the vocabulary, or a fact of the rules. */
  @Test
  void vocabularyDescribesEveryTerm() {
    Graph vocabulary = RDFDataMgr.loadGraph("shapes/queries/vocabulary.ttl");
    TreeSet<String> described = vocabulary.find().toList().stream().map(t -> t.getSubject().getURI())
        .collect(Collectors.toCollection(TreeSet::new));
    Vocabulary.facts().forEach(f -> described.add(Vocabulary.NS + f));
    TreeSet<String> used = TakeoffGraph.of(gatehouse()).find().toList().stream()
        .flatMap(t -> java.util.stream.Stream.of(t.getPredicate(), t.getObject())).filter(n -> n.isURI())
        .map(n -> n.getURI()).filter(n -> n.startsWith(Vocabulary.NS)).collect(Collectors.toCollection(TreeSet::new));
    assertThat(described).containsAll(used);
    assertThat(used).hasSizeGreaterThan(40);
  }
}
