package org.seamledger.samples;

import static org.seamledger.samples.House.at;

import org.seamledger.geometry.Vec2;

/**
 * Plain roofs on a rectangle or an octagon. X runs along the ridge, Y across; the plan starts at the origin, the eaves are at {@link
 * #EAVE}.
 *
 * <p>t is rise over run, so {@code √(1+t²)} turns plan length along the fall into true length.
 */
public final class Roofs {

  /** Height of the lowest eave, metres. */
  static final double EAVE = 3;
  /** Depth of slabs, metres. */
  static final double DEPTH = 0.2;

  private Roofs() {
  }

  public static House gable(double span, double length, Pitch pitch) {
    return gable(span, length, pitch, pitch);
  }

  /** A gable whose eaves are level with each other. */
  public static House gable(double span, double length, Pitch south, Pitch north) {
    double y = span * north.tan() / (south.tan() + north.tan());
    return new House("gable")
        .roof("south", risingNorth(0, EAVE, south), DEPTH, at(0, 0), at(length, 0), at(length, y), at(0, y))
        .roof("north", fallingNorth(span, EAVE, north), DEPTH, at(0, y), at(length, y), at(length, span), at(0, span))
        .expect("ridge", length, "length of the plan")
        .expect(2, "eave", length, "length of the plan")
        .expect(2, "rake", y * south.rafter(), "south run × √(1+t²)")
        .expect(2, "rake", (span - y) * north.rafter(), "north run × √(1+t²)");
  }

  public static House hip(double width, double length, Pitch pitch) {
    return hip(width, length, pitch, pitch);
  }

  /** A hip roof with its long sides at one pitch and its ends at another; a pyramid where the ridge shrinks to a point. */
  public static House hip(double width, double length, Pitch sides, Pitch ends) {
    double half = width / 2;
    double rise = half * sides.tan();
    double run = rise / ends.tan();
    double ridge = length - 2 * run;
    House house = new House("hip");
    hipPlanes(house, "", 0, 0, width, length, EAVE, sides, ends);
    if (ridge > 1e-9) {
      house.expect("ridge", ridge, "length − 2 × rise / end pitch");
    }
    return house.expect(4, "hip", Math.sqrt(half * half + run * run + rise * rise), "√(side run² + end run² + rise²)")
        .expect(2, "eave", length, "length of the plan")
        .expect(2, "eave", width, "width of the plan");
  }

  private static void hipPlanes(House house, String prefix, double x0, double y0, double width, double length, double z,
      Pitch sides, Pitch ends) {
    double half = width / 2;
    double run = half * sides.tan() / ends.tan();
    double x1 = x0 + length;
    double y1 = y0 + width;
    Vec2 a = at(x0 + run, y0 + half);
    Vec2 b = at(x1 - run, y0 + half);
    boolean point = length - 2 * run <= 1e-9;
    Slope south = risingNorth(y0, z, sides);
    Slope north = fallingNorth(y1, z, sides);
    if (point) {
      house.roof(prefix + "south", south, DEPTH, at(x0, y0), at(x1, y0), a).roof(prefix + "north", north, DEPTH, at(x1, y1), at(x0, y1), a);
    } else {
      house.roof(prefix + "south", south, DEPTH, at(x0, y0), at(x1, y0), b, a)
          .roof(prefix + "north", north, DEPTH, at(x1, y1), at(x0, y1), a, b);
    }
    house.roof(prefix + "west", risingEast(x0, z, ends), DEPTH, at(x0, y1), at(x0, y0), a)
        .roof(prefix + "east", fallingEast(x1, z, ends), DEPTH, at(x1, y0), at(x1, y1), point ? a : b);
  }

