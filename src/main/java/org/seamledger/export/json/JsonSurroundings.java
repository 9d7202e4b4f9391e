package org.seamledger.export.json;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import org.seamledger.element.Element;
import org.seamledger.geometry.ClippedSurfaces;
import org.seamledger.geometry.Vec3;
import org.seamledger.takeoff.Takeoff;

/**
 * What stands near the roof, walls, chimneys, pipes, as plane polygons for pictures: an object with {@code elements}, each with
 * {@code globalId}, {@code ifcClass} and {@code polygons}, lists of corners in the model's own coordinates, metres. Elements that are
 * too large for a picture are left out, and {@code leftOut} counts them.
 */
public final class JsonSurroundings {

  private static final int MOST_CORNERS = 200_000;
  private static final int MOST_OF_ONE = 20_000;

  private final Takeoff takeoff;
  private int corners;
  private int leftOut;

  private JsonSurroundings(Takeoff takeoff) {
    this.takeoff = takeoff;
  }

  public static void write(Takeoff takeoff, OutputStream out) throws IOException {
    new JsonSurroundings(takeoff).write(out);
  }

  private void write(OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> {
        json.objects("elements", takeoff.surroundings().neighbours().stream().filter(this::hasRoom).toList(), e -> element(json, e));
        json.count("leftOut", leftOut);
      });
    }
  }

  private boolean hasRoom(Element element) {
    int own = polygons(element).stream().mapToInt(List::size).sum();
    boolean fits = own <= MOST_OF_ONE && corners + own <= MOST_CORNERS;
    corners += fits ? own : 0;
    leftOut += fits ? 0 : 1;
    return fits;
  }

  private static List<List<Vec3>> polygons(Element element) {
    return element.body().stream().flatMap(b -> ClippedSurfaces.of(b).stream()).toList();
  }

  private void element(JsonOutput json, Element element) throws IOException {
    json.word("globalId", element.globalId());
    json.word("ifcClass", element.ifcClass());
    json.list("polygons", polygons(element), p -> json.list(p, at -> json.point(takeoff.world(at))));
  }
}
