package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.roof.ElementCoverage;
import org.seamledger.takeoff.Takeoff;

/** Nothing of any sample's or shared model's roof is lost, where its area went adds up, and what covers it has a name. */
@Tag("slow")
class CoverageTest {

  @Test
  void ofTheSamples() {
    List<String> failures = new ArrayList<>();
    Estate.samples().forEach(s -> failures.addAll(check(s.file(), Pipeline.analyse(s.house(), s.form()))));
    assertThat(failures).isEmpty();
  }

  /** All but the one that can't be read. Their areas are compared with what their tools state in {@link AuthoringToolQuantitiesTest}. */
  @Test
  void ofSharedModels() throws IOException {
    List<String> failures = new ArrayList<>();
    for (Path model : SharedModels.all()) {
      if (!model.getFileName().toString().startsWith("d14_")) {
        failures.addAll(check(model.getFileName().toString(), Pipeline.analyse(model)));
      }
    }
    assertThat(failures).isEmpty();
  }

  private static List<String> check(String name, Takeoff t) {
    List<String> failures = new ArrayList<>();
    for (ElementCoverage c : t.coverage()) {
      double sum = c.inFacesM2() + c.coveredM2() + c.innerLayerM2() + c.enclosedM2() + c.voidM2() + c.cutEdgeM2() + c.tooSmallM2()
          + c.lostM2();
      if (Math.abs(sum - c.upwardM2()) > 1e-6 * Math.max(1, c.upwardM2()) || c.lostM2() > 0.05
          || c.coveredM2() > 0 && c.coveredBy().isEmpty()) {
        failures.add(name + ": " + c);
      }
    }
    return failures;
  }
}
