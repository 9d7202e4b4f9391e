package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Details;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.export.section.FoldedPart;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

class ProfileDrawingTest {

  private static final SortedMap<String, Detail> BOOK = new Details(Rules.packaged()).book();

  static Stream<String> details() {
    return BOOK.keySet().stream();
  }

  /** Outlets, overflows, brackets and joints are made or bought by the piece: no strip is folded to them. */
  private static boolean isFolded(MetalPart part) {
    return part.run() != Run.ONCE && part.run() != Run.AT_INTERVALS && part.run() != Run.BETWEEN_INTERVALS
        && !part.id().equals("bracket");
  }

  /** Every part that is folded has a profile whose legs are the girth that is counted and bought; what is not counted is not folded. */
  @ParameterizedTest
  @MethodSource("details")
  void legsAddUpToTheGirthThatIsCounted(String id) {
    legsAddUp(id, RoofSystem.DEFAULT);
    Takeoff takeoff = DetailScenes.of(BOOK.get(id), RoofSystem.DEFAULT);
    BOOK.get(id).metal().stream().filter(ProfileDrawingTest::isFolded).forEach(part -> assertThat(counted(takeoff, part).isEmpty())
        .as(id + ", " + part.part() + " is not counted").isEqualTo(!part.where().isEmpty()));
  }

  /** With plates behind what is fastened to the pan alone the details that have them count and fold them, too. */
  @Test
  void backUpPlatesAreFoldedWhereTheSystemAsksForThem() {
    RoofSystem plates = RoofSystem.parse("{\"fasteners\": {\"backUpPlates\": true}}", "plates.json");
    List<String> backed = BOOK.keySet().stream().filter(id -> legsAddUp(id, plates).contains("back-up")).toList();
    assertThat(backed).contains("sidewall-reglet", "rake", "hip", "step-joint", "end-lap");
  }

  /** Ids of the parts that are folded. */
  private static List<String> legsAddUp(String id, RoofSystem system) {
    Takeoff takeoff = DetailScenes.of(BOOK.get(id), system);
    List<String> ids = new ArrayList<>();
    for (MetalPart part : BOOK.get(id).metal()) {
      List<MetalLine> counted = counted(takeoff, part);
      Optional<FoldedPart> folded = FoldedPart.of(takeoff, takeoff.detailed().get(0), part);
      assertThat(folded.isPresent()).as(id + ", " + part.part()).isEqualTo(isFolded(part) && !counted.isEmpty());
      folded.ifPresent(f -> {
        assertThat(f.problem()).as(id + ", " + part.part()).isEmpty();
        double legs = f.legs().stream().mapToDouble(FoldedPart.Leg::lengthM).sum();
        assertThat(counted).allSatisfy(m -> assertThat(legs).isCloseTo(m.girthM(), within(1e-9)));
        ids.add(part.id());
      });
    }
    return ids;
  }

  private static List<MetalLine> counted(Takeoff takeoff, MetalPart part) {
    return takeoff.quantities().byJunction().get(DetailScenes.ID).metal().stream()
        .filter(m -> m.part().equals(part.part()) && m.pieces() > 0).toList();
  }

  /**
   * The gatehouse's ridge lies between two faces of 6:12, atan(6/12) = 26.565° each: the cap turns by 53.13° (worked by hand), its two legs
   * share what a girth of 12 in leaves after hems of 10 mm and drips of 12 mm: (304.8 − 44) / 2 = 130.4 mm.
   */
  @Test
  void aRidgeCapIsFoldedByTheSlopes() {
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", "gatehouse.ifc"))), Progress.NONE);
    DetailedJunction ridge = takeoff.detailed().stream().filter(j -> j.junction().kind().equals("ridge")).findFirst().orElseThrow();
    MetalPart cap = ridge.detail().metal().stream().filter(m -> m.id().equals("cap")).findFirst().orElseThrow();
    FoldedPart folded = FoldedPart.of(takeoff, ridge, cap).orElseThrow();
    assertThat(folded.legs()).hasSize(6);
    assertThat(Math.abs(folded.legs().get(2).bendDegrees())).isCloseTo(53.13, within(0.01));
    assertThat(folded.legs().get(2).lengthM()).isCloseTo(0.1304, within(1e-6));
    assertThat(Drawn.parse(ProfileDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0)).words()).contains("ridge cap, girth 305 mm",
        "-53.1°", "closure");
  }

  /** A girth that its other legs use up is said, not drawn. */
  @Test
  void aGirthThatIsTooSmallIsSaid() {
    RoofSystem narrow = RoofSystem.parse("{\"walls\": {\"upstand\": \"500 mm\"}}", "narrow.json");
    Takeoff takeoff = DetailScenes.of(BOOK.get("headwall-reglet"), narrow);
    assertThat(Drawn.parse(ProfileDrawing.sheets(takeoff, SheetSetup.DEFAULT).get(0)).words().replaceAll("\\s+", " "))
        .contains("is too small for the apron's other legs of 522 mm");
  }
}
