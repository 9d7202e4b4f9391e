package org.seamledger.samples;

import java.util.List;
import java.util.Random;
import java.util.function.Function;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.House.Through;
import org.seamledger.samples.JoinedRoofs.Meeting;

/** Houses and forms by chance, each within what can be built. */
final class RandomHouses {

  private static final List<Function<RandomHouses, House>> FAMILIES = List.of(
      RandomHouses::gable, RandomHouses::hip, RandomHouses::halfHip, RandomHouses::mono, RandomHouses::gambrel, RandomHouses::mansard,
      RandomHouses::butterfly, RandomHouses::octagon, RandomHouses::ell, RandomHouses::tee, RandomHouses::leanTo, RandomHouses::parapets,
      RandomHouses::oblique, RandomHouses::partWay, RandomHouses::step, RandomHouses::overhang, RandomHouses::gableDormer,
      RandomHouses::shedDormer);

  private final Random random;

  RandomHouses(Random random) {
    this.random = random;
  }

  House house() {
    House house = FAMILIES.get(random.nextInt(FAMILIES.size())).apply(this);
    return random.nextBoolean() ? house : pierced(house);
  }

  /** A form that any house can be written in. */
  Form form() {
    Form.Schema schema = pick(Form.Schema.values());
    Form.Shape shape = pick(Form.Shape.values());
    while (!shape.isIn(schema)) {
      shape = pick(Form.Shape.values());
    }
    Vec3 far = switch (random.nextInt(3)) {
      case 0 -> Vec3.ZERO;
      case 1 -> new Vec3(between(-300, 300), between(-300, 300), between(-50, 900));
      default -> new Vec3(450_000 + between(0, 1000), 5_200_000 + between(0, 1000), between(0, 2000));
    };
    return new Form(schema, pick(Form.Unit.values()), shape, pick(Form.Make.values()), RoofPlane.Cut.PLUMB, pick(Form.Placing.values()),
        far,
        random.nextInt(4) * 90 + (random.nextBoolean() ? between(0, 90) : 0), random.nextBoolean(),
        random.nextBoolean() ? 0 : 1 + random.nextInt(1000));
  }

  private double between(double low, double high) {
    // Whole millimetres, as people draw.
    return Math.rint((low + random.nextDouble() * (high - low)) * 1000) / 1000;
  }

  private Pitch slope(double low, double high) {
    return Pitch.pitch(between(low, high));
  }

  private <T> T pick(T[] values) {
    return values[random.nextInt(values.length)];
  }

  private House gable() {
    return Roofs.gable(between(4, 18), between(4, 40), slope(3, 60), slope(3, 60));
  }

  private House hip() {
    double width = between(4, 15);
    Pitch sides = slope(8, 50);
    Pitch ends = slope(8, 50);
    double least = width * sides.tan() / ends.tan();
    return Roofs.hip(width, least + between(0.5, 20), sides, ends);
  }

  private House halfHip() {
    double span = between(5, 14);
    return Roofs.halfHip(span, between(8, 25), slope(15, 55), between(0.5, span / 2 - 1));
  }

  private House mono() {
    return Roofs.monoSlope(between(2, 12), between(3, 30), slope(2, 45));
  }

  private House gambrel() {
    double span = between(7, 14);
    Pitch lower = slope(20, 65);
    Pitch upper = random.nextBoolean() ? slope(5, 17) : slope(68, 75);
    return Roofs.gambrel(span, between(6, 25), lower, between(1, span / 2 - 1), upper);
  }

  private House mansard() {
    double width = between(7, 12);
    return Roofs.mansard(width, width + between(1, 12), slope(45, 75), between(0.8, 2), slope(5, 35));
  }

  private House butterfly() {
    return Roofs.butterfly(between(5, 16), between(5, 25), slope(2, 25));
  }

  /** Steep enough that its narrow faces turn by more than the facets of a curve. */
  private House octagon() {
    return Roofs.octagon(between(1.5, 6), slope(20, 60));
  }

  private House ell() {
    double width = between(4, 9);
    return JoinedRoofs.ell(width + between(2, 12), width + between(2, 12), width, slope(10, 55));
  }

  private House tee() {
    double span = between(8, 14);
    Pitch main = slope(20, 50);
    Pitch side = slope(20, 50);
    double most = Math.min(span - 1, (span - 1) * main.tan() / side.tan());
    double wing = between(2.5, Math.max(2.6, most));
    double centre = wing / 2 + between(1, 5);
    return JoinedRoofs.tee(span, centre + wing / 2 + between(1, 8), main, centre, wing, between(1, 6), side, pick(Meeting.values()));
  }

  private House leanTo() {
    return random.nextBoolean() ? WalledRoofs.leanTo(between(2, 6), between(3, 20), slope(3, 40), between(0.2, 3))
        : WalledRoofs.againstLowWall(between(2, 6), between(3, 20), slope(3, 40), between(0.2, 2));
  }

