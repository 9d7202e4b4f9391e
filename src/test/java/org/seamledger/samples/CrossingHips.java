package org.seamledger.samples;

import static org.seamledger.samples.HardHouses.between;
import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Roofs.fallingNorth;
import static org.seamledger.samples.Roofs.risingNorth;

import java.util.Random;
import org.seamledger.geometry.Vec2;

/** Hip roofs by chance that cross at right angles, every plane at one pitch. */
final class CrossingHips {

  private CrossingHips() {
  }

  /** Hip roofs of different widths whose ridges cross at a right angle, as a T: every plane at one pitch. */
  static House tee(Random random) {
    Pitch pitch = Pitch.pitch(between(random, 15, 45));
    double w = between(random, 7, 11);
    double length = w + between(random, 8, 14);
    double v = between(random, 3.5, w - 1.5);
    double out = v / 2 + between(random, 0.6, 4);
    double x = w / 2 + v / 2 + between(random, 0.5, length - w - v - 1);
    return tee(w, length, x, v, out, pitch);
  }

  private static House tee(double w, double length, double x, double v, double out, Pitch pitch) {
    double h = w / 2;
    double g = v / 2;
    double t = pitch.tan();
    double hip = Math.sqrt(2 + t * t);
    House house = new House("crossing hips")
        .roof("south", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(x - g, 0), at(x, g), at(x + g, 0), at(length, 0), at(length - h, h),
            at(h, h))
        .roof("north", fallingNorth(w, EAVE, pitch), DEPTH, at(length, w), at(0, w), at(h, h), at(length - h, h))
        .roof("west", Roofs.risingEast(0, EAVE, pitch), DEPTH, at(0, w), at(0, 0), at(h, h))
        .roof("east", Roofs.fallingEast(length, EAVE, pitch), DEPTH, at(length, 0), at(length, w), at(length - h, h))
        .roof("wing west", Roofs.risingEast(x - g, EAVE, pitch), DEPTH, at(x - g, 0), at(x - g, -out), at(x, g - out), at(x, g))
        .roof("wing east", Roofs.fallingEast(x + g, EAVE, pitch), DEPTH, at(x + g, -out), at(x + g, 0), at(x, g), at(x, g - out))
        .roof("wing south", risingNorth(-out, EAVE, pitch), DEPTH, at(x - g, -out), at(x + g, -out), at(x, g - out));
    return house.expect(4, "hip", h * hip, "half width × √(2+t²)").expect(2, "hip", g * hip, "half wing × √(2+t²)")
        .expect(2, "valley", g * hip, "half wing × √(2+t²)")
        .expect("ridge", length - w, "length − width").expect("ridge", out, "projection")
        .expect("eave", length, "length").expect(2, "eave", w, "width").expect("eave", v, "width of the wing")
        .expect(2, "eave", out, "projection").expect("eave", x - g, "up to the wing").expect("eave", length - x - g, "beyond the wing");
  }

  /**
   * Three hip roofs at 30° that cross at right angles, all in one element: a long one, a narrow wing and a wider one on the other side. The
   * wings' west planes are parallel, and the wider one's lies lower, by more than the narrow wing is deep: taken for its underside it would
   * make a cut edge of the narrow wing's hip.
   */
  static House cross(Random random) {
    Pitch pitch = Pitch.pitch(30);
    double narrow = between(random, 0.45, 0.65);
    double lower = between(random, 2 * narrow * 0.5 + 0.05, 1.15);
    double wide = between(random, 1.5, 2.5);
    double w = 2 * wide + between(random, 2, 5);
    double x = w / 2 + narrow + between(random, 0.5, 3);
    double other = x - narrow + lower / StrictMath.sin(Math.toRadians(30)) + wide;
    double length = Math.max(w + 2, other + wide + between(random, 1, 4));
    return cross(w, length, new double[] {x, other}, new double[] {narrow, wide},
        new double[] {between(random, 0.8, 2), between(random, 1.5, 4)}, pitch);
  }

  /** A hip roof with a wing on its south side and one on its north side: middles, half widths and projections of the two. */
  private static House cross(double w, double length, double[] x, double[] g, double[] out, Pitch pitch) {
    double h = w / 2;
    double hip = Math.sqrt(2 + pitch.tan() * pitch.tan());
    House house = new House("crossed hips")
        .roof("south", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(x[0] - g[0], 0), at(x[0], g[0]), at(x[0] + g[0], 0), at(length, 0),
            at(length - h, h), at(h, h))
        .roof("north", fallingNorth(w, EAVE, pitch), DEPTH, at(length, w), at(x[1] + g[1], w), at(x[1], w - g[1]), at(x[1] - g[1], w),
            at(0, w), at(h, h), at(length - h, h))
        .roof("west", Roofs.risingEast(0, EAVE, pitch), DEPTH, at(0, w), at(0, 0), at(h, h))
        .roof("east", Roofs.fallingEast(length, EAVE, pitch), DEPTH, at(length, 0), at(length, w), at(length - h, h))
        .expect(4, "hip", h * hip, "half width × √(2+t²)").expect("ridge", length - w, "length − width").expect(2, "eave", w, "width");
    for (int i = 0; i < 2; i++) {
      wing(house, i, i == 0 ? 0 : w, i == 0 ? -1 : 1, x[i], g[i], out[i], pitch);
      house.expect(2, "hip", g[i] * hip, "half wing × √(2+t²)").expect(2, "valley", g[i] * hip, "half wing × √(2+t²)")
          .expect("ridge", out[i], "projection").expect("eave", 2 * g[i], "width of the wing").expect(2, "eave", out[i], "projection")
          .expect("eave", x[i] - g[i], "up to the wing").expect("eave", length - x[i] - g[i], "beyond the wing");
    }
    return house;
  }

  private static void wing(House house, int number, double y, int side, double x, double g, double out, Pitch pitch) {
    Vec2 low = at(x - g, y);
    Vec2 farLow = at(x - g, y + side * out);
    Vec2 top = at(x, y + side * (out - g));
    Vec2 foot = at(x, y - side * g);
    Vec2 high = at(x + g, y);
    Vec2 farHigh = at(x + g, y + side * out);
    boolean south = side < 0;
    house.roof("wing west " + number, Roofs.risingEast(x - g, EAVE, pitch), DEPTH,
        south ? new Vec2[] {low, farLow, top, foot} : new Vec2[] {farLow, low, foot, top})
        .roof("wing east " + number, Roofs.fallingEast(x + g, EAVE, pitch), DEPTH,
            south ? new Vec2[] {farHigh, high, foot, top} : new Vec2[] {high, farHigh, top, foot})
        .roof("wing end " + number, south ? risingNorth(y - out, EAVE, pitch) : fallingNorth(y + out, EAVE, pitch), DEPTH,
            south ? new Vec2[] {farLow, farHigh, top} : new Vec2[] {farHigh, farLow, top});
  }
}
