package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.progress.Progress;
import org.seamledger.SharedModels;
import org.seamledger.finding.Finding;

/** Models that other people's tools wrote: two disciplines of one house, and houses that have nothing to do with each other. */
@Tag("slow")
class RealPairsTest {

  private static final String HOUSE = "d04_asymmetric_gable_ifc4.ifc";
  private static final String STRUCTURE = "d04b_asymmetric_gable_structure_ifc4.ifc";

  private static Takeoff run(List<String> places, String... files) throws IOException {
    List<Path> paths = new ArrayList<>();
    for (String file : files) {
      paths.add(SharedModels.named(file));
    }
    return Analysis.run(Takeoffs.placed(Inputs.ofFiles(paths), places), Progress.NONE);
  }

  private static List<Finding> aboutModels(Takeoff t) {
    return t.findings().stream().filter(f -> f.code().startsWith("models/") && !f.code().equals("models/placed")).toList();
  }

  /** The chimney stands in the structural model only: 0.70 m square in plan, through a slope of 45°, so 0.70 · √2 = 0.99 m along it. */
  @Test
  void theChimneyOfTheStructuralModelPiercesTheArchitectsRoof() throws IOException {
    Takeoff t = run(List.of(), HOUSE, STRUCTURE);
    assertThat(aboutModels(t)).isEmpty();
    TreeMap<String, Double> lengths = new TreeMap<>();
    t.junctions().stream().filter(j -> j.kind().startsWith("curb-"))
        .forEach(j -> lengths.merge(j.kind(), j.junction().lengthM(), Double::sum));
    assertThat(lengths.keySet()).containsExactly("curb-downslope", "curb-side", "curb-upslope");
    assertThat(lengths.get("curb-upslope")).isCloseTo(0.70, within(1e-3));
    assertThat(lengths.get("curb-side")).isCloseTo(2 * 0.70 * Math.sqrt(2), within(2e-3));
    // The architect cut the roof for it: at the same place, to the same size.
    assertThat(t.junctions().stream().filter(j -> j.kind().startsWith("curb-"))).hasSize(4).allSatisfy(j -> {
      assertThat(j.junction().facts().word("roofHole")).isEqualTo("whole");
      assertThat(j.junction().elements().stream().map(e -> t.elements().get(e).model())).containsExactly(0, 1);
    });
  }

  /** Both state the same conversion to one map: that brings the structure back, wherever it was put. */
  @ParameterizedTest
  @CsvSource(delimiter = ';', value = {"30,-12,4", "30,-12,4,90", "0.5,0,0", "0,0,2.5", "0,0,0,180", "5,5,0,33", "0,0,0,0,0.001"})
  void theStructurePutElsewhereIsNoticed(String place) throws IOException {
    assertThat(aboutModels(run(List.of(STRUCTURE + "=" + place), HOUSE, STRUCTURE))).singleElement().satisfies(f -> {
      assertThat(f.code()).isEqualTo("models/misplaced");
      assertThat(f.message()).contains("Likely it belongs where its own coordinates put it");
    });
  }

  /** Different houses: side by side, far apart, and one through the other. */
  @ParameterizedTest
  @CsvSource({"d13_gable_ifc2x3.ifc, d10_hip_roof_ifc2x3.ifc", "d01_gable_house_ifc4.ifc, d05_halfhip_valley_house_ifc2x3.ifc"})
  void strangersAreNoticed(String a, String b) throws IOException {
    assertThat(aboutModels(run(List.of(), a, b))).extracting(Finding::code).containsExactly("models/apart");
  }
}
