package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.samples.Terrace;

/** An analysis tells how far it is within every stage, and can be stopped in the middle of each. */
class ProgressTest {

  private static final int HOUSES = 40;

  @TempDir
  private static Path folder;
  private static Path model;
  private static Map<Stage, List<Double>> whole;

  /** Writes down what it hears; gives up in the middle of a stage. */
  private record Listener(Stage last, Map<Stage, List<Double>> heard) implements Progress {
    @Override
    public void begins(Stage stage) {
      heard.put(stage, new ArrayList<>());
    }

    @Override
    public void within(Stage stage, double share) {
      heard.get(stage).add(share);
      if (stage == last && share >= 0.4) {
        throw new CancellationException("that will do");
      }
    }
  }

  private static Map<Stage, List<Double>> run(Stage last) {
    Listener listener = new Listener(last, new EnumMap<>(Stage.class));
    if (last == Stage.DONE) {
      assertThat(Analysis.run(Inputs.ofFiles(List.of(model)), listener).faces()).hasSize(2 * HOUSES);
    } else {
      assertThatThrownBy(() -> Analysis.run(Inputs.ofFiles(List.of(model)), listener)).isInstanceOf(CancellationException.class)
          .hasMessage("that will do");
    }
    return listener.heard;
  }

  @BeforeAll
  static void runAsAWhole() {
    model = Terrace.write(folder.resolve("terrace.ifc"), HOUSES);
    whole = run(Stage.DONE);
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "DONE")
  void everyStageMovesOn(Stage stage) {
    List<Double> shares = whole.get(stage);
    assertThat(shares).hasSizeGreaterThan(HOUSES).allMatch(s -> s >= 0 && s <= 1).isSorted();
    assertThat(shares.stream().distinct().count()).isGreaterThan(HOUSES);
    assertThat(shares.get(0)).isLessThan(0.1);
    assertThat(shares.get(shares.size() - 1)).isGreaterThan(0.9);
    for (int i = 1; i < shares.size(); i++) {
      assertThat(shares.get(i) - shares.get(i - 1)).as("step %d of %d", i, shares.size()).isLessThanOrEqualTo(0.5);
    }
  }

  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "DONE")
  void everyStageCanBeStoppedInTheMiddle(Stage stage) {
    Map<Stage, List<Double>> heard = run(stage);
    assertThat(heard.keySet()).as("no later stage begins").allMatch(s -> s.ordinal() <= stage.ordinal());
    assertThat(heard.get(stage).size()).as("of %s", whole.get(stage).size()).isLessThan(whole.get(stage).size() * 3 / 4);
  }

  @Test
  void fractionsRiseFromNothingToAll() {
    assertThat(Stage.READING.fraction(0)).isZero();
    assertThat(Stage.DONE.fraction(0)).isEqualTo(1);
    for (int i = 1; i < Stage.values().length; i++) {
      assertThat(Stage.values()[i].fraction(0)).isEqualTo(Stage.values()[i - 1].fraction(1))
          .isGreaterThan(Stage.values()[i - 1].fraction(0));
    }
  }
}
