package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.detail.Kinds;

/** The demo models are what the generator writes, and together they show every kind. */
class EstateTest {

  private static final Path FOLDER = Path.of("ifc-samples");

  static Stream<Sample> samples() {
    return Estate.samples().stream();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void committedFilesAreWhatTheGeneratorWrites(Sample s) throws IOException {
    String hint = "run org.seamledger.samples.Estate and commit what it writes";
    assertThat(Files.readString(FOLDER.resolve(s.file() + ".ifc"), StandardCharsets.US_ASCII)).as(hint).isEqualTo(s.ifc());
    assertThat(Files.readString(FOLDER.resolve(s.file() + ".expected.json"))).as(hint).isEqualTo(s.expectedJson());
  }

  @Test
  void committedModelsByDisciplineAreWhatTheGeneratorWrites() throws IOException {
    Path folder = FOLDER.resolve(Federation.FOLDER);
    for (Discipline d : Estate.disciplines()) {
      assertThat(Files.readString(folder.resolve(d.file() + ".ifc"), StandardCharsets.US_ASCII)).isEqualTo(d.ifc());
    }
    assertThat(Files.readString(folder.resolve("roof.expected.json"))).isEqualTo(Federation.expectedJson());
  }

  @Test
  void theListIsWhatTheGeneratorWrites() throws IOException {
    assertThat(Files.readString(FOLDER.resolve("README.md"))).isEqualTo(Estate.readme());
  }

  @Test
  void everyKindIsShown() {
    Set<String> kinds = new TreeSet<>();
    samples().forEach(s -> kinds.addAll(s.house().expectedByKind().keySet()));
    Set<String> all = new TreeSet<>(Kinds.ALL);
    all.remove(Kinds.UNCLASSIFIED);
    assertThat(kinds).isEqualTo(all);
  }

  /** The worked examples' own figures: ridge 40 ft; hip 18 ft; valley 14 ft; headwall 12 m; ridge 16, hips 18; ridge 24, hips √244 ft. */
  @Test
  void workedExamplesHaveTheirFigures() {
    assertThat(length("worked/ridge-40ft", "ridge")).isCloseTo(40 * 0.3048, within(1e-12));
    assertThat(length("worked/regular-hip", "hip")).isCloseTo(18 * 0.3048, within(1e-12));
    assertThat(length("worked/unequal-valley", "valley")).isCloseTo(14 * 0.3048, within(1e-12));
    assertThat(length("worked/metric-headwall", "headwall")).isEqualTo(12);
    assertThat(length("worked/hip-roof", "ridge")).isCloseTo(16 * 0.3048, within(1e-12));
    assertThat(length("worked/hip-roof", "hip")).isCloseTo(18 * 0.3048, within(1e-12));
    assertThat(length("worked/hip-roof-steeper-ends", "ridge")).isCloseTo(24 * 0.3048, within(1e-12));
    assertThat(length("worked/hip-roof-steeper-ends", "hip")).isCloseTo(Math.sqrt(244) * 0.3048, within(1e-12));
  }

  private static double length(String file, String kind) {
    return samples().filter(s -> s.file().equals(file)).findFirst().orElseThrow().house().expectedByKind().get(kind).get(0);
  }
}
