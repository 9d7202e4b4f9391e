package org.seamledger.samples;

import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;
import static org.seamledger.samples.Units.feet;
import static org.seamledger.samples.Units.inches;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.seamledger.samples.House.Through;
import org.seamledger.samples.JoinedRoofs.Meeting;

/** Houses whose junction lengths have closed forms, one of each sort. */
public final class ClosedForms {

  /** A named house. */
  public record Case(String name, Supplier<House> house) {
    @Override
    public String toString() {
      return name;
    }
  }

  private ClosedForms() {
  }

  /** Every case, in a fixed order. */
  public static List<Case> all() {
    List<Case> cases = new ArrayList<>();
    cases.addAll(plain());
    cases.addAll(joined());
    cases.addAll(walled());
    cases.addAll(pierced());
    return cases;
  }

  static List<Case> plain() {
    return List.of(
        new Case("gable", () -> Roofs.gable(8, 12, pitch(30))),
        new Case("gable of unequal pitches", () -> Roofs.gable(9, 11, pitch(22), pitch(47))),
        new Case("hip", () -> Roofs.hip(7, 11, per12(6))),
        new Case("hip with steeper ends", () -> Roofs.hip(feet(24), feet(40), per12(6), per12(9))),
        new Case("pyramid", () -> Roofs.hip(6, 6, pitch(35))),
        new Case("half-hip", () -> Roofs.halfHip(8, 13, pitch(40), 1.5)),
        new Case("mono-slope", () -> Roofs.monoSlope(5, 9, per12(3))),
        new Case("gambrel", () -> Roofs.gambrel(9, 14, pitch(60), 1.6, pitch(25))),
        new Case("bell-cast gable", () -> Roofs.gambrel(10, 8, pitch(20), 1.2, pitch(45))),
        new Case("mansard", () -> Roofs.mansard(10, 15, pitch(68), 1.1, pitch(18))),
        new Case("mansard with level top", () -> Roofs.mansardWithLevelTop(9, 12, pitch(65), 1.4)),
        new Case("butterfly", () -> Roofs.butterfly(10, 14, per12(1))),
        new Case("octagon", () -> Roofs.octagon(3.2, per12(6))),
        new Case("gable, a plane in three slabs", () -> Roofs.gable(8, 12, pitch(30)).inPieces("south", 3, 0)),
        new Case("gable, slabs with slack between them", () -> Roofs.gable(8, 12, pitch(30)).inPieces("south", 3, 0.008)),
        new Case("hip in layers", () -> Roofs.hip(7, 11, pitch(28)).layered(0.04, 0.16)),
        new Case("gable in layers", () -> Roofs.gable(7, 11, pitch(40)).layered(0.025, 0.18)));
  }

  static List<Case> joined() {
    List<Case> cases = new ArrayList<>(List.of(
        new Case("L plan", () -> JoinedRoofs.ell(14, 11, 6, pitch(35))),
        new Case("roof under an upper overhang",
            () -> JoinedRoofs.underOverhang(4, 10, pitch(20), 1.5, 0.6, 7, pitch(35))),
        new Case("step", () -> JoinedRoofs.step(4, 5, 9, pitch(15), 1.2))));
    cases.add(new Case("wall dormer", () -> JoinedRoofs.tee(9, 14, pitch(40), 6, 3, 0, pitch(40), Meeting.CUT)));
    cases.add(new Case("wings on both sides", () -> JoinedRoofs.winged("wings", 10, 30, pitch(35),
        List.of(new JoinedRoofs.Wing(5, 6, 4, pitch(35)), new JoinedRoofs.Wing(24, 5, 3, pitch(45))),
        List.of(new JoinedRoofs.Wing(14, 7, 5, pitch(30))), Meeting.CUT)));
    for (Meeting meeting : Meeting.values()) {
      String how = ", " + meeting.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ');
      cases.add(new Case("T plan" + how, () -> JoinedRoofs.tee(8, 15, pitch(40), 6, 5, 3, pitch(40), meeting)));
      cases.add(new Case("T plan, unequal pitches" + how,
          () -> JoinedRoofs.tee(feet(30), feet(50), per12(4), feet(20), feet(12), feet(6), per12(8), meeting)));
      cases.add(new Case("gable dormer" + how,
          () -> JoinedRoofs.gableDormer(Roofs.gable(9, 12, pitch(40)), "south", "dormer", 5, 1.8, 1.2, 1.1, pitch(35), meeting)));
      cases.add(new Case("shed dormer" + how,
          () -> JoinedRoofs.shedDormer(Roofs.gable(10, 12, pitch(45)), "south", "dormer", 6, 3, 1, 1.4, pitch(12), meeting)));
    }
    return cases;
  }

