package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/**
 * The part of the roof that an ice barrier covers: from the edge to 24 in inside the exterior wall, measured level, and from 8:12 on at
 * least 36 in along the slope (International Residential Code R905.1.2, edition of 2018; that of 2024 has the first alone).
 *
 * @param areaM2 true area, eaves that share a corner counted once
 * @param unmeasuredM length of the eaves without a wall in the model: there the wall is taken to stand under the edge
 */
record IceZone(double areaM2, double unmeasuredM) {

  private static final double INSIDE_WALL = 0.6096;
  private static final double ALONG_SLOPE = 0.9144;
  /** 8:12. */
  private static final double STEEP = 33.69;

  /** A piece of an eave and how far the barrier reaches from it, level, metres. */
  private record Reach(EaveLine line, double inwardM) {
  }

  static IceZone of(RoofLayout layout, List<DetailedJunction> junctions, BelowRoof below) {
    Map<String, List<Reach>> byFace = new HashMap<>();
    double unmeasured = 0;
    for (DetailedJunction d : junctions) {
      Junction line = d.junction().junction();
      if (d.junction().type().water() == Kind.Water.OVER) {
        Optional<Double> wall = Optional.ofNullable(below.wallInsideM().get(line.id()));
        unmeasured += wall.isEmpty() ? line.lengthM() : 0;
        for (String id : line.faces()) {
          RoofFace face = layout.roofFace(id);
          double slope = face.slopeDegrees();
          double reach = Math.max(wall.orElse(0.0) + INSIDE_WALL,
              slope >= STEEP ? ALONG_SLOPE * Math.cos(Math.toRadians(slope)) : 0);
          EaveLine.of(line, face).forEach(e -> byFace.computeIfAbsent(id, k -> new ArrayList<>()).add(new Reach(e, reach)));
        }
      }
    }
    double area = byFace.entrySet().stream().sorted(Map.Entry.comparingByKey())
        .flatMap(e -> layout.roofFace(e.getKey()).facets().stream().map(f -> of(f, e.getValue()))).mapToDouble(Region::area).sum();
    return new IceZone(area, unmeasured);
  }

  private static Region of(Facet facet, List<Reach> reaches) {
    return Region.unionOf(reaches.stream().map(r -> {
      Region ahead = cut(facet, r.line, r.line.inward(), r.inwardM);
      Region before = cut(new Facet(facet.plane(), ahead), r.line, r.line.along(), r.line.planLengthM());
      return cut(new Facet(facet.plane(), before), r.line, r.line.along().negated(), 0);
    }).toList());
  }

  /** What of an area lies less than so far from the line's begin in a direction. */
  private static Region cut(Facet facet, EaveLine line, Vec3 direction, double most) {
    double origin = facet.plane().at(0, 0).minus(line.from()).dot(direction);
    return facet.area().cut(facet.plane().u().dot(direction), facet.plane().v().dot(direction), most - origin);
  }
}
