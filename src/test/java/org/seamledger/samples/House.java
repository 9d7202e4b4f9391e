package org.seamledger.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/**
 * A building under construction: roof planes, other things, and the junction lines that it must have.
 *
 * <p>Methods add to this house and return it. Names of roof planes and things are unique in a house: GlobalIds come from them.
 */
public final class House {

  /** How far a body that goes through the roof reaches below the surface. */
  private static final double BELOW = 0.8;

  private final String name;
  private final List<RoofPlane> roofs = new ArrayList<>();
  private final List<ShellRoof> shells = new ArrayList<>();
  private final List<Thing> things = new ArrayList<>();
  private final TreeMap<String, Extrusion> cuts = new TreeMap<>();
  private double expectedAreaM2;
  private final List<ExpectedLine> expected = new ArrayList<>();
  private final List<ExpectedLine> modelled = new ArrayList<>();

  public House(String name) {
    this.name = name;
  }

  public String name() {
    return name;
  }

  public List<RoofPlane> roofs() {
    return List.copyOf(roofs);
  }

  /** Roof elements given by their faces. */
  public List<ShellRoof> shells() {
    return List.copyOf(shells);
  }

  /**
   * A roof element given by its faces.
   *
   * @param sheet whether its faces bound nothing
   */
  public record ShellRoof(String name, List<Shell> shells, boolean sheet) {
  }

  /** Adds a roof element given by its faces: bodies, or sheets. */
  public House shell(String roofName, boolean sheet, Shell... bodies) {
    requireNew(roofName);
    shells.add(new ShellRoof(roofName, List.of(bodies), sheet));
    return this;
  }

  public List<Thing> things() {
    return List.copyOf(things);
  }

  public List<ExpectedLine> expected() {
    return List.copyOf(expected);
  }

  /** How much of which junctions a modelled flashing accompanies; a gutter where the kind says so. */
  public List<ExpectedLine> modelled() {
    return List.copyOf(modelled);
  }

  /** The expected lengths by kind, each list ascending. */
  public TreeMap<String, List<Double>> expectedByKind() {
    TreeMap<String, List<Double>> byKind = new TreeMap<>();
    for (ExpectedLine line : expected) {
      byKind.computeIfAbsent(line.kind(), k -> new ArrayList<>()).add(line.lengthM());
    }
    byKind.values().forEach(l -> l.sort(null));
    return byKind;
  }

  static Vec2 at(double x, double y) {
    return new Vec2(x, y);
  }

  // ---- what it is made of ----

  public House roof(String roofName, Slope slope, double depth, Vec2... outline) {
    requireNew(roofName);
    roofs.add(new RoofPlane(roofName, slope, withoutRepetition(List.of(outline)), List.of(), depth, List.of()));
    return this;
  }

  /** A measure of zero makes two corners of a plan the same. */
  private static List<Vec2> withoutRepetition(List<Vec2> outline) {
    List<Vec2> kept = new ArrayList<>();
    for (int i = 0; i < outline.size(); i++) {
      if (outline.get(i).distance(outline.get((i + 1) % outline.size())) > 1e-9) {
        kept.add(outline.get(i));
      }
    }
    return kept;
  }

  public House thing(String thingName, Thing.Role role, Body... bodies) {
    requireNew(thingName);
    things.add(new Thing(thingName, role, List.of(bodies)));
    return this;
  }

  /** The true area of its faces, square metres. */
  House expectArea(double areaM2) {
    expectedAreaM2 += areaM2;
    return this;
  }

  double expectedAreaM2() {
    return expectedAreaM2;
  }

  /** Takes a body out of a thing by an opening that nothing fills. */
  House cut(String thingName, Extrusion opening) {
    cuts.put(thingName, opening);
    return this;
  }

  /** What an opening takes out of a thing, or null. */
  Extrusion cutOf(String thingName) {
    return cuts.get(thingName);
  }

