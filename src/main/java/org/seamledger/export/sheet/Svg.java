package org.seamledger.export.sheet;

import java.util.List;
import org.seamledger.export.wording.OneLine;
import org.seamledger.geometry.Vec2;
import org.seamledger.measure.MeasureFormat;

/**
 * SVG text, written element by element. User units are millimetres on paper, y downwards. Every text and attribute is escaped here, so that
 * no name from a model can become markup.
 */
public final class Svg {

  private final StringBuilder out = new StringBuilder();

  /** A number of at most three decimals: a micrometre on paper. */
  public static String number(double value) {
    return MeasureFormat.plain(value, 3);
  }

  static String escape(String text) {
    StringBuilder escaped = new StringBuilder(text.length());
    OneLine.of(text).codePoints().forEach(c -> {
      switch (c) {
        case '&' -> escaped.append("&amp;");
        case '<' -> escaped.append("&lt;");
        case '>' -> escaped.append("&gt;");
        case '"' -> escaped.append("&quot;");
        case '\'' -> escaped.append("&#39;");
        // XML has no way to write these two.
        case 0xFFFE, 0xFFFF -> escaped.append(' ');
        default -> escaped.appendCodePoint(c);
      }
    });
    return escaped.toString();
  }

  public static String points(List<Vec2> points) {
    StringBuilder text = new StringBuilder();
    for (Vec2 p : points) {
      text.append(text.isEmpty() ? "" : " ").append(number(p.u())).append(',').append(number(p.v()));
    }
    return text.toString();
  }

  /** Opens an element; attributes are name, value, name, value … */
  public Svg open(String name, String... attributes) {
    return tag(name, attributes, ">\n");
  }

  public Svg close(String name) {
    out.append("</").append(name).append(">\n");
    return this;
  }

  public Svg empty(String name, String... attributes) {
    return tag(name, attributes, "/>\n");
  }

  private Svg tag(String name, String[] attributes, String end) {
    out.append('<').append(name);
    for (int i = 0; i < attributes.length; i += 2) {
      out.append(' ').append(attributes[i]).append("=\"").append(escape(attributes[i + 1])).append('"');
    }
    out.append(end);
    return this;
  }

  /** An element that holds text only. */
  Svg words(String name, String words, String... attributes) {
    tag(name, attributes, ">");
    out.append(escape(words)).append("</").append(name).append(">\n");
    return this;
  }

  public Svg text(String type, Vec2 at, String words) {
    return words("text", words, "class", type, "x", number(at.u()), "y", number(at.v()));
  }

  /** Text of a size of its own, millimetres. */
  public Svg sized(String type, double size, Vec2 at, String words) {
    return words("text", words, "class", type, "font-size", number(size), "x", number(at.u()), "y", number(at.v()));
  }

  /** Text in the middle of a place, turned by degrees counter-clockwise on paper. */
  public Svg turned(String type, Vec2 at, double degrees, String words) {
    return words("text", words, "class", type, "text-anchor", "middle", "transform",
        "translate(" + number(at.u()) + " " + number(at.v()) + ") rotate(" + number(-degrees) + ")");
  }

  public Svg line(String type, Vec2 a, Vec2 b) {
    return empty("line", "class", type, "x1", number(a.u()), "y1", number(a.v()), "x2", number(b.u()), "y2", number(b.v()));
  }

  public Svg polyline(String type, List<Vec2> points) {
    return empty("polyline", "class", type, "points", points(points));
  }

  public Svg polygon(String type, List<Vec2> points) {
    return empty("polygon", "class", type, "points", points(points));
  }

  /** A style sheet of our own making; not escaped, since it has no outside text. */
  public Svg style(String css) {
    out.append("<style>\n").append(css).append("</style>\n");
    return this;
  }

  /** Adds another drawing's elements. */
  public Svg add(Svg other) {
    out.append(other.out);
    return this;
  }

  /** A square tile of strokes for a filling, named by its id. */
  public Svg hatch(String id, double size, double turn, String colour, String ground, String... paths) {
    open("pattern", "id", id, "width", number(size), "height", number(size), "patternUnits", "userSpaceOnUse", "patternTransform",
        "rotate(" + number(turn) + ")");
    empty("rect", "width", number(size), "height", number(size), "fill", ground);
    for (String path : paths) {
      empty("path", "d", path, "stroke", colour, "stroke-width", number(size / 5), "fill", "none");
    }
    return close("pattern");
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
