package org.seamledger.junction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.MeshBuilder;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.progress.Progress;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofBuilder;
import org.seamledger.roof.SurfaceLimits;

/** A building put together from solids, in metres, and the kinds of line that its roof has by the plain rules of geometry. */
public final class Scene {

  private final List<Element> roofs = new ArrayList<>();
  private final List<Element> neighbours = new ArrayList<>();

  /** A slab whose sides run along {@code down} from the given top outline. */
  public Scene slab(String id, Vec3 down, double... xyz) {
    roofs.add(element(id, "IfcSlab", Category.ROOF, List.of(prism(points(xyz), down)), List.of()));
    return this;
  }

  public Scene roof(String id, List<Solid> body, Solid... openings) {
    List<Opening> holes = new ArrayList<>();
    for (Solid o : openings) {
      holes.add(new Opening(id + "-hole" + holes.size(), List.of(o), "", ""));
    }
    roofs.add(element(id, "IfcSlab", Category.ROOF, body, holes));
    return this;
  }

  public Scene wall(String id, double x0, double y0, double z0, double x1, double y1, double z1) {
    neighbours.add(element(id, "IfcWall", Category.WALL, List.of(box(x0, y0, z0, x1, y1, z1)), List.of()));
    return this;
  }

  public Scene wall(String id, Solid solid) {
    neighbours.add(element(id, "IfcWall", Category.WALL, List.of(solid), List.of()));
    return this;
  }

  public Scene thing(String id, String ifcClass, Solid solid) {
    neighbours.add(element(id, ifcClass, Category.PENETRATION, List.of(solid), List.of()));
    return this;
  }

  private static Element element(String id, String ifcClass, Category c, List<Solid> body, List<Opening> openings) {
    return new Element(id, ifcClass, c, id, 0, body, openings, "", new TreeMap<>());
  }

  public static List<Vec3> points(double... xyz) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < xyz.length; i += 3) {
      points.add(new Vec3(xyz[i], xyz[i + 1], xyz[i + 2]));
    }
    return points;
  }

  public static Mesh prism(List<Vec3> top, Vec3 down) {
    List<Vec3> bottom = top.stream().map(p -> p.plus(down)).toList();
    MeshBuilder b = new MeshBuilder().face(top, List.of());
    List<Vec3> turned = new ArrayList<>(bottom);
    java.util.Collections.reverse(turned);
    b.face(turned, List.of());
    for (int i = 0; i < top.size(); i++) {
      int j = (i + 1) % top.size();
      b.face(List.of(top.get(i), bottom.get(i), bottom.get(j), top.get(j)), List.of());
    }
    return b.build();
  }

  public static Mesh box(double x0, double y0, double z0, double x1, double y1, double z1) {
    return prism(points(x0, y0, z1, x1, y0, z1, x1, y1, z1, x0, y1, z1), new Vec3(0, 0, z0 - z1));
  }

  public static Mesh cylinder(double x, double y, double z0, double z1, double r, int n) {
    List<Vec3> top = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      top.add(new Vec3(x + r * Math.cos(2 * Math.PI * i / n), y + r * Math.sin(2 * Math.PI * i / n), z1));
    }
    return prism(top, new Vec3(0, 0, z0 - z1));
  }

  public Scene service(String id, String ifcClass, Solid solid) {
    neighbours.add(element(id, ifcClass, Category.SERVICE, List.of(solid), List.of()));
    return this;
  }

  public List<Element> roofs() {
    return List.copyOf(roofs);
  }

  public List<Element> neighbours() {
    return List.copyOf(neighbours);
  }

  public Roof build() {
    return build(SurfaceLimits.DEFAULT);
  }

  public Roof build(SurfaceLimits limits) {
    return RoofBuilder.build(new Building(List.of(), roofs, neighbours, Vec3.ZERO, List.of()), Tolerance.DEFAULT, limits, Progress.NONE);
  }

  public List<Junction> junctions() {
    return JunctionFinder.find(build(), Progress.NONE);
  }

  /** Plain name of a line by its facts → total length, metres. */
  public static Map<String, Double> lengths(List<Junction> junctions) {
    Map<String, Double> sums = new TreeMap<>(Comparator.naturalOrder());
    junctions.forEach(j -> sums.merge(name(j.facts()), j.lengthM(), Double::sum));
    return sums;
  }

  private static String name(Facts f) {
    boolean level = f.number("inclinationDegrees") < 0.5;
    double low = f.number("lowRiseDegrees");
    double high = f.number("highRiseDegrees");
    String against = f.word("against");
    if (against.equals("face")) {
      boolean convex = f.number("foldDegrees") > 0;
      return !level ? convex ? "hip" : "valley" : high < 0 ? "ridge" : low > 0 ? "level-valley" : convex ? "knee" : "break";
    }
    String place = f.number("obliquityDegrees") < 15 ? "along" : f.number("obliquityDegrees") < 75 ? "oblique" : low > 0 ? "low" : "high";
    return against + " " + (against.equals("round") ? "" : place);
  }
}
