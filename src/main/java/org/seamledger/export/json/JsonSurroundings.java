package org.seamledger.export.json;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
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

  /** An element with the polygons of its surface, in the analysis' own coordinates. */
  private record Drawn(Element element, List<List<Vec3>> polygons) {
  }

  private void write(OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> {
        json.objects("elements", takeoff.surroundings().neighbours().stream().flatMap(e -> drawn(e).stream()).toList(),
            d -> element(json, d));
        json.count("leftOut", leftOut);
      });
    }
  }

  private Optional<Drawn> drawn(Element element) {
    int[] given = {0};
    element.body().forEach(b -> b.eachSurface(s -> given[0] += s.corners().size()));
    List<List<Vec3>> polygons = given[0] > MOST_OF_ONE ? List.of()
        : element.body().stream().flatMap(b -> ClippedSurfaces.of(b).stream()).toList();
    int own = Math.max(given[0], polygons.stream().mapToInt(List::size).sum());
    boolean fits = own <= MOST_OF_ONE && corners + own <= MOST_CORNERS;
    corners += fits ? own : 0;
    leftOut += fits ? 0 : 1;
    return fits ? Optional.of(new Drawn(element, polygons)) : Optional.empty();
  }

  private void element(JsonOutput json, Drawn drawn) throws IOException {
    json.word("globalId", drawn.element().globalId());
    json.word("ifcClass", drawn.element().ifcClass());
    json.list("polygons", drawn.polygons(), p -> json.list(p, at -> json.point(takeoff.world(at))));
  }
}
