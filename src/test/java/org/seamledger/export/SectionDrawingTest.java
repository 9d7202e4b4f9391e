package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.Details;
import org.seamledger.detail.Seal;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Takeoffs;

@Tag("slow")
class SectionDrawingTest {

  private static final SortedMap<String, Detail> BOOK = new Details(Rules.packaged()).book();
  /** A micrometre on paper, twice. */
  private static final double ROUNDING = 0.002;
  private static final RoofSystem OTHER = RoofSystem.parse(
      "{\"panel\": {\"seamHeight\": \"65 mm\", \"coverage\": \"500 mm\"}, \"tape\": {\"width\": \"30 mm\", \"thickness\": \"6 mm\"}}",
      "other.json");

  static Stream<String> details() {
    return BOOK.keySet().stream();
  }

  private static Drawn drawn(String detail, RoofSystem system) {
    return Drawn.parse(SectionDrawing.svg(DetailScenes.of(BOOK.get(detail), system), DetailScenes.ID, SheetSetup.DEFAULT));
  }

  /** A detail with the parts that are counted in its scene. */
  private static Detail counted(String id) {
    JunctionQuantities counted = DetailScenes.of(BOOK.get(id), RoofSystem.DEFAULT).quantities().byJunction().get(DetailScenes.ID);
    return BOOK.get(id).only(part -> counted.metal().stream().anyMatch(m -> m.part().equals(part.part()) && m.pieces() > 0),
        seal -> counted.seals().stream().anyMatch(s -> s.place().equals(seal.place()) && s.lengthM() > 0),
        line -> counted.fasteners().stream().anyMatch(f -> f.id().equals(line.id()) && f.count() > 0));
  }

  @Test
  void thereAreDetailsForEveryFamily() {
    assertThat(BOOK.keySet().stream().map(DetailScenes::kind).distinct()).hasSize(20);
  }

  @ParameterizedTest
  @MethodSource("details")
  void everythingThatADetailHasIsLabelled(String id) {
    String words = drawn(id, RoofSystem.DEFAULT).words().replaceAll("\\s+", " ");
    Detail detail = counted(id);
    assertThat(words).contains(detail.title(), DetailScenes.ID, DetailScenes.KINDS.kind(DetailScenes.kind(id)).label(), "govern");
    detail.metal().forEach(m -> assertThat(words).contains(m.part() + ", "));
    detail.seals().forEach(s -> assertThat(words).contains(s.place()));
    detail.fastenings().forEach(f -> assertThat(words).contains("fasteners, " + f.place() + ":"));
    assertThat(words.contains("COMMON PRACTICE")).isEqualTo(detail.source().contains("common practice"));
    assertThat(words.contains("EXPOSED")).isEqualTo(detail.seals().stream().anyMatch(s -> s.exposure() == Seal.Exposure.EXPOSED)
        || detail.fastenings().stream().anyMatch(Fastening::exposed));
  }

  /** The program's own details leave nothing to a list of what could not be drawn. */
  @ParameterizedTest
  @MethodSource("details")
  void everythingThatADetailHasIsDrawn(String id) {
    Drawn drawn = drawn(id, RoofSystem.DEFAULT);
    Detail detail = counted(id);
    assertThat(drawn.words()).doesNotContain("not drawn");
    assertThat(drawn.elements("polygon", "tape").isEmpty()).isEqualTo(detail.seals().stream().noneMatch(s -> s.form() == Seal.Form.TAPE));
    assertThat(drawn.elements("polygon", "bead").isEmpty()).isEqualTo(detail.seals().stream().noneMatch(s -> s.form() == Seal.Form.BEAD));
    assertThat(drawn.elements("polygon", "soft").isEmpty())
        .isEqualTo(detail.seals().stream().noneMatch(s -> s.form() == Seal.Form.IN_SEAM));
    // A wedge is no screw: it has a mark of its own.
    assertThat(drawn.elements("line", "shank").size() + drawn.elements("polygon", "wedge").size())
        .isGreaterThanOrEqualTo(detail.fastenings().size());
    assertThat(drawn.elements("polyline", "metal").size()).isGreaterThanOrEqualTo(detail.metal().size());
  }

  @ParameterizedTest
  @MethodSource("details")
  void tapeIsToScale(String id) {
    measureTape(drawn(id, RoofSystem.DEFAULT), 3.0 / 16 * 25.4, 7.0 / 8 * 25.4);
    measureTape(drawn(id, OTHER), 6, 30);
  }

  private static void measureTape(Drawn drawn, double thickness, double width) {
    for (List<Vec2> tape : drawn.points("polygon", "tape")) {
      double a = tape.get(0).distance(tape.get(1)) * drawn.denominator();
      double b = tape.get(1).distance(tape.get(2)) * drawn.denominator();
      assertThat(Math.min(a, b)).isCloseTo(thickness, within(ROUNDING * drawn.denominator()));
      assertThat(Math.max(a, b)).isCloseTo(width, within(ROUNDING * drawn.denominator()));
    }
  }

  @ParameterizedTest
  @MethodSource("details")
  void seamsAreToScale(String id) {
    measureSeams(drawn(id, RoofSystem.DEFAULT), 38.1);
    measureSeams(drawn(id, OTHER), 65);
  }

  /** From the panel's end up to the top of its seam. */
  private static void measureSeams(Drawn drawn, double height) {
    for (List<Vec2> seam : drawn.points("polyline", "seam")) {
      assertThat(seam.get(0).distance(seam.get(1)) * drawn.denominator()).isCloseTo(height, within(ROUNDING * drawn.denominator()));
    }
  }

