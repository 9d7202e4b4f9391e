package org.seamledger.samples;

import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Roofs.risingNorth;

import java.util.List;
import java.util.Random;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** Houses by chance whose faces and lines get lost easily. */
final class HardHouses {

  private HardHouses() {
  }

  static double between(Random random, double low, double high) {
    return Math.rint((low + random.nextDouble() * (high - low)) * 1000) / 1000;
  }

  private static <T> T pick(Random random, T[] values) {
    return values[random.nextInt(values.length)];
  }

  /** Any form; square cuts only where nothing is expected of the ends of slabs. */
  static Form form(Random random) {
    Form.Schema schema = pick(random, Form.Schema.values());
    Form.Shape shape = pick(random, Form.Shape.values());
    Form form = Form.PLAIN.as(shape.isIn(schema) ? schema : Form.Schema.IFC4).by(shape).in(pick(random, Form.Unit.values()))
        .made(pick(random, Form.Make.values())).shuffled(random.nextInt(3)).turned(random.nextInt(360));
    if (random.nextBoolean()) {
      form = form.at(pick(random, Form.Placing.values()), 450_000.25, 5_200_000.75, 312.5);
    }
    return random.nextInt(4) == 0 ? form.mirroredLeftRight() : form;
  }

  /** Facets that turn by no more than this (degrees) are those of a curve. */
  private static final double TURN = 15;

  static House vault(Random random) {
    boolean crowned = random.nextInt(3) > 0;
    double from = between(random, 8, 60);
    boolean even = random.nextBoolean();
    double to = crowned ? even ? from : between(random, 8, 60) : -between(random, 1, from - 4);
    int facets = Math.max(12 + random.nextInt(69), (int) Math.ceil((from + to) / TURN));
    return Vaults
        .vault(new Vaults.Vault(between(random, 4, 25), from, to, between(random, 5, 30), facets, 1 + random.nextInt(6),
            random.nextInt(3) == 0 ? 0 : 0.2), random.nextLong());
  }

  /**
   * A vault of few wide facets in short rows: triangles whose corners lie at different places across the curve are tilted, a corner that is
   * moved by as much as 0.3 facets each way by (1.6 w)² κ / 8 over the row's length.
   */
  static House shortRows(Random random) {
    double from = between(random, 8, 60);
    double to = random.nextInt(3) > 0 ? between(random, 8, 60) : -between(random, 1, Math.min(from - 4, from / 2));
    int facets = Math.max(8, (int) Math.ceil((from + to) / between(random, 3, 6)));
    double radius = between(random, 4, 25);
    double step = Math.toRadians(from + to) / facets;
    double tilt = Math.toRadians(between(random, 3, 4.5));
    double row = Math.max(0.2, 1.6 * 1.6 * radius * step * step / 8 / tilt);
    int rows = 3 + random.nextInt(6);
    double length = Math.rint(rows * row * 1000) / 1000;
    return Vaults.vault(new Vaults.Vault(radius, from, to, length, facets, rows, random.nextInt(3) == 0 ? 0 : 0.2), random.nextLong());
  }

  static House dome(Random random) {
    return Vaults.dome(between(random, 3, 9), between(random, 30, 75), 24 + random.nextInt(25), 6 + random.nextInt(6));
  }

  static House cone(Random random) {
    return Vaults.cone(between(random, 1.5, 5), Pitch.pitch(between(random, 15, 60)), 24 + random.nextInt(40));
  }

