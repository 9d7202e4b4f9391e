package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.FoldingProfile;
import org.seamledger.detail.Run;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.takeoff.Takeoff;

/**
 * A part as it is folded for one junction: legs that add up to its girth, and the bend after each.
 *
 * @param problem why it can't be folded from its girth; empty where it can
 */
public record FoldedPart(String part, String profile, double girthM, List<Leg> legs, String problem) {

  /** A shorter leg no brake holds: common practice, no source. */
  private static final double SHORTEST_M = 0.005;
  /** By this a closed hem is drawn open. */
  private static final double OPEN_DEGREES = 14;

  public FoldedPart {
    legs = List.copyOf(legs);
  }

  /** A leg and the turn after it; 180° is a closed hem, 0 after the last. */
  public record Leg(String name, double lengthM, double bendDegrees) {
  }

  /** A part of a junction's detail; empty where nothing says how it is folded, and for what is not counted at the junction. */
  public static Optional<FoldedPart> of(Takeoff takeoff, DetailedJunction junction, MetalPart part) {
    return of(takeoff.system(), junction, takeoff.quantities().byJunction().get(junction.junction().junction().id()),
        () -> SectionCut.of(takeoff, junction), part);
  }

  static Optional<FoldedPart> of(SectionSubject subject, MetalPart part) {
    return of(subject.system(), subject.line(), subject.counted(), subject::cut, part);
  }

  private static Optional<FoldedPart> of(RoofSystem system, DetailedJunction junction, JunctionQuantities counted,
      Supplier<SectionCut> cut, MetalPart part) {
    boolean isCounted = counted.metal().stream().anyMatch(m -> m.part().equals(part.part()) && m.pieces() > 0);
    if (part.run() == Run.ONCE || !isCounted) {
      return Optional.empty();
    }
    double girth = part.girthM() > 0 ? part.girthM() : system.flashing().girth().value();
    return junction.detail().profile(part.id(), junction.junction().type().section().word())
        .map(p -> folded(part.part(), p, girth, system, cut.get()));
  }

  private static FoldedPart folded(String part, FoldingProfile profile, double girth, RoofSystem system, SectionCut cut) {
    double stated = profile.legs().stream().mapToDouble(l -> stated(l, system)).sum();
    List<Leg> legs = new ArrayList<>();
    for (int i = 0; i < profile.legs().size(); i++) {
      FoldingProfile.Leg leg = profile.legs().get(i);
      double length = leg.share() > 0 ? leg.share() * (girth - stated) : stated(leg, system);
      legs.add(new Leg(leg.name(), length, i == profile.legs().size() - 1 ? 0 : bend(leg, cut)));
    }
    boolean fits = legs.stream().allMatch(l -> l.lengthM() >= SHORTEST_M);
    return new FoldedPart(part, profile.name(), girth, fits ? legs : List.of(),
        fits ? "" : "a girth of " + MeasureFormat.formatMillimetres(girth) + " is too small for the " + profile.name() + "'s other legs of "
            + MeasureFormat.formatMillimetres(stated));
  }

  private static double stated(FoldingProfile.Leg leg, RoofSystem system) {
    return switch (leg.size()) {
      case "closure.height" -> system.closure().height().value();
      case "closure.fasteningFlange" -> system.closure().fasteningFlange().value();
      case "panel.seamHeight" -> system.panel().seamHeight().value();
      case "ridge.opening" -> system.ridge().opening().value();
      case "walls.upstand" -> system.walls().upstand().value();
      default -> leg.lengthM();
    };
  }

  private static double bend(FoldingProfile.Leg leg, SectionCut cut) {
    double first = cut.faces().isEmpty() ? 0 : cut.faces().get(0).riseDegrees();
    double second = cut.faces().size() < 2 ? first : cut.faces().get(1).riseDegrees();
    return switch (leg.bend()) {
      case FIXED -> leg.bendDegrees();
      case FACES -> first + second;
      case WALL -> 90 + first;
      case OTHER_FACE -> 90 + second;
      case PLUMB -> first - 90;
    };
  }

  /** Its legs and bends in words: {@code hem 10 mm, 180°; drip 12 mm, -90°; …}. */
  public String words(DrawingUnits units) {
    return problem.isEmpty() ? legs.stream().map(l -> l.name() + " " + units.small(l.lengthM())
        + (l.bendDegrees() == 0 ? "" : ", " + MeasureFormat.fixed(l.bendDegrees(), 1) + "°")).collect(Collectors.joining("; ")) : problem;
  }

  /** Its legs alone, in their order, the unit once: {@code hem 10 + drip 12 + leg 130 mm}; empty where it can't be folded. */
  String legsWords(DrawingUnits units) {
    if (!problem.isEmpty() || legs.size() < 2) {
      return "";
    }
    return units == DrawingUnits.US ? legs.stream().map(l -> l.name() + " " + units.small(l.lengthM())).collect(Collectors.joining(" + "))
        : legs.stream().map(l -> l.name() + " " + MeasureFormat.plain(l.lengthM() * 1000, 0)).collect(Collectors.joining(" + ", "", " mm"));
  }

  /** Whether its first leg is a hem, folded flat on the next; a longer one is a sheet whose edge is folded back to a lip. */
  boolean isFirstHem() {
    return legs.size() > 1 && Math.abs(legs.get(0).bendDegrees()) > 179 && legs.get(0).lengthM() <= legs.get(1).lengthM();
  }

  /** The same of its last. */
  boolean isLastHem() {
    int last = legs.size() - 1;
    return last > 0 && Math.abs(legs.get(last - 1).bendDegrees()) > 179 && legs.get(last).lengthM() <= legs.get(last - 1).lengthM();
  }

  /** Its outline in metres from the first edge on, hems drawn open by a little so that they can be seen. */
  List<Vec2> outline() {
    List<Vec2> points = new ArrayList<>(List.of(new Vec2(0, 0)));
    double turn = 0;
    for (int i = 0; i < legs.size(); i++) {
      Leg leg = legs.get(i);
      double before = i == 0 ? 0 : legs.get(i - 1).bendDegrees();
      boolean isFirstHem = i == 0 && isFirstHem();
      boolean isLastHem = i == legs.size() - 1 && isLastHem();
      double open = isFirstHem ? Math.signum(leg.bendDegrees()) : isLastHem ? -Math.signum(before) : 0;
      double t = Math.toRadians(turn + OPEN_DEGREES * open);
      points.add(points.get(points.size() - 1).plus(new Vec2(Math.cos(t), Math.sin(t)).times(leg.lengthM())));
      turn += leg.bendDegrees();
    }
    return points;
  }
}
