package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.ids.IdsDocument;
import org.seamledger.ids.IdsReader;
import org.seamledger.ids.check.IdsCheck;
import org.seamledger.progress.Progress;
import org.seamledger.source.ModelFile;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;

/** The points of the specification for roof models that an analysis names: held to that file, and to what {@code check} says by it. */
class ModelPointsTest {

  private static IdsDocument document() throws IOException {
    Path file = Path.of("shapes/ids", ModelPoints.FILE);
    try (InputStream in = Files.newInputStream(file)) {
      return IdsReader.read(in, file.toString());
    }
  }

  @Test
  void pointsHaveTheNamesOfTheFile() throws IOException {
    List<String> inFile = document().specifications().stream().map(s -> s.identifier() + " " + s.name()).toList();
    for (ModelPoints.Point p : ModelPoints.Point.values()) {
      assertThat(inFile).contains(p.identifier() + " " + p.title());
    }
  }

  @Test
  void whatAnAnalysisNamesIsWhatACheckFindsMissing() throws IOException {
    Map<String, List<String>> named = Map.of("d07_", List.of("roof-01", "roof-02", "roof-05"), "d04_", List.of(), "d01_", List.of(), "d08_",
        List.of());
    for (String model : new TreeSet<>(named.keySet())) {
      Path file = SharedModels.named(model);
      List<String> missed = new ArrayList<>();
      ModelPoints.missed(Analysis.run(Inputs.ofFiles(List.of(file)), Progress.NONE)).keySet().forEach(p -> missed.add(p.identifier()));
      assertThat(missed).as(model).isEqualTo(named.get(model));
      List<String> failed =
          IdsCheck.run(List.of(new ModelFile(file)), List.of(document()), Progress.NONE).get(0).specifications().stream()
              .filter(s -> !s.passes()).map(s -> s.specification().identifier()).toList();
      assertThat(failed).as(model).containsAll(missed);
    }
  }
}