  /** A plane whose upper half turns by a trace: one face in pieces. */
  static House nearCoplanar(Random random) {
    double length = between(random, 6, 25);
    double low = between(random, 2, 9);
    double high = between(random, 2, 9);
    double degrees = between(random, 5, 40);
    double trace = between(random, 0.05, 0.98);
    // Rakes that turn by more than half a degree are two lines, and what lies at that limit is either.
    double turn = (trace > 0.45 && trace < 0.55 ? 0.4 : trace) * (random.nextBoolean() ? 1 : -1);
    Pitch first = Pitch.pitch(degrees);
    Pitch second = Pitch.pitch(degrees + turn);
    double z = EAVE + low * first.tan();
    return new House("near-coplanar")
        .roof("lower", risingNorth(0, EAVE, first), DEPTH, at(0, 0), at(length, 0), at(length, low), at(0, low))
        .roof("upper", risingNorth(low, z, second), DEPTH, at(0, low), at(length, low), at(length, low + high), at(0, low + high))
        .expect("eave", length, "length of the plan").expect("high-edge", length, "length of the plan")
        .expect(Math.abs(turn) < 0.5 ? 2 : 0, "rake", low * first.rafter() + high * second.rafter(), "both runs × √(1+t²)")
        .expect(Math.abs(turn) < 0.5 ? 0 : 2, "rake", low * first.rafter(), "lower run × √(1+t²)")
        .expect(Math.abs(turn) < 0.5 ? 0 : 2, "rake", high * second.rafter(), "upper run × √(1+t²)");
  }

  /** A gable of separate slabs for each layer, with air between them: covering, insulation, deck. */
  static House layers(Random random) {
    return Roofs.gable(between(random, 5, 12), between(random, 6, 18), Pitch.pitch(between(random, 10, 50)))
        .layered(between(random, 0.02, 0.05), between(random, 0.1, 0.2));
  }

  /** A plane with one post in its field: that goes through the roof, and is no wall. */
  static House post(Random random) {
    Pitch pitch = Pitch.pitch(between(random, 5, 35));
    return Roofs.monoSlope(between(random, 4, 8), between(random, 5, 9), pitch)
        .boxThrough("post", Thing.Role.COLUMN, "plane", 3, 2, 0.12, 0.12, between(random, 0.5, 1.5), House.Through.WHOLE);
  }

  /** A plane as a body whose faces lie back to back, or thinner than what lies together. */
  static House thin(Random random) {
    double length = between(random, 4, 25);
    double depth = between(random, 3, 18);
    Pitch pitch = Pitch.pitch(between(random, 2, 45));
    Slope slope = risingNorth(0, EAVE, pitch);
    double thick = pick(random, new Double[] {0.0, 0.0007, 0.0015});
    List<Vec3> points = new java.util.ArrayList<>();
    for (Vec2 p : List.of(at(0, 0), at(length, 0), at(length, depth), at(0, depth))) {
      points.add(slope.at(p));
    }
    points.addAll(points.stream().map(p -> p.minus(new Vec3(0, 0, thick))).toList());
    boolean shared = thick == 0;
    List<Shell.Face> faces = new java.util.ArrayList<>(List.of(new Shell.Face(List.of(0, 1, 2, 3), List.of()),
        new Shell.Face(shared ? List.of(3, 2, 1, 0) : List.of(7, 6, 5, 4), List.of())));
    for (int i = 0; i < 4 && !shared; i++) {
      faces.add(new Shell.Face(List.of(i, 4 + i, 4 + (i + 1) % 4, (i + 1) % 4), List.of()));
    }
    return new House("thin").shell("plane", false, new Shell(shared ? points.subList(0, 4) : points, faces))
        .expect("eave", length, "length of the plan").expect("high-edge", length, "length of the plan")
        .expect(2, "rake", depth * pitch.rafter(), "plan depth × √(1+t²)").expectArea(length * depth * pitch.rafter());
  }

  /** A butterfly between end walls that openings in the shape of the roof cut off below it. */
  static House wallsCutByOpenings(Random random) {
    double span = between(random, 6, 12);
    double length = between(random, 6, 18);
    House house = Roofs.butterfly(span, length, Pitch.pitch(between(random, 4, 20)));
    double t = house.roofNamed("south").slope().pitch().tan();
    double half = span / 2;
    double top = EAVE + half * t + 1;
    for (int i = 0; i < 2; i++) {
      double x = i == 0 ? 0.4 : length - 0.7;
      String name = i == 0 ? "west wall" : "east wall";
      double low = EAVE - DEPTH - 0.06;
      house.wall(name, x, 0, x + 0.3, span, 0, top);
      house.cut(name, new Extrusion(List.of(new Vec3(x - 0.1, -0.1, low + (half + 0.1) * t), new Vec3(x - 0.1, half, low),
          new Vec3(x - 0.1, span + 0.1, low + (half + 0.1) * t), new Vec3(x - 0.1, span + 0.1, top + 0.1),
          new Vec3(x - 0.1, -0.1, top + 0.1)),
          List.of(), new Vec3(0.5, 0, 0)));
    }
    return house;
  }