  static List<Case> walled() {
    return List.of(
        new Case("lean-to", () -> WalledRoofs.leanTo(3.5, 9, pitch(18), 1.2)),
        new Case("against a low wall", () -> WalledRoofs.againstLowWall(4, 8, pitch(10), 0.9)),
        new Case("low slope behind parapets", () -> WalledRoofs.parapets(12, 18, per12(0.25), 0.5)),
        new Case("low slope, parapets on the slab", () -> WalledRoofs.parapetsOnSlab(12, 18, per12(0.25), 0.5)),
        new Case("oblique wall", () -> WalledRoofs.obliqueWall(5, 10, pitch(25), 4, 0.8)),
        new Case("oblique rake", () -> WalledRoofs.obliqueRake(5, 10, pitch(25), 4)),
        new Case("gable between parapet gables", () -> WalledRoofs.parapetGables(8, 12, pitch(35), 0.4)),
        new Case("party wall through the roof", () -> WalledRoofs.partyWall(8, 12, pitch(35), 5, 0.5)),
        new Case("wall ending part-way", () -> WalledRoofs.wallPartWay(6, 9, pitch(30), 2.5, 0.7)),
        new Case("wall running out at the surface", () -> WalledRoofs.wallRunningOut(6, 9, pitch(30), 3.5)));
  }

  static List<Case> pierced() {
    List<Case> cases = new ArrayList<>();
    for (Through through : Through.values()) {
      String how = ", " + through.name().toLowerCase(java.util.Locale.ROOT);
      cases.add(new Case("chimney on a slope" + how,
          () -> Roofs.gable(8, 12, pitch(35)).chimney("stack", "south", 4, 2.2, 0.9, 0.6, 1.3, through)));
      cases.add(new Case("vertical pipe" + how,
          () -> Roofs.gable(8, 12, per12(9)).pipe("vent", "north", 5, 6.1, 0.11, 0.4, through)));
      if (through != Through.OUTLINE) {
        cases.add(new Case("chimney across the ridge" + how,
            () -> JoinedRoofs.chimneyAcrossRidge(Roofs.gable(8, 12, pitch(35)), "stack", 8, 12, 4.5, 0.7, 1.1, 0.9, through)));
      }
      if (through != Through.WHOLE) {
        cases.add(new Case("unfilled opening" + how,
            () -> Roofs.monoSlope(6, 9, pitch(20)).hatch("shaft", "plane", 4, 3, 1.2, 0.8, through)));
      }
    }
    cases.add(new Case("skylight, flush", () -> Roofs.gable(8, 12, pitch(40)).skylight("rooflight", "south", 5, 2, inches(30), 1, 0)));
    cases.add(new Case("skylight, raised", () -> Roofs.gable(8, 12, pitch(40)).skylight("rooflight", "south", 5, 2, inches(30), 1, 0.25)));
    cases.add(
        new Case("pipe across the ridge", () -> JoinedRoofs.pipeAcrossRidge(Roofs.gable(8, 12, pitch(30)), "flue", 8, 12, 7, 0.25, 1)));
    cases.add(new Case("duct", () -> Roofs.hip(8, 12, pitch(25))
        .boxThrough("extract", Thing.Role.DUCT, "north", 6, 6, 0.6, 0.5, 0.8, Through.WHOLE)));
    return cases;
  }
}
