package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.takeoff.Takeoff;

/** The committed demo models against their committed ledgers. Sources: the closed form beside each expected line. */
class SamplesTest {

  private static final Path FOLDER = Path.of("ifc-samples");

  static Stream<String> files() {
    return Estate.samples().stream().map(Sample::file);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("files")
  void kindsAndLengths(String file) throws IOException {
    JsonNode expected = new ObjectMapper().readTree(FOLDER.resolve(file + ".expected.json").toFile());
    Map<String, List<Double>> lengths = new TreeMap<>();
    expected.get("lengthsM").properties().forEach(e -> {
      List<Double> of = new ArrayList<>();
      e.getValue().forEach(n -> of.add(n.asDouble()));
      lengths.put(e.getKey(), of);
    });
    Map<String, List<Double>> found = Comparison.byKind(Pipeline.lines(FOLDER.resolve(file + ".ifc")));
    assertThat(Comparison.differences(lengths, found, expected.get("relativeTolerance").asDouble())).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("files")
  void modelledFlashingsAndGutters(String file) throws IOException {
    JsonNode expected = new ObjectMapper().readTree(FOLDER.resolve(file + ".expected.json").toFile());
    Map<String, Double> lengths = new TreeMap<>();
    expected.path("modelled").forEach(m -> lengths.put(m.get("what").asText(), m.get("lengthM").asDouble()));
    Takeoff takeoff = Pipeline.analyse(FOLDER.resolve(file + ".ifc"));
    Map<String, Double> found = new TreeMap<>();
    takeoff.junctions().forEach(j -> takeoff.modelledAt(j.junction().id()).pieces()
        .forEach(p -> found.merge((p.gutter() ? "gutter at " : "flashing at ") + j.kind(), p.lengthM(), Double::sum)));
    assertThat(found.keySet()).isEqualTo(lengths.keySet());
    lengths.forEach((what, m) -> assertThat(found.get(what)).as(what).isCloseTo(m, within(1e-3)));
  }
}
