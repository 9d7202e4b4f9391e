package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.FixedLine;
import org.seamledger.detail.Joins;
import org.seamledger.quantity.formula.Grip;

/** Every panel has one fixed line or a finding; the worked roofs in closed form. */
class FixityTest {

  private static final double IN = 0.0254;
  /** α of steel 12·10⁻⁶/K (national code of practice for metal roofs, temperature range), −20 °F to 180 °F: 200 °F are 111.1 K. */
  private static final double MOVEMENT_PER_M = 12e-6 * 200 / 1.8;

  private static Fixity fixity(String name, String json) {
    return Counted.worked(name, RoofSystem.parse(json, "s")).quantities().fixity();
  }

  private static List<FixedLine> lines(Fixity fixity) {
    return fixity.panels().stream().map(FixedPanel::fixed).distinct().toList();
  }

  /** A gable: every panel from eave to ridge. */
  @Test
  void panelsOfAGableAreFixedWhereTheSystemSays() {
    assertThat(lines(fixity("ridge-40ft", "{}"))).containsExactly(FixedLine.LOW_END);
    assertThat(lines(fixity("ridge-40ft", "{\"panel\": {\"fixedAt\": \"ridge\"}}"))).containsExactly(FixedLine.HIGH_END);
    assertThat(lines(fixity("ridge-40ft", "{\"panel\": {\"fixedAt\": \"middle\"}}"))).containsExactly(FixedLine.CLIP);
  }

  @Test
  void twoFixedLinesAndNoneAreFindingsThatNameThePanels() {
    Fixity both = fixity("ridge-40ft", "{\"panel\": {\"fixedAt\": \"both-ends\"}}");
    assertThat(lines(both)).containsExactly(FixedLine.NONE);
    assertThat(both.findings()).hasSize(2).allMatch(f -> f.code().equals("movement/two-fixed-lines") && f.message().contains("pan 30 of "));
    Fixity none = fixity("ridge-40ft", "{\"panel\": {\"fixedAt\": \"middle\", \"fixedClips\": false}}");
    assertThat(none.findings()).hasSize(2).allMatch(f -> f.code().equals("movement/no-fixed-line") && f.message().contains("pan 1 of "));
    assertThat(fixity("ridge-40ft", "{}").findings()).isEmpty();
  }

  /** α·L·ΔT at the free end; from 70 °F it grows by 110/200 of it and shrinks by 90/200. */
  @Test
  void theFreeEndMovesWithItsLength() {
    FixedPanel panel = fixity("ridge-40ft", "{}").panels().get(0);
    double movement = MOVEMENT_PER_M * panel.panel().lengthM();
    assertThat(panel.low().movementM()).isZero();
    assertThat(panel.high().movementM()).isCloseTo(movement, within(1e-9));
    assertThat(panel.high().growM()).isCloseTo(movement * 110 / 200, within(1e-9));
    assertThat(panel.high().shrinkM()).isCloseTo(movement * 90 / 200, within(1e-9));
    assertThat(panel.high().slotM()).isCloseTo(movement + 0.25 * IN, within(1e-9));
    FixedPanel clipped = fixity("ridge-40ft", "{\"panel\": {\"fixedAt\": \"middle\"}}").panels().get(0);
    assertThat(clipped.low().movementM()).isCloseTo(movement / 2, within(1e-9));
    assertThat(clipped.high().movementM()).isCloseTo(movement / 2, within(1e-9));
  }

  /**
   * Only the line at which panels are fixed passes into the deck: 30 pieces of 5 each side of the 40 ft ridge, and the same at the eaves.
   */
  @Test
  void onlyTheFixedLineEntersTheDeck() {
    Counted eave = Counted.worked("ridge-40ft", RoofSystem.DEFAULT);
    assertThat(deck(eave, "eave")).isEqualTo(300);
    assertThat(deck(eave, "ridge")).isZero();
    Counted ridge = Counted.worked("ridge-40ft", RoofSystem.parse("{\"panel\": {\"fixedAt\": \"ridge\"}}", "s"));
    assertThat(deck(ridge, "ridge")).isEqualTo(300);
    assertThat(deck(ridge, "eave")).isZero();
    assertThat(ridge.ofKind("ridge")).singleElement().satisfies(q -> assertThat(Counted.fasteners(q, "closure foot")).isEqualTo(300));
  }

  private static int deck(Counted counted, String kind) {
    return counted.ofKind(kind).stream().flatMap(q -> q.fasteners().stream()).filter(r -> r.joins() == Joins.PANEL_DECK)
        .peek(r -> assertThat(r.type()).isEqualTo(FastenerType.DECK_SCREW)).mapToInt(FastenerRow::count).sum();
  }

  /** Grips in closed form: 3/16 in of tape pressed by 12.5 % between two sheets of 0.024 in, three threads and a point behind (10 mm). */
  @Test
  void fastenersAreAsLongAsWhatTheyPassThrough() {
    double passed = (2 * 0.024 + 3.0 / 16 * 0.875) * IN;
    assertThat(Grip.lengthM(passed, Grip.BEHIND_SHEET, false)).isCloseTo(0.625 * IN, within(1e-9));
    assertThat(Grip.lengthM(passed, IN, false)).isCloseTo(1.25 * IN, within(1e-9));
    assertThat(Grip.lengthM(0.025, 0, true)).isCloseTo(0.025, within(1e-9));
    assertThat(Grip.lengthM(0.0251, 0, true)).isCloseTo(0.032, within(1e-9));
    assertThat(Grip.lengthM(0.16, 0, true)).isCloseTo(0.175, within(1e-9));
  }
}