  /** A lean-to against walls that are sheets: one, or two in an L. */
  static House sheetWalls(Random random) {
    double depth = between(random, 3, 7);
    double length = between(random, 4, 12);
    Pitch pitch = Pitch.pitch(between(random, 5, 35));
    boolean ell = random.nextBoolean();
    double top = EAVE + depth * pitch.tan() + between(random, 0.4, 2);
    House house = new House("sheet walls")
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth));
    List<Vec3> points = new java.util.ArrayList<>(List.of(new Vec3(0, depth, 0), new Vec3(length, depth, 0), new Vec3(length, depth, top),
        new Vec3(0, depth, top)));
    List<Shell.Face> faces = new java.util.ArrayList<>(List.of(new Shell.Face(List.of(0, 1, 2, 3), List.of())));
    if (ell) {
      points.addAll(List.of(new Vec3(length, 0, 0), new Vec3(length, 0, top)));
      faces.add(new Shell.Face(List.of(1, 4, 5, 2), List.of()));
    }
    return house.thing("wall", Thing.Role.WALL, new Shell(points, faces))
        .expect("headwall", length, "length of the wall").expect("eave", length, "length of the plan")
        .expect(ell ? 1 : 2, "rake", depth * pitch.rafter(), "plan depth × √(1+t²)")
        .expect(ell ? 1 : 0, "sidewall", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }

  /** A lean-to whose head ends at a row of studs, or of boards on them, beside its edge. */
  static House studs(Random random) {
    double depth = between(random, 3, 7);
    double length = between(random, 4, 12);
    Pitch pitch = Pitch.pitch(between(random, 5, 35));
    double top = EAVE + depth * pitch.tan() + between(random, 0.6, 2);
    House house = new House("studs")
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth));
    boolean boards = random.nextBoolean();
    int n = boards ? (int) Math.ceil(length / 1.25) : (int) Math.ceil((length - 0.06) / 0.625) + 1;
    Thing.Role role = random.nextBoolean() ? Thing.Role.PROXY : Thing.Role.COLUMN;
    for (int i = 0; i < n; i++) {
      double x0 = boards ? length * i / n : (length - 0.06) * i / (n - 1);
      double x1 = boards ? length * (i + 1) / n : x0 + 0.06;
      house.thing("stud " + i, role, Extrusion.upright(List.of(at(x0, depth), at(x1, depth), at(x1, depth + (boards ? 0.012 : 0.12)),
          at(x0, depth + (boards ? 0.012 : 0.12))), EAVE - 1, top));
    }
    return house.expect("headwall", length, "length of the row").expect("eave", length, "length of the plan")
        .expect(2, "rake", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }

  /** A plane inside parapets a little off its edges. */
  static House parapetsApart(Random random) {
    double gap = between(random, 0, 0.145);
    double depth = between(random, 4, 12);
    double length = between(random, 5, 20);
    Pitch pitch = Pitch.pitch(between(random, 1.5, 8));
    double top = EAVE + depth * pitch.tan() + 0.4;
    double a = -gap;
    double b = length + gap;
    double c = depth + gap;
    return new House("parapets apart")
        .roof("plane", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth))
        .wall("south", a - 0.3, a - 0.3, b + 0.3, a, 2, top).wall("north", a - 0.3, c, b + 0.3, c + 0.3, 2, top)
        .wall("west", a - 0.3, a, a, c, 2, top).wall("east", b, a, b + 0.3, c, 2, top)
        .expect("headwall", length, "length of the plan").expect("low-wall", length, "length of the plan")
        .expect(2, "sidewall", depth * pitch.rafter(), "plan depth × √(1+t²)");
  }
}