  /** A closure's web is as high as the system says: 1 1/2 in where nothing is said of a seam of 1 1/2 in. */
  @Test
  void closuresAndSlopesAreToScale() {
    Drawn ridge = drawn("ridge-unvented", RoofSystem.DEFAULT);
    List<List<Vec2>> closures = ridge.points("polyline", "metal").stream().filter(line -> line.size() == 4).toList();
    assertThat(closures).hasSize(2).allSatisfy(line -> {
      assertThat(line.get(1).distance(line.get(2)) * ridge.denominator()).isCloseTo(38.1, within(ROUNDING * ridge.denominator()));
      assertThat(line.get(0).distance(line.get(1)) * ridge.denominator()).isCloseTo(25.4, within(ROUNDING * ridge.denominator()));
    });
    // The scene's faces fall by 0.5 and 0.35 in 1.
    assertThat(ridge.points("polyline", "panel")).extracting(line -> Math.abs(
        (line.get(1).v() - line.get(0).v()) / (line.get(1).u() - line.get(0).u()))).satisfiesExactly(
            slope -> assertThat(slope).isCloseTo(0.5, within(1e-3)), slope -> assertThat(slope).isCloseTo(0.35, within(1e-3)));
  }

  /** Solid metal as high as the seam, 1 1/2 in, and above it the openings, 3/4 in (UFC 3-110-03 (2006) chapter 4: tight up to there). */
  @Test
  void aVentedClosureOpensAboveTheSeam() {
    Drawn ridge = drawn("ridge-vented", RoofSystem.DEFAULT);
    assertThat(ridge.points("polyline", "vented").stream().filter(line -> line.size() == 4)).hasSize(2).allSatisfy(line -> assertThat(
        line.get(1).distance(line.get(2)) * ridge.denominator()).isCloseTo((1.5 + 0.75) * 25.4, within(ROUNDING * ridge.denominator())));
    assertThat(ridge.words()).contains("closure 1 1/2 in", "openings 3/4 in");
  }

  /** One outlet and one overflow for each begun 4 ft of 5 m (16.4 ft), as the system says and no shape: 5; a joint needs 40 ft. */
  @Test
  void outletsStandAsTheSystemSays() {
    RoofSystem close = RoofSystem.parse("{\"purchase\": {\"gutters\": {\"outletSpacing\": \"4 ft\"}}}", "close.json");
    for (String id : List.of("level-valley", "low-wall-reglet", "eave-fixed-gutter")) {
      JunctionQuantities counted = DetailScenes.of(BOOK.get(id), close).quantities().byJunction().get(DetailScenes.ID);
      assertThat(counted.metal()).filteredOn(m -> List.of("outlet", "overflow").contains(m.part())).isNotEmpty()
          .allSatisfy(m -> assertThat(m.pieces()).as(id).isEqualTo(5));
      assertThat(counted.metal()).filteredOn(m -> m.part().contains("joint")).allSatisfy(m -> assertThat(m.pieces()).isZero());
      assertThat(drawn(id, close).words().replaceAll("\\s+", " ")).contains("outlet, one for each 1.219 m");
    }
  }

  @ParameterizedTest
  @MethodSource("details")
  void namesStayWords(String id) {
    Drawn drawn = drawn(id, RoofSystem.DEFAULT);
    drawn.isHarmless();
    assertThat(drawn.words()).contains("<script>alert('1 & 2')", "a \"model\" <b>.ifc");
  }

  @Test
  void theSameTakeoffGivesTheSameText() {
    assertThat(SectionDrawing.svg(DetailScenes.of(BOOK.get("valley"), OTHER), DetailScenes.ID, SheetSetup.DEFAULT))
        .isEqualTo(SectionDrawing.svg(DetailScenes.of(BOOK.get("valley"), OTHER), DetailScenes.ID, SheetSetup.DEFAULT));
  }

  /** Details of an office's own, and junctions without one, have a drawing too. */
  @Test
  void whatNobodyForesawIsListed() {
    assertThat(Drawn.parse(SectionDrawing.svg(Takeoffs.boatHouse(), "ridge1", SheetSetup.DEFAULT)).words()).contains("ridge cap",
        "under the cap", "cap edge");
    assertThat(Drawn.parse(SectionDrawing.svg(Takeoffs.boatHouse(), "rake1", SheetSetup.DEFAULT)).words()).contains("No detail chosen");
    Detail hip = BOOK.get("hip");
    List<Seal> seals = List.of(new Seal(Seal.Form.TAPE, Seal.Role.PRIMARY, Seal.Exposure.CONCEALED, "along the lamp post", 1,
        org.seamledger.detail.On.LINE, org.seamledger.detail.Run.CONTINUOUS, 0, "", ""));
    Detail own = new Detail("hip", hip.title(), hip.metal(), seals, List.of(), List.of(), "", true, "office");
    assertThat(Drawn.parse(SectionDrawing.svg(DetailScenes.of(own, OTHER), DetailScenes.ID, SheetSetup.DEFAULT)).words()).contains(
        "not drawn",
        "along the lamp post");
  }

  @Test
  void anUnknownJunctionIsRefused() {
    assertThatThrownBy(() -> SectionDrawing.svg(Takeoffs.boatHouse(), "nope", SheetSetup.DEFAULT))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("nope");
  }
}
