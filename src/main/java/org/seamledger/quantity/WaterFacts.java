package org.seamledger.quantity;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.drainage.WaterPlace;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.roof.RoofFace;

/** What the trace of the water says of a junction, in flows of the five-minute rain and in sizes. */
final class WaterFacts {

  /** Sine of the angle from which on water runs into a wall rather than along it. */
  private static final double INTO_WALL = 0.1;
  private static final double LITRES = 1000;

  private final RoofLayout layout;
  private final RoofSystem system;
  private final DrainageTrace trace;
  private final Map<String, Junction> walls = new TreeMap<>();
  private final LineEnds ends;

  WaterFacts(List<DetailedJunction> junctions, RoofLayout layout, RoofSystem system, DrainageTrace trace) {
    this.layout = layout;
    this.system = system;
    this.trace = trace;
    this.ends = new LineEnds(junctions);
    junctions.stream().filter(j -> j.junction().type().family() == Kind.Family.WALL).map(j -> j.junction().junction())
        .forEach(j -> walls.put(j.id(), j));
  }

  void add(DetailedJunction detailed, SortedMap<String, Object> f) {
    Junction line = detailed.junction().junction();
    Kind kind = detailed.junction().type();
    SortedMap<WaterPlace, Double> from = trace.arriving().getOrDefault(line.id(), Collections.emptySortedMap());
    double area = from.values().stream().mapToDouble(Double::doubleValue).sum();
    double flow = Rain.flow(system.site().runoff().value(), system.fiveMinuteRainfallMs(), area);
    if (area > 0) {
      f.put("flowLps", flow * LITRES);
    }
    f.putAll(WaterSizes.of(kind, line.lengthM(), flow, system));
    if (kind.water() == Kind.Water.ALONG) {
      valley(line, flow, from, area, f);
    } else if (kind.water() == Kind.Water.INTO || kind.water() == Kind.Water.AGAINST) {
      f.put("heldM2", trace.held().getOrDefault(line.id(), 0.0));
    } else if (kind.water() == Kind.Water.BESIDE && kind.family() == Kind.Family.WALL) {
      f.put("eaveAtLowEnd", ends.eaveAtLowEnd(line));
    }
    drops(line, f);
  }

  private void valley(Junction line, double flow, Map<WaterPlace, Double> from, double area, SortedMap<String, Object> f) {
    straight(line, flow, f);
    double most = from.entrySet().stream().filter(e -> e.getKey().isFace()).mapToDouble(Map.Entry::getValue).max().orElse(0);
    if (area > 0 && from.size() > 1) {
      f.put("largerFlowShare", most / area);
    }
    Map<WaterPlace, Double> to = trace.path().getOrDefault(WaterPlace.junction(line.id()), Collections.emptySortedMap());
    f.put("endsAtWall", to.keySet().stream().filter(p -> !p.isFace()).map(p -> walls.get(p.id()))
        .anyMatch(w -> w != null && runsInto(line, w)));
  }

  /** Whether a line's water runs into a wall, not past its corner: a wall lies to the right of its line, seen along it. */
  private static boolean runsInto(Junction line, Junction wall) {
    Vec3 v = line.path().get(line.path().size() - 1).minus(line.path().get(0));
    Vec3 down = v.z() > 0 ? v.negated() : v;
    Vec3 w = wall.path().get(wall.path().size() - 1).minus(wall.path().get(0));
    double across = down.x() * w.y() - down.y() * w.x();
    return across > INTO_WALL * down.planLength() * w.planLength();
  }

  /** Width of the flow at the low end, level and square to the line, and what the cleats leave free there; not for a bent line. */
  private void straight(Junction valley, double flow, SortedMap<String, Object> f) {
    Vec3 along = valley.path().get(valley.path().size() - 1).minus(valley.path().get(0));
    if (valley.path().size() != 2 || valley.faces().size() != 2 || Math.abs(along.z()) < 1e-3 * along.length()) {
      return;
    }
    double cleats = 0;
    double[] z = new double[2];
    for (int i = 0; i < 2; i++) {
      Vec3 d = along.unit();
      Vec3 across = layout.roofFace(valley.faces().get(i)).meanNormal().cross(d);
      Vec3 level = Vec3.Z.cross(d).unit();
      double run = Math.abs(across.dot(level));
      double rise = Math.abs(across.dot(d.cross(level)));
      if (rise < 1e-6) {
        return;
      }
      z[i] = run / rise;
      cleats += system.valley().cleatOffset().value() * run / across.length();
    }
    double line = Math.toDegrees(Math.asin(Math.abs(along.z()) / along.length()));
    f.put("flowWidthM", Rain.valley(flow, system.manningN(), line, z[0], z[1]).widthM());
    f.put("cleatLineM", cleats);
  }

  /** Onto the flattest of the faces below, of those that get more than a trace. */
  private void drops(Junction line, SortedMap<String, Object> f) {
    SortedMap<String, Double> to = trace.drops().getOrDefault(line.id(), Collections.emptySortedMap());
    double all = to.values().stream().mapToDouble(Double::doubleValue).sum();
    to.entrySet().stream().filter(e -> e.getValue() > all / 100).map(e -> layout.roofFace(e.getKey()))
        .mapToDouble(RoofFace::slopeDegrees).min().ifPresent(slope -> {
          f.put("dropSlopeDegrees", slope);
          f.put("dropM2", all);
        });
  }
}