  /** One plane that rises to the north. */
  public static House monoSlope(double depth, double length, Pitch pitch) {
    return new House("mono-slope")
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth))
        .expect("eave", length, "length of the plan")
        .expect("high-edge", length, "length of the plan")
        .expect(2, "rake", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }

  /** A gable with a knee: {@code run} of the steeper pitch at each eave, the flatter one above. */
  public static House gambrel(double span, double length, Pitch lower, double run, Pitch upper) {
    double knee = EAVE + run * lower.tan();
    double half = span / 2;
    return new House("gambrel")
        .roof("south lower", risingNorth(0, EAVE, lower), DEPTH, at(0, 0), at(length, 0), at(length, run), at(0, run))
        .roof("south upper", risingNorth(run, knee, upper), DEPTH, at(0, run), at(length, run), at(length, half), at(0, half))
        .roof("north upper", fallingNorth(span - run, knee, upper), DEPTH,
            at(0, half), at(length, half), at(length, span - run), at(0, span - run))
        .roof("north lower", fallingNorth(span, EAVE, lower), DEPTH,
            at(0, span - run), at(length, span - run), at(length, span), at(0, span))
        .expect("ridge", length, "length of the plan")
        .expect(2, lower.tan() > upper.tan() ? "transition-convex" : "transition-concave", length, "length of the plan")
        .expect(2, "eave", length, "length of the plan")
        .expect(4, "rake", run * lower.rafter(), "lower run × √(1+t²)")
        .expect(4, "rake", (half - run) * upper.rafter(), "upper run × √(1+t²)");
  }

  /** A steep ring of plan width {@code run} under a hip roof. */
  public static House mansard(double width, double length, Pitch lower, double run, Pitch upper) {
    double half = width / 2 - run;
    double innerLength = length - 2 * run;
    double z = EAVE + run * lower.tan();
    House house = mansardRing("mansard", width, length, lower, run);
    hipPlanes(house, "upper ", run, run, 2 * half, innerLength, z, upper, upper);
    return house.expect(2, "transition-convex", innerLength, "length − 2 × run")
        .expect(2, "transition-convex", 2 * half, "width − 2 × run")
        .expect(4, "hip", half * Math.sqrt(2 + upper.tan() * upper.tan()), "upper run × √(2+t²)")
        .expect("ridge", innerLength - 2 * half, "inner length − inner width");
  }

  /** A steep ring of plan width {@code run} round a level roof. */
  public static House mansardWithLevelTop(double width, double length, Pitch lower, double run) {
    double z = EAVE + run * lower.tan();
    return mansardRing("mansard with level top", width, length, lower, run)
        .roof("top", Slope.level(z), DEPTH, at(run, run), at(length - run, run), at(length - run, width - run), at(run, width - run))
        .expect(2, "flat-edge", length - 2 * run, "length − 2 × run")
        .expect(2, "flat-edge", width - 2 * run, "width − 2 × run");
  }

  private static House mansardRing(String name, double width, double length, Pitch lower, double run) {
    double x1 = length - run;
    double y1 = width - run;
    return new House(name)
        .roof("lower south", risingNorth(0, EAVE, lower), DEPTH, at(0, 0), at(length, 0), at(x1, run), at(run, run))
        .roof("lower east", fallingEast(length, EAVE, lower), DEPTH, at(length, 0), at(length, width), at(x1, y1), at(x1, run))
        .roof("lower north", fallingNorth(width, EAVE, lower), DEPTH, at(length, width), at(0, width), at(run, y1), at(x1, y1))
        .roof("lower west", risingEast(0, EAVE, lower), DEPTH, at(0, width), at(0, 0), at(run, run), at(run, y1))
        .expect(4, "hip", run * Math.sqrt(2 + lower.tan() * lower.tan()), "lower run × √(2+t²)")
        .expect(2, "eave", length, "length of the plan")
        .expect(2, "eave", width, "width of the plan");
  }

  /** Two planes that drain into a level line in the middle. */
  public static House butterfly(double span, double length, Pitch pitch) {
    double half = span / 2;
    return new House("butterfly")
        .roof("south", fallingNorth(half, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, half), at(0, half))
        .roof("north", risingNorth(half, EAVE, pitch), DEPTH, at(0, half), at(length, half), at(length, span), at(0, span))
        .expect("level-valley", length, "length of the plan")
        .expect(2, "high-edge", length, "length of the plan")
        .expect(4, "rake", half * pitch.rafter(), "half span × √(1+t²)");
  }

  /** A regular octagon round the origin that rises to a point. */
  public static House octagon(double apothem, Pitch pitch) {
    House house = new House("octagon");
    double corner = apothem / StrictMath.cos(Math.PI / 8);
    for (int i = 0; i < 8; i++) {
      double a = i * Math.PI / 4;
      double dx = StrictMath.cos(a);
      double dy = StrictMath.sin(a);
      Slope slope = Slope.rising(apothem * dx, apothem * dy, EAVE, -dx, -dy, pitch);
      house.roof("face " + (i + 1), slope, DEPTH, polar(corner, a - Math.PI / 8), polar(corner, a + Math.PI / 8), at(0, 0));
    }
    double rise = apothem * pitch.tan();
    return house.expect(8, "eave", 2 * apothem * StrictMath.tan(Math.PI / 8), "2 × apothem × tan 22.5°")
        .expect(8, "hip", Math.sqrt(corner * corner + rise * rise), "√((apothem / cos 22.5°)² + rise²)");
  }

  private static Vec2 polar(double r, double a) {
    return at(r * StrictMath.cos(a), r * StrictMath.sin(a));
  }

  /** A gable whose ends are cut back by a small hip from {@code drop} of plan run below the ridge. */
  public static House halfHip(double span, double length, Pitch pitch, double drop) {
    double half = span / 2;
    double low = half - drop;
    double t = pitch.tan();
    double z = EAVE + low * t;
    return new House("half-hip")
        .roof("south", risingNorth(0, EAVE, pitch), DEPTH,
            at(0, 0), at(length, 0), at(length, low), at(length - drop, half), at(drop, half), at(0, low))
        .roof("north", fallingNorth(span, EAVE, pitch), DEPTH,
            at(length, span), at(0, span), at(0, span - low), at(drop, half), at(length - drop, half), at(length, span - low))
        .roof("west", risingEast(0, z, pitch), DEPTH, at(0, span - low), at(0, low), at(drop, half))
        .roof("east", fallingEast(length, z, pitch), DEPTH, at(length, low), at(length, span - low), at(length - drop, half))
        .expect("ridge", length - 2 * drop, "length − 2 × drop")
        .expect(4, "hip", drop * Math.sqrt(2 + t * t), "drop × √(2+t²)")
        .expect(2, "eave", length, "length of the plan")
        .expect(2, "eave", 2 * drop, "2 × drop")
        .expect(4, "rake", low * pitch.rafter(), "run to the small hip × √(1+t²)");
  }

  // ---- planes by the direction in which they rise ----

  static Slope risingNorth(double y, double z, Pitch pitch) {
    return Slope.rising(0, y, z, 0, 1, pitch);
  }

  static Slope fallingNorth(double y, double z, Pitch pitch) {
    return Slope.rising(0, y, z, 0, -1, pitch);
  }

  static Slope risingEast(double x, double z, Pitch pitch) {
    return Slope.rising(x, 0, z, 1, 0, pitch);
  }

  static Slope fallingEast(double x, double z, Pitch pitch) {
    return Slope.rising(x, 0, z, -1, 0, pitch);
  }
}
