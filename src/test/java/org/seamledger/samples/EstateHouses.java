package org.seamledger.samples;

import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Units.feet;
import static org.seamledger.samples.Units.inches;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.House.Through;
import org.seamledger.samples.JoinedRoofs.Meeting;
import org.seamledger.samples.JoinedRoofs.Wing;

/** The smaller houses of the estate. */
final class EstateHouses {

  /** Top of walls that carry a roof at its eave. */
  private static final double PLATE = EAVE - DEPTH;
  private static final double WALL = 0.3;

  private EstateHouses() {
  }

  private static House named(String name, House house) {
    return new House(name).with("", house, 0, 0, 0, 0);
  }

  static House gatehouse() {
    return named("gatehouse", Roofs.hip(7, 10, per12(6)))
        .wallsUnder("", 0.1, 0.1, 9.9, 6.9, WALL, 0, PLATE)
        .chimney("chimney", "south", 4.6, 2.1, 0.8, 0.6, 1.2, Through.WHOLE)
        .pipe("vent", "north", 6.2, 5.3, 0.11, 0.4, Through.WHOLE);
  }

  static House stable() {
    double a = 16;
    double b = 12;
    double w = 6.5;
    double peak = PLATE + w / 2 * pitch(38).tan();
    return named("stable", JoinedRoofs.ell(a, b, w, pitch(38)))
        .wall("south wall", 0, 0, a, WALL, 0, PLATE)
        .wall("west wall", 0, WALL, WALL, b, 0, PLATE)
        .wall("yard wall north", w, w - WALL, a, w, 0, PLATE)
        .wall("yard wall east", w - WALL, w - WALL, w, b, 0, PLATE)
        .gableWall("east gable", a - WALL, WALL, 0, w, 0, PLATE, w / 2, peak)
        .wallFacingY("north gable", b - WALL, WALL, at(0, 0), at(w, 0), at(w, PLATE), at(w / 2, peak), at(0, PLATE))
        .hatch("hay shaft", "south", 9, 1.6, 1.1, 0.9, Through.OPENING)
        .chimney("chimney", "west", 1.7, 8.5, 0.9, 0.7, 1.1, Through.OPENING);
  }

  static House barn() {
    double span = feet(36);
    double length = feet(60);
    Pitch lower = pitch(60);
    double run = feet(6);
    Pitch upper = pitch(26);
    double knee = PLATE + run * lower.tan();
    double peak = knee + (span / 2 - run) * upper.tan();
    House house = named("barn", Roofs.gambrel(span, length, lower, run, upper))
        .wall("south wall", 0, 0, length, WALL, 0, PLATE)
        .wall("north wall", 0, span - WALL, length, span, 0, PLATE);
    for (double x : new double[] {0, length - WALL}) {
      house.wallFacingX(x == 0 ? "west gable" : "east gable", x, WALL, at(0, 0), at(span, 0), at(span, PLATE), at(span - run, knee),
          at(span / 2, peak), at(run, knee), at(0, PLATE));
    }
    return house.boxThrough("lantern", Thing.Role.PROXY, "south upper", feet(30), feet(12), feet(6), feet(4), feet(3), Through.OPENING)
        .pipe("vent west", "north upper", feet(14), feet(25), inches(4), inches(18), Through.WHOLE)
        .pipe("vent east", "north upper", feet(46), feet(25), inches(6), inches(18), Through.WHOLE);
  }

  static House orangery() {
    double depth = 4.5;
    double length = 12;
    Pitch p = pitch(20);
    double part = 2.4;
    House house = named("orangery", WalledRoofs.leanTo(depth, length, p, 1.4))
        .noLonger("rake", depth * p.rafter())
        .wall("side wall", -WALL, 0, 0, part, 0, EAVE + depth * p.tan() + 0.5)
        .expect("sidewall", part * p.rafter(), "plan length beside the wall × √(1+t²)")
        .expect("rake", (depth - part) * p.rafter(), "rest of the plan depth × √(1+t²)")
        .wall("front wall", 0, 0.1, length, 0.1 + WALL, 0, PLATE);
    for (int i = 0; i < 3; i++) {
      house.skylight("rooflight " + (i + 1), "plane", 2.5 + 3.5 * i, 2.3, 1.2, 1.4, i == 1 ? 0.18 : 0);
    }
    return house;
  }

  static House boathouse() {
    double span = feet(30);
    double length = feet(46);
    Pitch p = per12(2);
    double top = PLATE + span / 2 * p.tan();
    House house = named("boathouse", Roofs.butterfly(span, length, p))
        .wall("south wall", 0, 0, length, WALL, 0, top - WALL * p.tan())
        .wall("north wall", 0, span - WALL, length, span, 0, top - WALL * p.tan());
    for (double x : new double[] {0, length - WALL}) {
      house.wallFacingX(x == 0 ? "west wall" : "east wall", x, WALL, at(0, 0), at(span, 0), at(span, top), at(span / 2, PLATE), at(0, top));
    }
    return house.pipe("vent", "north", feet(12), feet(24), inches(4), inches(20), Through.OPENING);
  }

