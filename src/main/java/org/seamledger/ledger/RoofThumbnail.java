package org.seamledger.ledger;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamledger.measure.MeasureFormat;

/**
 * A small picture of a roof from above, north up, as SVG: faces lit from the north-west, as maps are, with their outlines; curved ones by
 * their facets. Plain shapes and attributes alone, so that it shows wherever pictures do, by day and by night.
 */
public final class RoofThumbnail {

  private static final int WIDE = 160;
  private static final int HIGH = 100;
  private static final double MARGIN = 4;
  /** So many corners are all that a picture of this size can show. */
  private static final int MOST_CORNERS = 60_000;
  private static final String OUTLINE = "#4a4f4c";
  private static final double SUN_EAST = -0.5;
  private static final double SUN_NORTH = 0.5;
  private static final double SUN_UP = 0.707;

  private final List<JsonNode> faces = new ArrayList<>();
  private double west = Double.POSITIVE_INFINITY;
  private double south = Double.POSITIVE_INFINITY;
  private double east = Double.NEGATIVE_INFINITY;
  private double north = Double.NEGATIVE_INFINITY;
  private int corners;

  private RoofThumbnail() {
  }

  /** The picture of a stored result; an empty one where it has no roof. */
  public static String svg(StoredLedger ledger) {
    RoofThumbnail picture = new RoofThumbnail();
    LedgerReader.read(ledger, (name, value) -> {
      if (name.equals("roofFaces")) {
        LedgerReader.each(value, item -> picture.take(item.readValueAsTree()));
      } else {
        value.skipChildren();
      }
    });
    return picture.drawn();
  }

  private void take(JsonNode face) {
    faces.add(face);
    for (JsonNode rings : face.path("facets")) {
      for (JsonNode ring : rings) {
        for (JsonNode p : ring) {
          west = Math.min(west, p.path(0).asDouble());
          east = Math.max(east, p.path(0).asDouble());
          south = Math.min(south, p.path(1).asDouble());
          north = Math.max(north, p.path(1).asDouble());
        }
      }
    }
  }

  private String drawn() {
    StringBuilder svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + WIDE + ' ' + HIGH + "\" width=\""
        + WIDE + "\" height=\"" + HIGH + "\">\n");
    double scale = Math.min((WIDE - 2 * MARGIN) / Math.max(east - west, 1e-3), (HIGH - 2 * MARGIN) / Math.max(north - south, 1e-3));
    for (JsonNode face : faces) {
      if (face.path("curved").asBoolean()) {
        face.path("facets").forEach(f -> draw(svg, path(List.of(f), scale), colour(f), colour(f)));
      } else {
        draw(svg, path(face.path("facets"), scale), colour(face.path("slopeDegrees").asDouble(), face.path("fallAzimuthDegrees")
            .asDouble()), OUTLINE);
      }
    }
    return svg.append("</svg>\n").toString();
  }

  private void draw(StringBuilder svg, String path, String fill, String line) {
    if (!path.isEmpty() && corners < MOST_CORNERS) {
      svg.append("<path fill=\"").append(fill).append("\" stroke=\"").append(line)
          .append("\" stroke-width=\".6\" stroke-linejoin=\"round\"")
          .append(" fill-rule=\"evenodd\" d=\"").append(path).append("\"/>\n");
    }
  }

  private String path(Iterable<JsonNode> facets, double scale) {
    StringBuilder d = new StringBuilder();
    for (JsonNode rings : facets) {
      for (JsonNode ring : rings) {
        char command = 'M';
        for (JsonNode p : ring) {
          double x = WIDE / 2.0 + (p.path(0).asDouble() - (west + east) / 2) * scale;
          double y = HIGH / 2.0 - (p.path(1).asDouble() - (south + north) / 2) * scale;
          d.append(command).append(MeasureFormat.plain(x, 1)).append(' ').append(MeasureFormat.plain(y, 1));
          command = 'L';
          corners++;
        }
        d.append('Z');
      }
    }
    return d.toString();
  }

  /** Each facet of a curved face has the light of its own slope, and no outline: the lines between facets are none of the roof. */
  private static String colour(JsonNode facet) {
    JsonNode ring = facet.path(0);
    double[] n = new double[3];
    for (int i = 0; i < ring.size(); i++) {
      JsonNode p = ring.path(i);
      JsonNode q = ring.path((i + 1) % ring.size());
      for (int k = 0; k < n.length; k++) {
        int a = (k + 1) % n.length;
        int b = (k + 2) % n.length;
        n[k] += (p.path(a).asDouble() - q.path(a).asDouble()) * (p.path(b).asDouble() + q.path(b).asDouble());
      }
    }
    double up = n[2] < 0 ? -1 : 1;
    return colour(Math.toDegrees(Math.atan2(Math.hypot(n[0], n[1]), Math.abs(n[2]))), Math.toDegrees(Math.atan2(up * n[0], up * n[1])));
  }

  /** From dark in the shade to light in the sun. */
  private static String colour(double slopeDegrees, double azimuthDegrees) {
    double slope = Math.toRadians(slopeDegrees);
    double azimuth = Math.toRadians(azimuthDegrees);
    double light = Math.sin(slope) * (Math.sin(azimuth) * SUN_EAST + Math.cos(azimuth) * SUN_NORTH) + Math.cos(slope) * SUN_UP;
    double share = 0.45 + 0.5 * Math.max(0, light);
    return String.format(Locale.ROOT, "#%02x%02x%02x", (int) (216 * share), (int) (226 * share), (int) (220 * share));
  }
}
