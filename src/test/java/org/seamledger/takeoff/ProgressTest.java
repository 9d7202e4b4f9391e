package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.seamledger.progress.Progress;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import java.util.Optional;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.samples.Terrace;

/** An analysis tells how far it is within every stage, and can be stopped in the middle of each. */
@Tag("slow")
class ProgressTest {

  private static final int HOUSES = 40;

  @TempDir
  private static Path folder;
  private static Path model;
  private static Map<Stage, List<Double>> whole;

  /** Writes down what it is told; gives up in the middle of a stage. */
  private record Listener(Optional<Stage> last, Map<Stage, List<Double>> heard) implements Progress {
    @Override
    public void at(String words, double fraction) {
      Stage stage = Stream.of(Stage.values()).filter(s -> s.words().equals(words)).findFirst().orElseThrow();
      double share = (fraction - stage.fraction(0)) / (stage.fraction(1) - stage.fraction(0));
      heard.computeIfAbsent(stage, s -> new ArrayList<>()).add(share);
      if (last.equals(Optional.of(stage)) && share >= 0.4) {
        throw new CancellationException("that will do");
      }
    }
  }

  private static Map<Stage, List<Double>> run(Optional<Stage> last) {
    Listener listener = new Listener(last, new EnumMap<>(Stage.class));
    if (last.isEmpty()) {
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
    whole = run(Optional.empty());
  }

  @ParameterizedTest
  @EnumSource
  void everyStageMovesOn(Stage stage) {
    List<Double> shares = whole.get(stage);
    assertThat(shares).hasSizeGreaterThan(HOUSES).allMatch(s -> s >= 0 && s <= 1 + 1e-12).isSorted();
    assertThat(shares.stream().distinct().count()).isGreaterThan(HOUSES);
    assertThat(shares.get(0)).isLessThan(0.1);
    assertThat(shares.get(shares.size() - 1)).isGreaterThan(0.9);
    for (int i = 1; i < shares.size(); i++) {
      assertThat(shares.get(i) - shares.get(i - 1)).as("step %d of %d", i, shares.size()).isLessThanOrEqualTo(0.5);
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyStageCanBeStoppedInTheMiddle(Stage stage) {
    Map<Stage, List<Double>> heard = run(Optional.of(stage));
    assertThat(heard.keySet()).as("no later stage begins").allMatch(s -> s.ordinal() <= stage.ordinal());
    assertThat(heard.get(stage).size()).as("of %s", whole.get(stage).size()).isLessThan(whole.get(stage).size() * 3 / 4);
  }

  @Test
  void fractionsRiseFromNothingToAll() {
    Stage[] all = Stage.values();
    assertThat(all[0].fraction(0)).isZero();
    assertThat(all[all.length - 1].fraction(1)).isEqualTo(1);
    for (int i = 1; i < all.length; i++) {
      assertThat(all[i].fraction(0)).isEqualTo(all[i - 1].fraction(1)).isGreaterThan(all[i - 1].fraction(0));
    }
  }

  @Test
  void aPartKeepsTheNameOfItsStage() {
    List<String> told = new ArrayList<>();
    Progress second = ((Progress) (stage, share) -> told.add(stage + " " + share)).stage("second", 0.5, 1);
    second.part(1, 2).at(0.5);
    second.stage("inner", 0, 0.5).at(0.5);
    assertThat(told).containsExactly("second 0.5", "second 0.875", "inner 0.5", "inner 0.625");
  }

  @Test
  void whoeverAskedCancelsAtTheNextStep() {
    AtomicBoolean asked = new AtomicBoolean();
    Progress progress = Progress.NONE.unless(asked::get);
    progress.part(0, 0.5).at(0.1);
    asked.set(true);
    assertThatThrownBy(() -> progress.part(0, 0.5).at(0.2)).isInstanceOf(CancellationException.class);
  }
}