  static House forge() {
    double depth = 5;
    double length = 10;
    double back = 3;
    Pitch p = pitch(12);
    double top = EAVE + depth * p.tan() + 0.6;
    return new House("forge")
        .roof("plane", Roofs.risingNorth(0, EAVE, p), DEPTH, at(0, 0), at(length, 0), at(length - back, depth), at(0, depth))
        .wall("yard wall", 0, -WALL, length + WALL, 0, 0, EAVE + 0.9)
        .wall("oblique wall", 0, top, at(length, 0), at(length + WALL, 0), at(length - back + WALL, depth), at(length - back, depth))
        .wall("west wall", 0, 0, WALL, depth, 0, PLATE)
        .chimney("forge stack", "plane", 3.2, 3, 1.2, 1, 1.5, Through.OPENING)
        .expect("low-wall", length, "length along the yard wall")
        .expect("skew-wall", p.length(back, depth), "√(back² + depth² + rise²)")
        .expect("high-edge", length - back, "length at the top")
        .expect("rake", depth * p.rafter(), "plan depth × √(1+t²)");
  }

  static House dovecote() {
    double apothem = 3;
    House house = named("dovecote", Roofs.octagon(apothem, per12(8)));
    double outer = (apothem - 0.2) / StrictMath.cos(Math.PI / 8);
    double inner = (apothem - 0.5) / StrictMath.cos(Math.PI / 8);
    for (int i = 0; i < 8; i++) {
      double a = (2 * i - 1) * Math.PI / 8;
      double b = (2 * i + 1) * Math.PI / 8;
      house.wall("wall " + (i + 1), 0, PLATE, polar(outer, a), polar(outer, b), polar(inner, b), polar(inner, a));
    }
    return house;
  }

  private static Vec2 polar(double r, double a) {
    return at(r * StrictMath.cos(a), r * StrictMath.sin(a));
  }

  static House bathhouse() {
    return named("bathhouse", WalledRoofs.parapets(10, 16, per12(0.5), 0.6))
        .boxThrough("extract duct", Thing.Role.DUCT, "plane", 4, 6, 0.6, 0.4, 0.9, Through.WHOLE)
        .boxThrough("supply duct", Thing.Role.DUCT, "plane", 7, 6, 0.5, 0.5, 0.9, Through.OPENING)
        .skylight("rooflight west", "plane", 4, 3, 1, 1.5, 0.3)
        .skylight("rooflight east", "plane", 12, 3, 1, 1.5, 0.3)
        .pipe("vent west", "plane", 2, 8, 0.11, 0.5, Through.WHOLE)
        .pipe("vent east", "plane", 13, 8, 0.16, 0.5, Through.OUTLINE);
  }

  static House lodge() {
    double run = 1.5;
    House house = named("lodge", Roofs.mansardWithLevelTop(9, 12, pitch(65), run))
        .wallsUnder("", 0, 0, 12, 9, WALL, 0, PLATE);
    return JoinedRoofs.gableDormer(house, "lower south", "dormer", 6, 1.4, 0.3, 1.2, pitch(35), Meeting.CUT);
  }

  static House granary() {
    House house = named("granary", Roofs.halfHip(8, 13, pitch(45), 1.4))
        .wall("south wall", 0, 0, 13, WALL, 0, PLATE)
        .wall("north wall", 0, 8 - WALL, 13, 8, 0, PLATE);
    for (double x : new double[] {0, 13 - WALL}) {
      house.wallFacingX(x == 0 ? "west gable" : "east gable", x, WALL, at(0, 0), at(8, 0), at(8, PLATE), at(5.4, PLATE + 2.6),
          at(2.6, PLATE + 2.6), at(0, PLATE));
    }
    JoinedRoofs.gableDormer(house, "south", "west dormer", 4, 1.6, 0.8, 1, pitch(40), Meeting.CUT);
    return JoinedRoofs.gableDormer(house, "south", "east dormer", 9, 1.6, 0.8, 1, pitch(40), Meeting.MAIN_WHOLE);
  }

  static House cartShed() {
    return named("cart shed", WalledRoofs.obliqueRake(5, 14, pitch(12), 3))
        .wall("back wall", 0, 4.6, 10.5, 4.9, 0, EAVE + 4.6 * pitch(12).tan() - 0.1)
        .wall("west wall", 0, 0.2, WALL, 4.6, 0, EAVE - 0.1);
  }