  private House parapets() {
    double depth = between(5, 20);
    return random.nextBoolean() ? WalledRoofs.parapets(depth, between(5, 30), slope(1, 4), between(0.2, 1))
        : WalledRoofs.parapetsOnSlab(depth, between(5, 30), slope(1, 4), between(0.2, 1));
  }

  private House oblique() {
    double depth = between(3, 8);
    double back = depth * between(0.5, 1.6);
    Pitch pitch = slope(5, 40);
    return random.nextBoolean() ? WalledRoofs.obliqueWall(depth, back + between(1, 9), pitch, back, between(0.2, 2))
        : WalledRoofs.obliqueRake(depth, back + between(1, 9), pitch, back);
  }

  private House partWay() {
    double depth = between(4, 10);
    double part = between(1.5, depth - 1);
    Pitch pitch = slope(10, 45);
    return random.nextBoolean() ? WalledRoofs.wallPartWay(depth, between(3, 12), pitch, part, between(0.2, 2))
        : WalledRoofs.wallRunningOut(depth, between(3, 12), pitch, part);
  }

  private House step() {
    return JoinedRoofs.step(between(2, 6), between(2, 6), between(4, 15), slope(3, 35), between(0.5, 3));
  }

  private House overhang() {
    return JoinedRoofs.underOverhang(between(2, 5), between(5, 15), slope(5, 25), between(0.9, 3), between(0.2, 0.8), between(5, 9),
        slope(15, 45));
  }

  private House gableDormer() {
    double width = between(1.2, 2.4);
    return JoinedRoofs.gableDormer(Roofs.gable(between(9, 12), 12, Pitch.pitch(42)), "south", "dormer", between(2, 9), width,
        between(0.5, 1.2), between(0.7, 1.2), slope(15, 45), pick(Meeting.values()));
  }

  private House shedDormer() {
    return JoinedRoofs.shedDormer(Roofs.gable(between(10, 13), 12, Pitch.pitch(45)), "south", "dormer", between(3, 9), between(1.5, 4),
        between(0.5, 1.2), between(0.8, 1.5), slope(5, 20), pick(Meeting.values()));
  }

  /** Something small in the middle of the first plane, where there is room for it. */
  private House pierced(House house) {
    RoofPlane r = house.roofs().get(random.nextInt(house.roofs().size()));
    double x = r.outline().stream().mapToDouble(p -> p.u()).average().orElseThrow();
    double y = r.outline().stream().mapToDouble(p -> p.v()).average().orElseThrow();
    if (r.slope().pitch().tan() < 0.01 || r.slope().pitch().tan() > 1.5 || !r.holes().isEmpty() || room(r, x, y) < 0.8) {
      return house;
    }
    boolean dormer = house.roofs().stream().anyMatch(o -> o != r && !o.name().equals(r.name()) && room(o, x, y) > -0.8);
    if (dormer) {
      return house;
    }
    return switch (random.nextInt(4)) {
      case 0 -> house.chimney("stack", r.name(), x, y, between(0.4, 0.8), between(0.4, 0.8), between(0.3, 1.5), pick(Through.values()));
      case 1 -> house.pipe("vent", r.name(), x, y, between(0.08, 0.3), between(0.2, 0.6), pick(Through.values()));
      case 2 -> house.skylight("rooflight", r.name(), x, y, between(0.5, 0.9), between(0.5, 0.9), random.nextBoolean() ? 0 : 0.2);
      default -> house.hatch("shaft", r.name(), x, y, between(0.5, 0.9), between(0.5, 0.9),
          random.nextBoolean() ? Through.OPENING : Through.OUTLINE);
    };
  }

  /** Distance of (x, y) to the plane's outline in plan, negative outside. */
  private static double room(RoofPlane r, double x, double y) {
    double nearest = Double.POSITIVE_INFINITY;
    boolean inside = false;
    int n = r.outline().size();
    for (int i = 0; i < n; i++) {
      double ax = r.outline().get(i).u() - x;
      double ay = r.outline().get(i).v() - y;
      double bx = r.outline().get((i + 1) % n).u() - x;
      double by = r.outline().get((i + 1) % n).v() - y;
      double t = Math.max(0, Math.min(1, -(ax * (bx - ax) + ay * (by - ay)) / ((bx - ax) * (bx - ax) + (by - ay) * (by - ay))));
      nearest = Math.min(nearest, Math.hypot(ax + t * (bx - ax), ay + t * (by - ay)));
      if (ay > 0 != by > 0 && ax + (0 - ay) / (by - ay) * (bx - ax) > 0) {
        inside = !inside;
      }
    }
    return inside ? nearest : -nearest;
  }
}
