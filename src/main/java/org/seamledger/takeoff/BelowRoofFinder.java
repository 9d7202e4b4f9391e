package org.seamledger.takeoff;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.BelowRoof;
import org.seamledger.quantity.EaveLine;
import org.seamledger.quantity.GuttersAndParapets;
import org.seamledger.roof.RoofFace;

/** Finds what lies below a roof's lines: the wall behind an eave, doors in it, rooms under gutters and channels; and reads metals. */
final class BelowRoofFinder {

  /** How far from an eave a wall, or without one a door, is looked for, metres. */
  private static final double FARTHEST = 3;
  private static final double NO_WALL = 1.5;
  /** A door stands in the wall, its opening a little deeper. */
  private static final double IN_WALL = 0.3;
  /** Walls are looked at so far below the eave: below soffit and gutter. */
  private static final double BELOW_EAVE = 0.5;
  /** A room's ceiling is no higher than this above the line. */
  private static final double CEILING = 0.3;
  /** Beside a line, metres: a gutter's middle before an eave, a channel's before a wall. */
  private static final double BESIDE = 0.1;
  private static final double COINCIDENCE = 1e-4;
  private static final double[] SHARES = {0.5, 0.25, 0.75};

  private final PlanIndex<Element> walls;
  private final PlanIndex<Element> doors;
  private final PlanIndex<Element> rooms;
  private final Map<String, RoofFace> faces;
  private final SortedMap<String, List<String>> doorsOf = new TreeMap<>();
  private final SortedMap<String, List<String>> roomsOf = new TreeMap<>();
  private final SortedMap<String, Double> wallInside = new TreeMap<>();

  private BelowRoofFinder(Building building, List<RoofFace> faces) {
    this.walls = index(building.neighbours(), Category.WALL);
    this.doors = index(building.below(), Category.DOOR);
    this.rooms = index(building.below(), Category.SPACE);
    this.faces = faces.stream().collect(Collectors.toMap(RoofFace::id, Function.identity()));
  }

  private static PlanIndex<Element> index(List<Element> elements, Category category) {
    return new PlanIndex<>(elements.stream().filter(e -> e.category() == category).toList(), Element::bounds);
  }

  static BelowRoof of(Building building, List<RoofFace> faces, List<DetailedJunction> junctions, GuttersAndParapets around) {
    BelowRoofFinder finder = new BelowRoofFinder(building, faces);
    for (DetailedJunction d : junctions) {
      Junction line = d.junction().junction();
      Kind kind = d.junction().type();
      if (kind.water() == Kind.Water.OVER && !line.faces().isEmpty()) {
        finder.eave(line);
      }
      boolean gutter = kind.water() == Kind.Water.OVER && around.guttered().contains(line.id());
      boolean channel = kind.water() == Kind.Water.INTO
          || kind.water() == Kind.Water.AGAINST && kind.family() == Kind.Family.WALL;
      if (gutter || channel) {
        finder.rooms(line, gutter);
      }
    }
    return new BelowRoof(finder.doorsOf, finder.roomsOf, finder.wallInside, MetalNames.of(building, faces));
  }

  // ---- eaves

  private void eave(Junction line) {
    List<String> found = new ArrayList<>();
    for (EaveLine piece : EaveLine.of(line, faces.get(line.faces().get(0)))) {
      Optional<double[]> wall = wallBehind(piece);
      wall.ifPresent(w -> wallInside.merge(line.id(), w[1], Math::max));
      Box3 box = Box3.of(List.of(piece.from(), piece.at(piece.planLengthM(), 0))).grown(FARTHEST);
      doors.overlappingInPlan(box).stream().filter(door -> standsIn(door, piece, wall)).map(Element::globalId).forEach(found::add);
    }
    if (!found.isEmpty()) {
      doorsOf.put(line.id(), found.stream().sorted().distinct().toList());
    }
  }

  /** Plan distances to the outside and the inside of the first wall behind an eave; the farthest of three places. */
  private Optional<double[]> wallBehind(EaveLine piece) {
    Box3 box = Box3.of(List.of(piece.from(), piece.at(piece.planLengthM(), 0))).grown(FARTHEST);
    List<Element> near = walls.overlappingInPlan(box);
    if (near.isEmpty()) {
      return Optional.empty();
    }
    Plane level = Plane.through(piece.from().minus(new Vec3(0, 0, BELOW_EAVE)), Vec3.Z);
    Region window = window(level, box);
    Region cut = Region.unionOf(near.stream()
        .map(w -> w.solid().section(level, COINCIDENCE, SectionSide.BELOW, window)).toList());
    return java.util.Arrays.stream(SHARES).mapToObj(s -> firstWall(cut, level, piece, s * piece.planLengthM())).flatMap(Optional::stream)
        .max(Comparator.comparingDouble(w -> w[1]));
  }

