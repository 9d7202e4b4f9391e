package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.seamledger.export.sheet.Paper;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** A sheet as it would be printed. Areas are compared by the JDK's own geometry, not by that which placed them. */
public record PrintedSheet(Drawn drawn) {

  /** Width of a character of DejaVu Sans as a share of its size, measured on the words of these sheets. */
  private static final double CHARACTER = 0.5;
  private static final Pattern PLACE = Pattern.compile("translate\\(([-\\d.]+) ([-\\d.]+)\\) rotate\\(([-\\d.]+)\\)");
  /** The number in a ring is the ring's. */
  private static final Set<String> NUMBERS = Set.of("number", "balloon-text");

  /** Something that is read, with what it says. */
  record Read(String says, Area area) {
  }

  public static PrintedSheet parse(String svg) {
    return new PrintedSheet(Drawn.parse(svg));
  }

  List<Line2D> leaders() {
    return drawn.elements("line", "leader").stream().map(PrintedSheet::line).toList();
  }

  /** Elements of a class in the first group of another. */
  public long count(String tag, String type, String in) {
    return drawn.elements(tag, type).stream().filter(e -> isIn(e, in)).count();
  }

  /** No words over others, no leader through words or another leader. */
  public void isReadable(String where) {
    List<Read> read = read();
    List<Line2D> leaders = leaders();
    for (int i = 0; i < read.size(); i++) {
      for (int j = i + 1; j < read.size(); j++) {
        assertThat(overlap(read.get(i), read.get(j))).as(where + ": " + read.get(i).says + " / " + read.get(j).says).isFalse();
      }
      for (Line2D leader : leaders) {
        assertThat(crosses(leader, read.get(i).area)).as(where + ": a leader through " + read.get(i).says).isFalse();
      }
    }
    for (int i = 0; i < leaders.size(); i++) {
      for (int j = i + 1; j < leaders.size(); j++) {
        assertThat(leaders.get(i).intersectsLine(leaders.get(j))).as(where + ": leaders cross").isFalse();
      }
    }
  }

  /** Nothing stands outside the frame: 20 mm on the left, 10 mm on the other sides (ISO 5457). */
  public void isInFrame(Paper paper, String where) {
    Rectangle2D frame = new Rectangle2D.Double(19.9, 9.9, paper.widthMm() - 29.8, paper.heightMm() - 19.8);
    read().forEach(r -> assertThat(frame.contains(r.area.getBounds2D())).as(where + ": " + r.says).isTrue());
    for (String tag : List.of("polyline", "polygon")) {
      for (Element e : drawn.elements(tag)) {
        if (!isIn(e, "enlarged")) {
          assertThat(Drawn.points(e)).as(where).allMatch(p -> frame.contains(p.u(), p.v()));
        }
      }
    }
  }

  static boolean isIn(Element e, String type) {
    for (Node n = e; n instanceof Element parent; n = n.getParentNode()) {
      if (parent.getAttribute("class").equals(type)) {
        return true;
      }
    }
    return false;
  }

  /** All that is read on it. */
  List<Read> read() {
    List<Read> read = new ArrayList<>();
    for (Element e : drawn.elements("text")) {
      double size = size(e);
      double width = e.getTextContent().length() * size * CHARACTER;
      Matcher at = PLACE.matcher(e.getAttribute("transform"));
      // The number in a ring is the ring's.
      if (NUMBERS.contains(e.getAttribute("class")) || e.getTextContent().isEmpty()) {
        continue;
      }
      if (at.find()) {
        Area area = new Area(new Rectangle2D.Double(-width / 2, -size * 0.72, width, size * 0.85));
        AffineTransform move = AffineTransform.getTranslateInstance(Double.parseDouble(at.group(1)), Double.parseDouble(at.group(2)));
        move.rotate(Math.toRadians(Double.parseDouble(at.group(3))));
        read.add(new Read(e.getTextContent(), area.createTransformedArea(move)));
      } else {
        read.add(new Read(e.getTextContent(), new Area(new Rectangle2D.Double(Double.parseDouble(e.getAttribute("x")),
            Double.parseDouble(e.getAttribute("y")) - size * 0.72, width, size * 0.85))));
      }
    }
    for (Element ring : Stream.concat(drawn.elements("circle", "ring").stream(), drawn.elements("circle", "balloon").stream()).toList()) {
      double r = Double.parseDouble(ring.getAttribute("r")) - 0.05;
      double u = Double.parseDouble(ring.getAttribute("cx"));
      double v = Double.parseDouble(ring.getAttribute("cy"));
      read.add(new Read("a ring", new Area(new Ellipse2D.Double(u - r, v - r, 2 * r, 2 * r))));
    }
    return read;
  }

  /** As the sheets' style says. */
  private static double size(Element text) {
    String own = text.getAttribute("font-size");
    return own.isEmpty() ? switch (text.getAttribute("class").split(" ")[0]) {
      case "title" -> text.getAttribute("class").contains("long") ? 4.2 : 5;
      case "subtitle", "head", "mark-text" -> 2.9;
      case "small", "leg" -> 2.3;
      case "fine" -> 2.25;
      case "caption" -> 1.8;
      case "value" -> 2.7;
      case "dim-text", "list-number" -> 2.5;
      default -> 2.6;
    } : Double.parseDouble(own);
  }

  private static boolean overlap(Read a, Read b) {
    if (!a.area.getBounds2D().intersects(b.area.getBounds2D())) {
      return false;
    }
    Area both = new Area(a.area);
    both.intersect(b.area);
    return !both.isEmpty();
  }

  static boolean crosses(Line2D line, Area area) {
    double length = line.getP1().distance(line.getP2());
    for (int i = 1; i < 100; i++) {
      double share = i / 100.0;
      // The leader begins at its own ring.
      double u = line.getX1() + (line.getX2() - line.getX1()) * share;
      double v = line.getY1() + (line.getY2() - line.getY1()) * share;
      if (length * share > 0.3 && area.contains(u, v)) {
        return true;
      }
    }
    return false;
  }

  private static Line2D line(Element e) {
    return new Line2D.Double(Double.parseDouble(e.getAttribute("x1")), Double.parseDouble(e.getAttribute("y1")),
        Double.parseDouble(e.getAttribute("x2")), Double.parseDouble(e.getAttribute("y2")));
  }
}