  static House brewhouse() {
    double span = feet(30);
    double length = feet(50);
    House house = named("brewhouse", JoinedRoofs.tee(span, length, per12(4), feet(20), feet(12), feet(6), per12(8), Meeting.MAIN_WHOLE))
        .wallsUnder("", 0, 0, length, span, WALL, 0, PLATE)
        .wall("wing west wall", feet(14), -feet(6), feet(14) + WALL, 0, 0, PLATE)
        .wall("wing east wall", feet(26) - WALL, -feet(6), feet(26), 0, 0, PLATE);
    return JoinedRoofs.chimneyAcrossRidge(house, "brew chimney", span, length, feet(40), feet(4), feet(3), feet(5), Through.WHOLE);
  }

  static House coachHouse() {
    return named("coach house", JoinedRoofs.underOverhang(4, 11, pitch(18), 1.6, 0.5, 7, pitch(35)))
        .wall("front wall", 0, 0.2, 11, 0.2 + WALL, 0, PLATE);
  }

  /**
   * A gable with a ridge cap over a part of its ridge; a lean-to with its headwall flashing, a gutter along half its eave, and a band that
   * covers nothing.
   */
  static House dairy() {
    double span = 6;
    double length = 10;
    Pitch p = pitch(30);
    double peak = EAVE + span / 2 * p.tan();
    double depth = 3;
    double porch = 8;
    Pitch low = pitch(20);
    double high = EAVE + depth * low.tan();
    House house = named("dairy", Roofs.gable(span, length, p))
        .wallsUnder("", 0, 0, length, span, WALL, 0, PLATE)
        .thing("ridge cap", Thing.Role.FLASHING, ridgeCap(span / 2, peak, p, 1, 8));
    House leanTo = new House("porch").with("", WalledRoofs.leanTo(depth, porch, low, 1.6), 0, 0, 0, 0)
        .thing("headwall flashing", Thing.Role.FLASHING, upturn(depth, high, low, 0, porch))
        .thing("band flashing", Thing.Role.FLASHING,
            Extrusion.upright(List.of(at(1, depth - 0.02), at(7, depth - 0.02), at(7, depth), at(1, depth)),
                high + 0.6, high + 0.7))
        .thing("eaves gutter", Thing.Role.GUTTER,
            Extrusion.upright(List.of(at(0, -0.15), at(porch / 2, -0.15), at(porch / 2, -0.02), at(0, -0.02)),
                EAVE - 0.2, EAVE - 0.08));
    return house.with("porch ", leanTo, 0, 14, 0, 0)
        .expectModelled("flashing", "ridge", 8, "length of the cap")
        .expectModelled("flashing", "headwall", porch, "length of the wall")
        .expectModelled("gutter", "eave", porch / 2, "half the length of the plan");
  }

  /** Sheet of 2 mm bent over a ridge, 150 mm of plan on each side and 40 mm above the roof, from {@code x} on. */
  private static Extrusion ridgeCap(double y, double z, Pitch p, double x, double length) {
    double wing = 0.15;
    double drop = wing * p.tan();
    List<Vec3> section = new ArrayList<>();
    for (double up : new double[] {0.042, 0.04}) {
      List<Vec3> skin = List.of(new Vec3(x, y - wing, z - drop + up), new Vec3(x, y, z + up), new Vec3(x, y + wing, z - drop + up));
      for (int i = 0; i < 3; i++) {
        section.add(skin.get(up > 0.041 ? i : 2 - i));
      }
    }
    return new Extrusion(section, List.of(), new Vec3(length, 0, 0));
  }

  /** Sheet of 2 mm at the foot of a wall: 120 mm of plan on the roof, 150 mm up the wall. */
  private static Extrusion upturn(double y, double z, Pitch p, double x, double length) {
    double out = 0.12;
    double low = z - out * p.tan() + 0.04;
    return new Extrusion(List.of(new Vec3(x, y - out, low), new Vec3(x, y - 0.002, z + 0.04), new Vec3(x, y - 0.002, z + 0.15),
        new Vec3(x, y - 0.004, z + 0.15), new Vec3(x, y - 0.004, z + 0.042), new Vec3(x, y - out, low + 0.002)), List.of(),
        new Vec3(length, 0, 0));
  }

  /** Wing walls need the wings' places, so the school's own class shares this. */
  static void wingWalls(House house, String prefix, Wing w, double z) {
    double west = w.centre() - w.half();
    double east = w.centre() + w.half();
    double plate = z - DEPTH;
    house.wall(prefix + " west wall", west, -w.out(), west + WALL, 0, 0, plate)
        .wall(prefix + " east wall", east - WALL, -w.out(), east, 0, 0, plate)
        .wallFacingY(prefix + " gable", -w.out(), WALL, at(west, 0), at(east, 0), at(east, plate), at(w.centre(), plate + w.rise()),
            at(west, plate));
  }

}
