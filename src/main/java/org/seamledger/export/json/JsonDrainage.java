package org.seamledger.export.json;

import java.io.IOException;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.drainage.WaterPlace;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.takeoff.Takeoff;

/** Where the water goes, in the JSON ledger: plan areas in square metres, flows of the five-minute rain in litres a second. */
public final class JsonDrainage {

  private static final double LITRES = 1000;

  private final DrainageTrace drainage;
  private final Takeoff takeoff;
  private final JsonOutput json;

  public JsonDrainage(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.drainage = takeoff.drainage();
    this.json = json;
  }

  public void drainage() throws IOException {
    json.object("drainage", this::fields);
  }

  private void fields() throws IOException {
    json.objects("leaves", drainage.leaves().entrySet(), e -> {
      json.word("junction", e.getKey());
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
      json.path("outline", c.outline().stream().map(takeoff::world).toList());
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
    json.objects("from", e.getValue().entrySet(), this::share);
    json.objects("to", drainage.path().getOrDefault(WaterPlace.junction(e.getKey()), Collections.emptySortedMap()).entrySet(), this::share);
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
