package org.seamledger.sequence;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.node.FaceSide;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.Quantities;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/**
 * Where work is done, and how these places lie to each other.
 *
 * @param sides how each line's faces lie to it, by ids of line and face
 * @param joints within each face, the lowest first
 * @param facts of each line for the rules, without a part
 */
record RoofPlaces(Map<String, RoofFace> faces, Map<String, DetailedJunction> lines, Map<String, KindedNode> nodes,
    Map<String, Map<String, Side>> sides, Map<String, List<String>> joints, Map<String, Boolean> panelled,
    Map<String, PlaceFacts> facts) {

  /** Slope across a line below which a face falls beside it, as a tangent: the limit of level lines in {@code shapes/kinds.ttl}. */
  private static final double BESIDE = Math.tan(Math.toRadians(0.5));

  /** How a face lies to a line where it ends. */
  enum Side {
    ABOVE("face-above"), BELOW("face-below"), BESIDE("face-beside"), WITHIN("face-within");

    private final String word;

    Side(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  static RoofPlaces of(List<RoofFace> faces, List<DetailedJunction> junctions, List<KindedNode> nodes, Quantities quantities) {
    Map<String, RoofFace> byId = new LinkedHashMap<>();
    faces.forEach(f -> byId.put(f.id(), f));
    Map<String, DetailedJunction> lines = new LinkedHashMap<>();
    Map<String, Map<String, Side>> sides = new HashMap<>();
    for (DetailedJunction j : junctions) {
      String id = j.junction().junction().id();
      lines.put(id, j);
      Map<String, Side> of = new TreeMap<>();
      boolean within = j.junction().type().family() == Kind.Family.FIELD;
      j.junction().junction().faces().stream().filter(byId::containsKey)
          .forEach(f -> of.put(f, within ? Side.WITHIN : side(j.junction().junction().path(), byId.get(f))));
      sides.put(id, of);
    }
    Map<String, KindedNode> points = new LinkedHashMap<>();
    nodes.forEach(n -> points.put(n.id(), n));
    Map<String, Boolean> panelled = new HashMap<>();
    faces.forEach(f -> panelled.put(f.id(), !quantities.layout().face(f.id()).panels().isEmpty()));
    return new RoofPlaces(byId, lines, points, sides, joints(sides, lines), panelled, facts(lines, sides));
  }

  private static Side side(List<Vec3> path, RoofFace face) {
    int longest = 1;
    for (int i = 2; i < path.size(); i++) {
      longest = path.get(i - 1).distance(path.get(i)) > path.get(longest - 1).distance(path.get(longest)) ? i : longest;
    }
    Vec3 way = path.get(longest).minus(path.get(longest - 1));
    Vec3 normal = nearest(path.get(longest - 1).towards(path.get(longest), 0.5), face).plane().normal();
    if (way.planLength() < 1e-9 || Math.abs(normal.z()) < 1e-9) {
      return Side.BESIDE;
    }
    Vec3 left = new Vec3(-way.y(), way.x(), 0).unit();
    Vec3 into = FaceSide.isLeft(path, face) ? left : left.negated();
    double rise = -normal.dot(into) / normal.z();
    return Math.abs(rise) < BESIDE ? Side.BESIDE : rise > 0 ? Side.ABOVE : Side.BELOW;
  }

  private static Facet nearest(Vec3 point, RoofFace face) {
    return face.facets().stream().min(Comparator.comparingDouble(f -> f.area().distance(new Vec2(f.plane().u(point), f.plane().v(point)))
        + Math.abs(f.plane().height(point)))).orElseThrow();
  }

  /** Ids of the joints within a face that have a detail, the lowest first. */
  List<String> joints(String face) {
    return joints.getOrDefault(face, List.of());
  }

  private static Map<String, List<String>> joints(Map<String, Map<String, Side>> sides, Map<String, DetailedJunction> lines) {
    Map<String, List<String>> ofFace = new HashMap<>();
    Comparator<String> lowestFirst = Comparator.comparingDouble(id -> lines.get(id).junction().junction().path().get(0).z());
    sides.entrySet().stream().filter(e -> e.getValue().containsValue(Side.WITHIN) && !lines.get(e.getKey()).detail().equals(Detail.NONE))
        .map(Map.Entry::getKey).sorted(lowestFirst.thenComparing(id -> id))
        .forEach(id -> sides.get(id).keySet().forEach(f -> ofFace.computeIfAbsent(f, k -> new ArrayList<>()).add(id)));
    return ofFace;
  }

  /** Facts of a line for the rules, without a part. */
  PlaceFacts lineFacts(String line) {
    return facts.get(line);
  }

  private static Map<String, PlaceFacts> facts(Map<String, DetailedJunction> lines, Map<String, Map<String, Side>> sides) {
    Map<Map<String, Object>, PlaceFacts> known = new HashMap<>();
    Map<String, PlaceFacts> ofLines = new HashMap<>();
    lines.forEach((id, line) -> ofLines.put(id, known.computeIfAbsent(facts(line, sides.get(id)), PlaceFacts::new)));
    return ofLines;
  }

  private static Map<String, Object> facts(DetailedJunction j, Map<String, Side> sides) {
    Map<String, Object> facts = new TreeMap<>();
    facts.put("place", "line");
    facts.put("kind", j.junction().kind());
    facts.put("lineFamily", j.junction().type().family().word());
    facts.put("lineWater", j.junction().type().water().word());
    facts.put("facesAbove", Collections.frequency(sides.values(), Side.ABOVE));
    facts.put("facesBelow", Collections.frequency(sides.values(), Side.BELOW));
    facts.put("gutter", j.detail().metal().stream().anyMatch(m -> m.id().equals("gutter")));
    return facts;
  }

  boolean hasDetail(String line) {
    return !lines.get(line).detail().equals(Detail.NONE);
  }

  /** Height of the highest point of a face, metres, local. */
  double top(String face) {
    double top = Double.NEGATIVE_INFINITY;
    for (Facet f : faces.get(face).facets()) {
      Plane p = f.plane();
      top = Math.max(top, p.at(f.area().maxU(), f.area().maxV()).z());
      top = Math.max(top, p.at(f.area().minU(), f.area().maxV()).z());
    }
    return top;
  }
}