  /** A wall with a rectangular plan. */
  public House wall(String wallName, double x0, double y0, double x1, double y1, double bottom, double top) {
    return wall(wallName, bottom, top, at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1));
  }

  /** A wall with any plan. */
  public House wall(String wallName, double bottom, double top, Vec2... plan) {
    return thing(wallName, Thing.Role.WALL, Extrusion.upright(List.of(plan), bottom, top));
  }

  /** A wall given by its face in the plane x = {@code x}, from corners (y, z), and its thickness towards greater x. */
  public House wallFacingX(String wallName, double x, double thickness, Vec2... face) {
    return thing(wallName, Thing.Role.WALL,
        new Extrusion(List.of(face).stream().map(p -> new Vec3(x, p.u(), p.v())).toList(), List.of(), new Vec3(thickness, 0, 0)));
  }

  /** A wall given by its face in the plane y = {@code y}, from corners (x, z), and its thickness towards greater y. */
  public House wallFacingY(String wallName, double y, double thickness, Vec2... face) {
    return thing(wallName, Thing.Role.WALL,
        new Extrusion(List.of(face).stream().map(p -> new Vec3(p.u(), y, p.v())).toList(), List.of(), new Vec3(0, thickness, 0)));
  }

  /** Four walls under a roof whose lowest eaves run round the rectangle. */
  public House wallsUnder(String prefix, double x0, double y0, double x1, double y1, double thickness, double bottom, double top) {
    return wall(prefix + "south wall", x0, y0, x1, y0 + thickness, bottom, top)
        .wall(prefix + "north wall", x0, y1 - thickness, x1, y1, bottom, top)
        .wall(prefix + "west wall", x0, y0 + thickness, x0 + thickness, y1 - thickness, bottom, top)
        .wall(prefix + "east wall", x1 - thickness, y0 + thickness, x1, y1 - thickness, bottom, top);
  }

  /** A wall of {@code thickness} towards greater x under a gable: level at {@code top} from y0 to y1, rising to the peak. */
  public House gableWall(String wallName, double x, double thickness, double y0, double y1, double bottom, double top, double peakY,
      double peakZ) {
    return wallFacingX(wallName, x, thickness, at(y0, bottom), at(y1, bottom), at(y1, top), at(peakY, peakZ), at(y0, top));
  }

  public RoofPlane roofNamed(String roofName) {
    return roofs.stream().filter(r -> r.name().equals(roofName)).findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no roof plane named " + roofName + " in " + name));
  }

  House change(String roofName, UnaryOperator<RoofPlane> change) {
    roofs.replaceAll(r -> r.name().equals(roofNamed(roofName).name()) ? change.apply(r) : r);
    return this;
  }

  /** All of another house, turned about the vertical by quarter turns and shifted, its names put behind a prefix. */
  public House with(String prefix, House other, int quarterTurns, double dx, double dy, double dz) {
    int q = Math.floorMod(quarterTurns, 4);
    double c = new double[] {1, 0, -1, 0}[q];
    double s = new double[] {0, 1, 0, -1}[q];
    Transform t = new Transform(c, -s, 0, dx, s, c, 0, dy, 0, 0, 1, dz);
    for (RoofPlane r : other.roofs) {
      requireNew(prefix + r.name());
      roofs.add(r.moved(t).named(prefix + r.name()));
    }
    for (ShellRoof r : other.shells) {
      requireNew(prefix + r.name());
      shells.add(new ShellRoof(prefix + r.name(), r.shells().stream().map(b -> b.moved(t)).toList(), r.sheet()));
    }
    for (Thing thing : other.things) {
      requireNew(prefix + thing.name());
      things.add(thing.moved(t).named(prefix + thing.name()));
    }
    expected.addAll(other.expected);
    modelled.addAll(other.modelled);
    return this;
  }

  /** This house's roof, if wanted, and those of its other things that are; no expected lines. */
  House only(boolean roof, java.util.function.Predicate<Thing> wanted) {
    House part = new House(name);
    if (roof) {
      part.roofs.addAll(roofs);
      part.shells.addAll(shells);
    }
    things.stream().filter(wanted).forEach(part.things::add);
    return part;
  }

  private void requireNew(String part) {
    if (roofs.stream().anyMatch(r -> r.name().equals(part)) || things.stream().anyMatch(t -> t.name().equals(part))) {
      throw new IllegalArgumentException(name + " already has a part named " + part);
    }
  }

  // ---- the same roof, modelled in another way ----

  /** A plane as {@code pieces} slabs side by side, parted along X; only for planes that run from one x to another without a hole. */
  public House inPieces(String roofName, int pieces, double slack) {
    RoofPlane r = roofNamed(roofName);
    double x0 = r.outline().stream().mapToDouble(Vec2::u).min().orElseThrow();
    double x1 = r.outline().stream().mapToDouble(Vec2::u).max().orElseThrow();
    double y0 = r.outline().stream().mapToDouble(Vec2::v).min().orElseThrow();
    double y1 = r.outline().stream().mapToDouble(Vec2::v).max().orElseThrow();
    roofs.remove(r);
    double width = (x1 - x0) / pieces;
    for (int i = 0; i < pieces; i++) {
      double west = x0 + i * width + (i == 0 ? 0 : slack / 2);
      double east = x0 + (i + 1) * width - (i == pieces - 1 ? 0 : slack / 2);
      roof(roofName + " " + (i + 1), r.slope(), r.depth(), at(west, y0), at(east, y0), at(east, y1), at(west, y1));
    }
    return this;
  }

  /** More slabs under every plane, from the top down, each with its depth: sheathing, insulation, deck. */
  public House layered(double... depths) {
    for (RoofPlane r : List.copyOf(roofs)) {
      double down = r.depth();
      for (int i = 0; i < depths.length; i++) {
        roofs.add(new RoofPlane(r.name() + " layer " + (i + 2), r.slope().lowered(down), r.outline(), r.holes(), depths[i], List.of()));
        down += depths[i];
      }
    }
    return this;
  }

  // ---- what it must give ----

  public House expect(String kind, double lengthM, String how) {
    expected.add(new ExpectedLine(kind, lengthM, how));
    return this;
  }

  /** A modelled flashing or gutter along a part of one junction. */
  House expectModelled(String what, String kind, double lengthM, String how) {
    modelled.add(new ExpectedLine(what + " at " + kind, lengthM, how));
    return this;
  }

  /** {@code count} lines of the same length. */
  public House expect(int count, String kind, double lengthM, String how) {
    for (int i = 0; i < count; i++) {
      expect(kind, lengthM, how);
    }
    return this;
  }

  /** Takes back one expected line, for a part that another part replaces or cuts. */
  House noLonger(String kind, double lengthM) {
    for (int i = 0; i < expected.size(); i++) {
      if (expected.get(i).kind().equals(kind) && Math.abs(expected.get(i).lengthM() - lengthM) < 1e-9) {
        expected.remove(i);
        return this;
      }
    }
    throw new IllegalArgumentException(name + " expects no " + kind + " of " + lengthM + " m");
  }

  // ---- things through the roof ----

  /** How the roof is made where something goes through it. */
  public enum Through {
    /** The thing and the slab overlap. */
    WHOLE,
    /** The slab's outline has a hole. */
    OUTLINE,
    /** An opening element cuts the slab. */
    OPENING
  }

  /**
   * A chimney with a rectangular plan, square to the fall of the plane that it stands in.
   *
   * @param across plan size along the eave
   * @param along plan size along the fall
   * @param above height of its top above the surface at its upper side
   */
  public House chimney(String thingName, String roofName, double x, double y, double across, double along, double above,
      Through through) {
    return boxThrough(thingName, Thing.Role.CHIMNEY, roofName, x, y, across, along, above, through);
  }

  /** Any box through a roof plane, square to its fall; see {@link #chimney}. */
  public House boxThrough(String thingName, Thing.Role role, String roofName, double x, double y, double across, double along,
      double above, Through through) {
    RoofPlane roof = roofNamed(roofName);
    List<Vec2> plan = squareToFall(roof.slope(), x, y, across, along);
    double low = plan.stream().mapToDouble(p -> roof.slope().at(p).z()).min().orElseThrow();
    double high = plan.stream().mapToDouble(p -> roof.slope().at(p).z()).max().orElseThrow();
    thing(thingName, role, Extrusion.upright(plan, low - BELOW, high + above));
    pierce(roofName, plan, through, thingName);
    return expectCurb(roof.slope().pitch(), across, along);
  }

  /** A vertical round pipe. */
  public House pipe(String thingName, String roofName, double x, double y, double diameter, double above, Through through) {
    RoofPlane roof = roofNamed(roofName);
    double z = roof.slope().z(x, y);
    double rise = roof.slope().pitch().tan() * diameter / 2;
    Cylinder pipe = new Cylinder(new Vec3(x, y, z - rise - BELOW), new Vec3(0, 0, 2 * rise + BELOW + above), diameter / 2);
    thing(thingName, Thing.Role.PIPE, pipe);
    pierce(roofName, pipe.faceted().outline().stream().map(p -> at(p.x(), p.y())).toList(), through, thingName);
    return expect("pipe", Ellipse.perimeter(diameter / 2, diameter / 2 * roof.slope().pitch().rafter()),
        "ellipse with semi-axes r and r·√(1+t²), by the complete elliptic integral");
  }

  /** A vertical pipe of two segments that meet at the surface in a wider coupling; nothing in the roof is cut for it. */
  public House pipeInParts(String thingName, String roofName, double x, double y, double diameter, double above) {
    RoofPlane roof = roofNamed(roofName);
    double z = roof.slope().z(x, y);
    double radius = diameter / 2 + 0.012;
    double rise = roof.slope().pitch().tan() * radius;
    Vec3 middle = new Vec3(x, y, z);
    thing(thingName + " lower", Thing.Role.PIPE, new Cylinder(middle.plus(new Vec3(0, 0, -BELOW)), new Vec3(0, 0, BELOW), diameter / 2));
    thing(thingName + " upper", Thing.Role.PIPE, new Cylinder(middle, new Vec3(0, 0, above), diameter / 2));
    thing(thingName + " coupling", Thing.Role.FITTING,
        new Cylinder(middle.plus(new Vec3(0, 0, -rise - 0.06)), new Vec3(0, 0, 2 * rise + 0.12), radius));
    return expect("pipe", Ellipse.perimeter(radius, radius * roof.slope().pitch().rafter()),
        "the coupling's ellipse with semi-axes r and r·√(1+t²), by the complete elliptic integral");
  }

  /**
   * A window in an opening of the roof.
   *
   * @param above height of its top above the surface: 0 for a flush one
   */
  public House skylight(String thingName, String roofName, double x, double y, double across, double along, double above) {
    RoofPlane roof = roofNamed(roofName);
    List<Vec2> plan = squareToFall(roof.slope(), x, y, across, along);
    Vec3 down = roof.slope().normal().times(-(above + roof.depth() / 2));
    Vec3 lift = roof.slope().normal().times(above);
    Extrusion pane = new Extrusion(plan.stream().map(p -> roof.slope().at(p).plus(lift)).toList(), List.of(), down);
    Thing window = new Thing(thingName, Thing.Role.WINDOW, List.of(pane));
    change(roofName, r -> r.withOpening(new RoofPlane.Hole("Opening of " + thingName, shaft(r, plan), window)));
    return expectCurb(roof.slope().pitch(), across, along);
  }

  /** A hole that nothing fills, as an opening element or in the outline. */
  public House hatch(String thingName, String roofName, double x, double y, double across, double along, Through through) {
    RoofPlane roof = roofNamed(roofName);
    pierce(roofName, squareToFall(roof.slope(), x, y, across, along), through, thingName);
    return expectCurb(roof.slope().pitch(), across, along);
  }

  private House expectCurb(Pitch pitch, double across, double along) {
    return expect("curb-upslope", across, "width across the fall")
        .expect("curb-downslope", across, "width across the fall")
        .expect(2, "curb-side", along * pitch.rafter(), "plan depth × √(1+t²)");
  }

  void pierce(String roofName, List<Vec2> plan, Through through, String thingName) {
    switch (through) {
      case WHOLE -> {
      }
      case OUTLINE -> change(roofName, r -> r.withHole(plan));
      case OPENING -> change(roofName, r -> r.withOpening(new RoofPlane.Hole("Opening for " + thingName, shaft(r, plan), null)));
      default -> throw new IllegalStateException();
    }
  }

  /** An upright prism that goes right through the slab. */
  private static Extrusion shaft(RoofPlane roof, List<Vec2> plan) {
    double low = plan.stream().mapToDouble(p -> roof.slope().at(p).z()).min().orElseThrow();
    double high = plan.stream().mapToDouble(p -> roof.slope().at(p).z()).max().orElseThrow();
    return Extrusion.upright(plan, low - 2 * roof.depth() - 0.1, high + 0.1);
  }

  static List<Vec2> squareToFall(Slope slope, double x, double y, double across, double along) {
    Vec2 up = slope.up().times(along / 2);
    Vec2 side = new Vec2(slope.up().v(), -slope.up().u()).times(across / 2);
    Vec2 c = at(x, y);
    return List.of(c.minus(side).minus(up), c.plus(side).minus(up), c.plus(side).plus(up), c.minus(side).plus(up));
  }
}
