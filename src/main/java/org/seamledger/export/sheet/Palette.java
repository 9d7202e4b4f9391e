package org.seamledger.export.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

/** The one colour code of page and sheets, by what seals a line: read from the page's own file, so that the two cannot differ. */
public final class Palette {

  private static final String FILE = "/web/palette.json";
  /** Millimetres on paper for a pixel on the page. */
  private static final double MM_PER_PX = 0.25;

  private static final List<Entry> SEALS = read();

  private Palette() {
  }

  /**
   * How a class of junctions looks.
   *
   * @param light colour on white paper and on the page's light ground
   * @param dark colour on the page's dark ground
   * @param widthMm of the line on paper
   * @param dashMm dashes and gaps on paper; empty for a solid line
   */
  public record Entry(String id, String text, String light, String dark, double widthMm, List<Double> dashMm) {

    /** Its rule in a sheet's style. */
    public String css() {
      String dash = dashMm.stream().map(Svg::number).collect(Collectors.joining(" "));
      return ".seal-" + id + " { fill: none; stroke: " + light + "; stroke-width: " + Svg.number(widthMm) + "; stroke-linejoin: round;"
          + (dash.isEmpty() ? "" : " stroke-dasharray: " + dash + ";") + " }\n";
    }
  }

  /** In the order of the legend. */
  public static List<Entry> seals() {
    return SEALS;
  }

  /** The colour on paper of what is sealed so. */
  public static String light(String seal) {
    return SEALS.stream().filter(e -> e.id().equals(seal)).findFirst().orElseThrow().light();
  }

  private static List<Entry> read() {
    try (InputStream in = Palette.class.getResourceAsStream(FILE)) {
      List<Entry> entries = new ArrayList<>();
      for (JsonNode node : new ObjectMapper().readTree(in).path("seals")) {
        List<Double> dash = StreamSupport.stream(node.path("dash").spliterator(), false).map(d -> d.doubleValue() * MM_PER_PX).toList();
        entries.add(new Entry(node.path("id").textValue(), node.path("text").textValue(), node.path("light").textValue(),
            node.path("dark").textValue(), node.path("width").doubleValue() * MM_PER_PX, dash));
      }
      return List.copyOf(entries);
    } catch (IOException e) {
      throw new UncheckedIOException("the palette is missing from the program", e);
    }
  }
}
