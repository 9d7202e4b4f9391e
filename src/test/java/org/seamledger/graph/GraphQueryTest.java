package org.seamledger.graph;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.export.JsonLedger;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** The queries that come with the rules give what the JSON of the same sample says; and what may not be asked is refused. */
class GraphQueryTest {

  private static final QueryLimits SMALL = new QueryLimits(Duration.ofSeconds(2), 1000, 256L << 20);
  private static JsonNode json;
  private static GraphQuery graph;

  @BeforeAll
  static void analyse() throws IOException {
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples/gatehouse.ifc"))), Progress.NONE);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JsonLedger.write(takeoff, Optional.empty(), out);
    json = new ObjectMapper().readTree(out.toByteArray());
    graph = new GraphQuery(takeoff);
  }

  private static String ask(String query, GraphQuery.AnswerForm form) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      graph.answer(query, "q.rq", form, SMALL, out);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return out.toString(StandardCharsets.UTF_8);
  }

  /** Rows of a query of the rules' folder; by the SPARQL 1.1 Query Results JSON Format. */
  private static List<List<String>> rows(String name) throws IOException {
    JsonNode answer =
        new ObjectMapper().readTree(ask(Files.readString(Path.of("shapes/queries", name + ".rq")), GraphQuery.AnswerForm.json));
    List<List<String>> rows = new ArrayList<>();
    for (JsonNode binding : answer.path("results").path("bindings")) {
      rows.add(StreamSupport.stream(answer.path("head").path("vars").spliterator(), false)
          .map(v -> binding.path(v.asText()).path("value").asText()).toList());
    }
    return rows;
  }

  private static Stream<JsonNode> each(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false);
  }

  private static Stream<JsonNode> junctions() {
    return each(json.path("junctions"));
  }

  /** Sums by a key, and the last cell of each row beside its other cells. */
  private static void sums(String query, Stream<JsonNode> items, Function<JsonNode, String> key, Function<JsonNode, Double> value)
      throws IOException {
    Map<String, Double> expected = new TreeMap<>();
    items.forEach(i -> expected.merge(key.apply(i), value.apply(i), Double::sum));
    Map<String, Double> found = new TreeMap<>();
    rows(query).forEach(r -> found.put(String.join("|", r.subList(0, r.size() - 1)), Double.parseDouble(r.get(r.size() - 1))));
    assertThat(found.keySet()).isEqualTo(expected.keySet()).isNotEmpty();
    found.forEach((k, v) -> assertThat(v).as(k).isCloseTo(expected.get(k), within(1e-5)));
  }

  @Test
  void everyQueryIsTested() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("shapes/queries"))) {
      assertThat(files.map(f -> f.getFileName().toString()).filter(f -> f.endsWith(".rq"))).containsExactlyInAnyOrder(
          "adjacent-faces.rq", "faces.rq", "fasteners-by-detail.rq", "lengths-by-kind.rq", "metal-pieces.rq", "neighbours-of-elements.rq",
          "nodes-by-kind.rq", "open-findings.rq", "provenance.rq", "sealants-by-place.rq");
    }
  }

  @Test
  void lengthsByKind() throws IOException {
    Map<String, Double> expected = new TreeMap<>();
    Map<String, Integer> lines = new TreeMap<>();
    junctions().forEach(j -> {
      expected.merge(j.path("kind").asText(), j.path("lengthM").asDouble(), Double::sum);
      lines.merge(j.path("kind").asText(), 1, Integer::sum);
    });
    List<List<String>> rows = rows("lengths-by-kind");
    assertThat(rows).hasSameSizeAs(expected.keySet());
    for (List<String> row : rows) {
      assertThat(Integer.parseInt(row.get(1))).isEqualTo(lines.get(row.get(0)));
      assertThat(Double.parseDouble(row.get(2))).isCloseTo(expected.get(row.get(0)), within(1e-5));
    }
    assertThat(rows.get(0).get(0)).isEqualTo("eave");
  }

  @Test
  void faces() throws IOException {
    List<List<String>> expected = each(json.path("roofFaces")).map(f -> List.of(f.path("id").asText(), f.path("slopeDegrees").asText(),
        f.path("areaM2").asText(), f.path("perimeterM").asText())).toList();
    assertThat(rows("faces")).isEqualTo(expected);
  }

  @Test
  void sumsOfWhatJunctionsRequire() throws IOException {
    sums("sealants-by-place", junctions().flatMap(j -> each(j.path("seals"))),
        s -> s.path("form").asText() + "|" + s.path("exposure").asText() + "|" + s.path("place").asText(),
        s -> s.path("lengthM").asDouble());
    sums("metal-pieces", junctions().flatMap(j -> each(j.path("metal"))), m -> m.path("part").asText(), m -> m.path("pieces").asDouble());
    sums("fasteners-by-detail", junctions().filter(j -> !j.path("fasteners").isEmpty()), j -> j.path("detail").asText(),
        j -> each(j.path("fasteners")).mapToDouble(f -> f.path("count").asDouble()).sum());
    sums("nodes-by-kind", each(json.path("nodes")), n -> n.path("kind").asText(), n -> 1.0);
    sums("adjacent-faces", junctions().filter(j -> j.path("faces").size() == 2), j -> Stream.of(j.path("faces").get(0).asText(),
        j.path("faces").get(1).asText()).sorted().reduce((a, b) -> a + "|" + b).orElseThrow() + "|" + j.path("kind").asText(),
        j -> j.path("lengthM").asDouble());
  }

  @Test
  void neighboursOfElements() throws IOException {
    assertThat(rows("neighbours-of-elements")).extracting(r -> r.get(1)).containsExactly("IfcChimney", "IfcPipeSegment");
    assertThat(Double.parseDouble(rows("neighbours-of-elements").get(0).get(3))).isCloseTo(junctions()
        .filter(j -> j.path("kind").asText().startsWith("curb")).mapToDouble(j -> j.path("lengthM").asDouble()).sum(), within(1e-5));
  }

  @Test
  void openFindings() throws IOException {
    List<String> expected = each(json.path("findings")).map(f -> f.path("severity").asText() + "|" + f.path("code").asText() + "|"
        + f.path("message").asText() + "|" + f.path("junction").asText("")).toList();
    List<List<String>> rows = rows("open-findings");
    assertThat(rows.stream().map(r -> String.join("|", r).replaceFirst("\\|$", "|null"))).allSatisfy(r -> assertThat(expected.stream()
        .map(e -> e.replaceFirst("\\|$", "|null"))).contains(r));
    assertThat(rows).hasSameSizeAs(expected);
  }

  @Test
  void provenance() throws IOException {
    assertThat(rows("provenance")).containsExactly(List.of("gatehouse.ifc", json.path("models").get(0).path("sha256").asText(),
        "seamledger " + json.path("program").path("version").asText()));
  }

  /** SPARQL 1.1 Query Results CSV: a head line, CRLF, no types; of ASK there is a word. */
  @Test
  void csv() {
    assertThat(ask("SELECT (1 AS ?a) (\"x,y\" AS ?b) {}", GraphQuery.AnswerForm.csv)).isEqualTo("a,b\r\n1,\"x,y\"\r\n");
    assertThat(ask("ASK { ?j a <https://seamledger.org/ns#Junction> }", GraphQuery.AnswerForm.json)).contains("true");
  }

  @ParameterizedTest
  @ValueSource(strings = {"SELECT * { SERVICE <http://127.0.0.1:9/> { ?s ?p ?o } }",
      "SELECT * { ?a ?b ?c FILTER EXISTS { SERVICE <http://127.0.0.1:9/> { ?s ?p ?o } } }",
      "SELECT * { { SELECT * { SERVICE SILENT <http://127.0.0.1:9/> { ?s ?p ?o } } } }",
      "SELECT (EXISTS { SERVICE <http://127.0.0.1:9/> { ?s ?p ?o } } AS ?x) {}",
      "SELECT * { ?a ?b ?c MINUS { SERVICE <file:///etc/passwd> { ?a ?b ?c } } }",
      "SELECT * FROM <file:///etc/passwd> { ?s ?p ?o }", "SELECT * FROM NAMED <http://127.0.0.1:9/> { GRAPH ?g { ?s ?p ?o } }",
      "SELECT (<java:java.lang.System.exit>(0) AS ?x) {}", "SELECT * { ?s <java:org.example.Property> ?o }",
      "SELECT * { ?s <java:org.example.Property>+ ?o }", "SELECT * { ?s !<java:org.example.Property> ?o }",
      "SELECT * { ?s ?p ?o FILTER (<java:java.lang.System.exit>(?o)) }", "SELECT * { ?s ?p ?o } ORDER BY <java:a.B>(?o)",
      "SELECT (COUNT(*) AS ?n) { ?s ?p ?o } GROUP BY (<java:a.B>(?o) AS ?k)",
      "SELECT (SUM(<java:a.B>(?o)) AS ?n) { ?s ?p ?o }", "SELECT * { ?s ?p ?o } HAVING (<java:a.B>(?o))",
      "SELECT * { BIND(<http://jena.apache.org/ARQ/function#version>() AS ?v) }",
      "SELECT * { ?v <http://jena.apache.org/ARQ/property#versionARQ> ?w }",
      "CONSTRUCT { ?s ?p ?o } { ?s ?p ?o }", "DESCRIBE ?s { ?s ?p ?o }", "LOAD <file:///etc/passwd>", "DROP ALL",
      "INSERT DATA { <a:a> <a:b> <a:c> }", "SELECT * { ?s ?p", ""})
  void refused(String query) {
    assertThatThrownBy(() -> ask(query, GraphQuery.AnswerForm.csv)).isInstanceOf(QueryRefusedException.class).message().startsWith("q.rq")
        .doesNotContain("\n");
  }

  /** What is named in a query is no address: nothing is fetched. */
  @Test
  void otherGraphsAreEmpty() {
    assertThat(ask("SELECT * { GRAPH <file:///etc/passwd> { ?s ?p ?o } }", GraphQuery.AnswerForm.csv)).isEqualTo("s,p,o\r\n");
    assertThat(ask("SELECT * { GRAPH ?g { ?s ?p ?o } }", GraphQuery.AnswerForm.csv)).hasLineCount(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"SELECT (COUNT(*) AS ?n) { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i . ?j ?k ?l }",
      "SELECT * { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i } ORDER BY ?a ?f ?h",
      "SELECT (GROUP_CONCAT(CONCAT(STR(?a), STR(?f))) AS ?all) { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i }", "SELECT * { ?a ?b ?c . ?d ?e ?f }"})
  void tooMuch(String query) {
    assertThatThrownBy(() -> ask(query, GraphQuery.AnswerForm.csv)).isInstanceOf(QueryRefusedException.class)
        .extracting(e -> ((QueryRefusedException) e).reason()).isEqualTo(QueryRefusedException.Reason.TOO_MUCH);
  }

  /** A text that doubles forty times. */
  @Test
  void doublingIsBrokenOff() {
    StringBuilder query = new StringBuilder("SELECT (STRLEN(?x40) AS ?n) { BIND(\"0123456789\" AS ?x0) ");
    for (int i = 1; i <= 40; i++) {
      query.append("BIND(CONCAT(?x").append(i - 1).append(", ?x").append(i - 1).append(") AS ?x").append(i).append(") ");
    }
    assertThatThrownBy(() -> ask(query.append("}").toString(), GraphQuery.AnswerForm.csv)).isInstanceOf(QueryRefusedException.class);
  }
}
