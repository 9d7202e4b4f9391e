package org.seamledger.export.json;

import java.io.IOException;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.drainage.WaterPlace;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.LineEnd;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.WaterSizes;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.takeoff.Takeoff;

/** Where the water goes, in the JSON ledger: plan areas in square metres, flows of the five-minute rain in litres a second. */
public final class JsonDrainage {

  private static final double LITRES = 1000;
  /** A line falls by more than this, metres. */
  private static final double RUNS = 1e-3;

  private final DrainageTrace drainage;
  private final Takeoff takeoff;
  private final JsonOutput json;
  private final Map<String, DetailedJunction> lines = new HashMap<>();
  private final Map<String, String> feet;

  public JsonDrainage(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.drainage = takeoff.drainage();
    this.json = json;
    takeoff.detailed().forEach(d -> lines.put(d.junction().junction().id(), d));
    this.feet = feet(takeoff);
    feet.keySet().removeIf(id -> lines.get(id) == null || !runsAlong(lines.get(id).junction().type().water()));
  }

  private static boolean runsAlong(Kind.Water water) {
    return water == Kind.Water.ALONG || water == Kind.Water.BESIDE || water == Kind.Water.AGAINST;
  }

  public void drainage() throws IOException {
    json.object("drainage", this::fields);
  }

  private void fields() throws IOException {
    json.objects("leaves", drainage.leaves().entrySet(), e -> {
      leaving(e.getKey());
      json.number("planAreaM2", e.getValue());
      json.number("flowLps", lps(e.getValue()));
    });
    json.objects("trapped", drainage.trapped().entrySet(), e -> {
      json.word("face", e.getKey());
      json.number("planAreaM2", e.getValue());
    });
    json.objects("path", drainage.path().entrySet().stream().filter(e -> e.getKey().isFace()).toList(), this::from);
    json.objects("lines", drainage.arriving().entrySet(), this::line);
    json.objects("catchments", drainage.catchments(), c -> {
      json.word("face", c.face());
      json.path("outline", c.outline(), takeoff.offset());
      json.object("to", () -> place(c.to()));
    });
    json.objects("drops", drainage.drops().entrySet(), e -> {
      json.word("junction", e.getKey());
      json.objects("to", e.getValue().entrySet(), to -> {
        json.word("face", to.getKey());
        json.number("planAreaM2", to.getValue());
      });
    });
  }

  /** A junction with all that comes to it, and where that goes on; what leaves the roof there goes on to nothing. */
  private void line(Map.Entry<String, SortedMap<WaterPlace, Double>> e) throws IOException {
    double area = e.getValue().values().stream().mapToDouble(Double::doubleValue).sum();
    json.word("junction", e.getKey());
    json.number("planAreaM2", area);
    json.number("flowLps", lps(area));
    sizes(e.getKey(), lps(area) / LITRES);
    json.objects("from", e.getValue().entrySet(), this::share);
    json.objects("to", drainage.path().getOrDefault(WaterPlace.junction(e.getKey()), Collections.emptySortedMap()).entrySet(), this::share);
  }

  private void sizes(String junction, double flow) throws IOException {
    DetailedJunction line = lines.get(junction);
    SortedMap<String, Object> sizes = line == null ? Collections.emptySortedMap()
        : WaterSizes.of(line.junction().type(), line.junction().junction().lengthM(), flow, takeoff.system());
    if (!sizes.isEmpty()) {
      json.object("sizes", () -> {
        for (Map.Entry<String, Object> size : sizes.entrySet()) {
          json.number(size.getKey(), ((Number) size.getValue()).doubleValue());
        }
      });
    }
  }

  /** Water that ran along a line leaves at one point: the node at its low end. Else it leaves all along the line. */
  private void leaving(String junction) throws IOException {
    String foot = feet.get(junction);
    json.word(foot == null ? "junction" : "node", foot == null ? junction : foot);
    if (foot != null) {
      json.word("along", junction);
    }
  }

  private static Map<String, String> feet(Takeoff takeoff) {
    Map<String, String> feet = new HashMap<>();
    for (KindedNode n : takeoff.nodes()) {
      for (LineEnd end : n.node().leaving()) {
        List<Vec3> path = end.junction().path();
        double low = Math.min(path.get(0).z(), path.get(path.size() - 1).z());
        double high = Math.max(path.get(0).z(), path.get(path.size() - 1).z());
        if (high - low > RUNS && Math.abs(n.node().at().z() - low) < Math.abs(n.node().at().z() - high)) {
          feet.put(end.junction().id(), n.node().id());
        }
      }
    }
    return feet;
  }

  private void share(Map.Entry<WaterPlace, Double> e) throws IOException {
    place(e.getKey());
    json.number("planAreaM2", e.getValue());
  }

  private void from(Map.Entry<WaterPlace, SortedMap<WaterPlace, Double>> e) throws IOException {
    place(e.getKey());
    json.objects("to", e.getValue().entrySet(), this::share);
  }

  private void place(WaterPlace place) throws IOException {
    json.word(place.isFace() ? "face" : "junction", place.id());
  }

  private double lps(double areaM2) {
    return Rain.flow(takeoff.system().site().runoff().value(), takeoff.system().fiveMinuteRainfallMs(), areaM2) * LITRES;
  }
}
