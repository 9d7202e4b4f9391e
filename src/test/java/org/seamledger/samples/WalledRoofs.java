package org.seamledger.samples;

import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Roofs.risingNorth;

/** Planes that end at walls. All rise to the north from y = 0. */
public final class WalledRoofs {

  private static final double WALL = 0.3;

  private WalledRoofs() {
  }

  /** A plane whose top ends at a wall that rises {@code above} it. */
  public static House leanTo(double depth, double length, Pitch pitch, double above) {
    double top = EAVE + depth * pitch.tan();
    return plane("lean-to", depth, length, pitch)
        .wall("house wall", 0, depth, length, depth + WALL, 0, top + above)
        .expect("headwall", length, "length of the wall")
        .expect("eave", length, "length of the plan")
        .expect(2, "rake", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }

  /** A plane that drains into a wall: the wall stands along its low edge. */
  public static House againstLowWall(double depth, double length, Pitch pitch, double above) {
    return plane("against a low wall", depth, length, pitch)
        .wall("low wall", 0, -WALL, length, 0, 0, EAVE + above)
        .expect("low-wall", length, "length of the wall")
        .expect("high-edge", length, "length of the plan")
        .expect(2, "rake", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }

  /** A plane inside parapets on all sides, their tops {@code above} the plane's top. */
  public static House parapets(double depth, double length, Pitch pitch, double above) {
    double top = EAVE + depth * pitch.tan() + above;
    double low = EAVE - 1;
    House house = plane("parapets", depth, length, pitch);
    parapet(house, "parapet south", -WALL, -WALL, length + WALL, 0, low, top);
    parapet(house, "parapet north", -WALL, depth, length + WALL, depth + WALL, low, top);
    parapet(house, "parapet west", -WALL, 0, 0, depth, low, top);
    parapet(house, "parapet east", length, 0, length + WALL, depth, low, top);
    return house.expect("headwall", length, "inner length")
        .expect("low-wall", length, "inner length")
        .expect(2, "sidewall", depth * pitch.rafter(), "inner depth × √(1+t²)");
  }

  /** The same, but the slab runs on to the outer faces and the parapets stand on it. */
  public static House parapetsOnSlab(double depth, double length, Pitch pitch, double above) {
    double top = EAVE + depth * pitch.tan() + above;
    double low = EAVE - 0.1;
    House house = new House("parapets on the slab")
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(-WALL, -WALL), at(length + WALL, -WALL),
            at(length + WALL, depth + WALL), at(-WALL, depth + WALL));
    parapet(house, "parapet south", -WALL, -WALL, length + WALL, 0, low, top);
    parapet(house, "parapet north", -WALL, depth, length + WALL, depth + WALL, low, top);
    parapet(house, "parapet west", -WALL, 0, 0, depth, low, top);
    parapet(house, "parapet east", length, 0, length + WALL, depth, low, top);
    return house.expect("headwall", length, "inner length")
        .expect("low-wall", length, "inner length")
        .expect(2, "sidewall", depth * pitch.rafter(), "inner depth × √(1+t²)");
  }

  private static void parapet(House house, String name, double x0, double y0, double x1, double y1, double low, double top) {
    house.thing(name, Thing.Role.PARAPET,
        Extrusion.upright(java.util.List.of(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)), low, top));
  }

  /** A plane whose east side runs obliquely along a wall: {@code back} is how far the wall comes in from bottom to top, in plan. */
  public static House obliqueWall(double depth, double length, Pitch pitch, double back, double above) {
    double top = EAVE + depth * pitch.tan() + above;
    return oblique("oblique wall", depth, length, pitch, back)
        .wall("oblique wall", 0, top, at(length, 0), at(length + WALL, 0), at(length - back + WALL, depth), at(length - back, depth))
        .expect("skew-wall", pitch.length(back, depth), "√(back² + depth² + rise²)");
  }

  /** A plane with an oblique free side: a rake that says so. */
  public static House obliqueRake(double depth, double length, Pitch pitch, double back) {
    return oblique("oblique rake", depth, length, pitch, back)
        .expect("rake", pitch.length(back, depth), "√(back² + depth² + rise²)");
  }

  private static House oblique(String name, double depth, double length, Pitch pitch, double back) {
    return new House(name)
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length - back, depth), at(0, depth))
        .expect("eave", length, "length at the eave")
        .expect("high-edge", length - back, "length at the top")
        .expect("rake", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }

  /** A mono-slope with a wall along its west side that stops {@code part} of the way up, in plan, with a square end. */
  public static House wallPartWay(double depth, double length, Pitch pitch, double part, double above) {
    return monoWithPart("wall part-way", depth, length, pitch, part)
        .wall("side wall", -WALL, 0, 0, part, 0, EAVE + depth * pitch.tan() + above);
  }

  /** The same with a wall along the whole side, its top level: it runs out where the surface reaches its top. */
  public static House wallRunningOut(double depth, double length, Pitch pitch, double part) {
    return monoWithPart("wall running out", depth, length, pitch, part)
        .wall("side wall", -WALL, 0, 0, depth, 0, EAVE + part * pitch.tan());
  }

  private static House monoWithPart(String name, double depth, double length, Pitch pitch, double part) {
    return plane(name, depth, length, pitch)
        .expect("eave", length, "length of the plan")
        .expect("high-edge", length, "length of the plan")
        .expect("rake", depth * pitch.rafter(), "plan depth × √(1+t²)")
        .expect("sidewall", part * pitch.rafter(), "plan length beside the wall × √(1+t²)")
        .expect("rake", (depth - part) * pitch.rafter(), "rest of the plan depth × √(1+t²)");
  }

  /** A gable between end walls that stand {@code above} its surface all the way up. */
  public static House parapetGables(double span, double length, Pitch pitch, double above) {
    double half = span / 2;
    House house = Roofs.gable(span, length, pitch);
    raking(house, "west parapet", -WALL, span, pitch, above);
    raking(house, "east parapet", length, span, pitch, above);
    return house.noLonger("rake", half * pitch.rafter()).noLonger("rake", half * pitch.rafter())
        .noLonger("rake", half * pitch.rafter()).noLonger("rake", half * pitch.rafter())
        .expect(4, "sidewall", half * pitch.rafter(), "half span × √(1+t²)");
  }

  /** A gable with a wall right through it at {@code x} that stands {@code above} its surface: two roofs. */
  public static House partyWall(double span, double length, Pitch pitch, double x, double above) {
    double half = span / 2;
    House house = Roofs.gable(span, length, pitch);
    raking(house, "party wall", x, span, pitch, above);
    double east = length - x - WALL;
    return house.noLonger("ridge", length).noLonger("eave", length).noLonger("eave", length)
        .expect("ridge", x, "up to the wall").expect("ridge", east, "beyond the wall")
        .expect(2, "eave", x, "up to the wall").expect(2, "eave", east, "beyond the wall")
        .expect(4, "sidewall", half * pitch.rafter(), "half span × √(1+t²)");
  }

  private static void raking(House house, String name, double x, double span, Pitch pitch, double above) {
    double eave = EAVE + above;
    house.gableWall(name, x, WALL, 0, span, 0, eave, span / 2, eave + span / 2 * pitch.tan());
  }

  private static House plane(String name, double depth, double length, Pitch pitch) {
    return new House(name)
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth));
  }
}