  private static Optional<double[]> firstWall(Region walls, Plane level, EaveLine piece, double along) {
    Vec2 a = flat(level, piece.at(along, -BESIDE));
    Vec2 b = flat(level, piece.at(along, FARTHEST));
    return walls.intersect(Region.alongLine(List.of(a, b), COINCIDENCE)).parts().stream().map(part -> {
      double[] d = part.rings().stream().flatMap(r -> r.points().stream()).mapToDouble(p -> piece.inward(level.at(p.u(), p.v()))).toArray();
      return new double[] {java.util.Arrays.stream(d).min().orElse(0), java.util.Arrays.stream(d).max().orElse(0)};
    }).min(Comparator.comparingDouble(w -> w[0])).filter(w -> w[1] - w[0] < FARTHEST / 2);
  }

  /** A door whose width lies along the eave, below it, in the wall behind it. */
  private static boolean standsIn(Element door, EaveLine piece, Optional<double[]> wall) {
    Box3 box = door.bounds();
    if (box.maxZ() > piece.from().z() + CEILING) {
      return false;
    }
    Plane level = Plane.through(box.centre(), Vec3.Z);
    List<Vec3> corners = door.solid().section(level, COINCIDENCE, SectionSide.BELOW, window(level, box)).rings().stream()
        .flatMap(r -> r.points().stream()).map(p -> level.at(p.u(), p.v())).toList();
    if (corners.isEmpty()) {
      return false;
    }
    double[] along = range(corners, piece::along);
    double[] inward = range(corners, piece::inward);
    double middle = (along[0] + along[1]) / 2;
    double depth = (inward[0] + inward[1]) / 2;
    double from = wall.map(w -> w[0] - IN_WALL).orElse(0.0);
    double to = wall.map(w -> w[1] + IN_WALL).orElse(NO_WALL);
    return along[1] - along[0] > inward[1] - inward[0] && middle >= 0 && middle <= piece.planLengthM() && depth >= from && depth <= to;
  }

  private static double[] range(List<Vec3> points, java.util.function.ToDoubleFunction<Vec3> measure) {
    return new double[] {points.stream().mapToDouble(measure).min().orElse(0), points.stream().mapToDouble(measure).max().orElse(0)};
  }

  // ---- rooms

  private void rooms(Junction line, boolean gutter) {
    List<String> found = new ArrayList<>();
    RoofFace face = faces.get(line.faces().get(0));
    for (EaveLine piece : EaveLine.of(line, face)) {
      for (double share : SHARES) {
        Vec3 p = piece.at(share * piece.planLengthM(), gutter ? -BESIDE : BESIDE);
        rooms.overlappingInPlan(Box3.of(List.of(p))).stream().filter(room -> isOver(room, p)).map(Element::globalId).forEach(found::add);
      }
    }
    if (!found.isEmpty()) {
      roomsOf.put(line.id(), found.stream().sorted().distinct().toList());
    }
  }

  private static boolean isOver(Element room, Vec3 p) {
    Box3 box = room.bounds();
    Plane level = Plane.through(box.centre(), Vec3.Z);
    return box.maxZ() <= p.z() + CEILING
        && room.solid().section(level, COINCIDENCE, SectionSide.BELOW, window(level, box)).contains(flat(level, p));
  }

  private static Vec2 flat(Plane level, Vec3 p) {
    return new Vec2(level.u(p), level.v(p));
  }

  /** A rectangle of the plane that holds a box seen from above. */
  private static Region window(Plane level, Box3 box) {
    List<Vec2> corners =
        Stream.of(new Vec3(box.minX(), box.minY(), 0), new Vec3(box.maxX(), box.maxY(), 0)).map(p -> flat(level, p)).toList();
    double minU = Math.min(corners.get(0).u(), corners.get(1).u()) - 1;
    double minV = Math.min(corners.get(0).v(), corners.get(1).v()) - 1;
    return Region.rectangle(minU, minV, minU + box.maxX() - box.minX() + 2, minV + box.maxY() - box.minY() + 2);
  }
}
