package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Details;
import org.seamledger.detail.Run;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Takeoff;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Every detail's sheet, measured as it would be printed: words and numbers apart, leaders across nothing that is read, all on the paper,
 * and every part of the detail drawn once by its id. Areas are compared by the JDK's own geometry, not by that which placed them.
 */
@Tag("slow")
class SectionLayoutTest {

  private static final SortedMap<String, Detail> BOOK = new Details(Rules.packaged()).book();
  /** Width of a character of DejaVu Sans as a share of its size, measured on the words of these sheets. */
  private static final double CHARACTER = 0.5;
  private static final Pattern PLACE = Pattern.compile("translate\\(([-\\d.]+) ([-\\d.]+)\\) rotate\\(([-\\d.]+)\\)");

  private static final RoofSystem PLATES = RoofSystem.parse("{\"fasteners\": {\"backUpPlates\": true}}", "plates.json");

  /** Something that is read, with what it says. */
  private record Read(String says, Area area) {
  }

  static Stream<String> details() {
    return BOOK.keySet().stream();
  }

  private static List<SheetSetup> setups() {
    return List.of(SheetSetup.DEFAULT, new SheetSetup(Paper.A3, DrawingUnits.METRIC, TitleBlock.EMPTY),
        new SheetSetup(Paper.A4, DrawingUnits.US, TitleBlock.EMPTY), new SheetSetup(Paper.LETTER, DrawingUnits.BOTH, TitleBlock.EMPTY),
        new SheetSetup(Paper.ARCH_C, DrawingUnits.BOTH, TitleBlock.EMPTY));
  }

  private static Takeoff scene(String detail) {
    return DetailScenes.of(BOOK.get(detail), RoofSystem.DEFAULT, "Roof slab", "model.ifc");
  }

  @ParameterizedTest
  @MethodSource("details")
  void whatIsReadStandsApart(String id) {
    for (SheetSetup setup : setups()) {
      Drawn drawn = Drawn.parse(SectionDrawing.svg(scene(id), DetailScenes.ID, setup));
      String where = id + " on " + setup.paper() + " in " + setup.units();
      List<Read> read = read(drawn);
      List<Line2D> leaders = drawn.elements("line", "leader").stream().map(SectionLayoutTest::line).toList();
      assertThat(leaders).as(where + ": a leader for each number").hasSameSizeAs(drawn.elements("g", "pointed"));
      for (int i = 0; i < read.size(); i++) {
        for (int j = i + 1; j < read.size(); j++) {
          assertThat(overlap(read.get(i), read.get(j))).as(where + ": " + read.get(i).says + " / " + read.get(j).says).isFalse();
        }
        for (Line2D leader : leaders) {
          assertThat(crosses(leader, read.get(i).area)).as(where + ": a leader through " + read.get(i).says).isFalse();
        }
        for (Line2D broken : breaks(drawn)) {
          assertThat(crosses(broken, read.get(i).area)).as(where + ": a break line through " + read.get(i).says).isFalse();
        }
      }
      for (int i = 0; i < leaders.size(); i++) {
        for (int j = i + 1; j < leaders.size(); j++) {
          assertThat(leaders.get(i).intersectsLine(leaders.get(j))).as(where + ": leaders cross").isFalse();
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("details")
  void everythingIsInTheFrame(String id) {
    for (SheetSetup setup : setups()) {
      Drawn drawn = Drawn.parse(SectionDrawing.svg(scene(id), DetailScenes.ID, setup));
      String where = id + " on " + setup.paper();
      Rectangle2D frame = new Rectangle2D.Double(19.9, 9.9, setup.paper().widthMm() - 29.8, setup.paper().heightMm() - 19.8);
      read(drawn).forEach(r -> assertThat(frame.contains(r.area.getBounds2D())).as(where + ": " + r.says).isTrue());
      for (String tag : List.of("polyline", "polygon")) {
        for (Element e : drawn.elements(tag)) {
          if (!isIn(e, "enlarged")) {
            assertThat(Drawn.points(e)).as(where).allMatch(p -> frame.contains(p.u(), p.v()));
          }
        }
      }
    }
  }

  /** What is counted is what is drawn: each part, seal and line of fasteners once, in a group that bears its id. */
  @ParameterizedTest
  @MethodSource("details")
  void everyPartIsDrawnOnceByItsId(String id) {
    everyPartIsDrawn(id, RoofSystem.DEFAULT);
    everyPartIsDrawn(id, PLATES);
  }

  private static void everyPartIsDrawn(String id, RoofSystem system) {
    Detail detail = BOOK.get(id);
    Takeoff takeoff = DetailScenes.of(detail, system, "Roof slab", "model.ifc");
    JunctionQuantities counted = takeoff.quantities().byJunction().get(DetailScenes.ID);
    Drawn drawn = Drawn.parse(SectionDrawing.svg(takeoff, DetailScenes.ID, SheetSetup.DEFAULT));
    List<String> groups = drawn.elements("g", "drawn").stream().map(e -> e.getAttribute("data-part")).filter(p -> !p.isEmpty()).toList();
    TreeSet<String> asked = new TreeSet<>();
    detail.metal().stream().filter(p -> counted.metal().stream().anyMatch(m -> m.part().equals(p.part()) && m.pieces() > 0))
        .forEach(m -> asked.add("metal " + m.id()));
    detail.seals().forEach(s -> asked.add("seal " + s.id() + (s.run() == Run.PER_LAP ? " of " + s.part() : "")));
    detail.fastenings().forEach(f -> asked.add("fastening " + f.id()));
    detail.withFaces().forEach(f -> asked.add("face " + f.id()));
    assertThat(groups).as("each once").doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(asked);
    drawn.elements("g", "drawn").forEach(g -> assertThat(g.getChildNodes().getLength()).as(g.getAttribute("data-part")).isGreaterThan(1));
    List<String> notes = drawn.elements("g", "pointed").stream().map(e -> e.getAttribute("data-words")).toList();
    counted.metal().stream().filter(m -> m.pieces() > 0)
        .forEach(m -> assertThat(notes).as(m.part()).anyMatch(n -> n.startsWith(m.part() + ", ") && n.contains("; ")));
    counted.seals().stream().filter(s -> s.lengthM() > 0)
        .forEach(s -> assertThat(notes).as(s.place()).anyMatch(n -> n.contains(s.place()) && n.contains("; ")));
    counted.fasteners().stream().filter(f -> f.count() > 0)
        .forEach(f -> assertThat(notes).as(f.place()).anyMatch(n -> n.contains(f.place() + ":") && n.contains(" pieces")));
  }

  /** Where a tape would be thinner than 1.3 mm on paper there is a circle at full size. */
  @ParameterizedTest
  @MethodSource("details")
  void tapeCanBeRead(String id) {
    Drawn drawn = Drawn.parse(SectionDrawing.svg(scene(id), DetailScenes.ID, SheetSetup.DEFAULT));
    boolean hasTape = BOOK.get(id).seals().stream().anyMatch(s -> s.form().word().equals("tape"));
    if (hasTape && drawn.denominator() >= 4) {
      assertThat(drawn.elements("g", "enlarged")).hasSize(1);
      assertThat(drawn.words()).contains("A   1:1");
    }
  }

  private static boolean isIn(Element e, String type) {
    for (Node n = e; n instanceof Element parent; n = n.getParentNode()) {
      if (parent.getAttribute("class").equals(type)) {
        return true;
      }
    }
    return false;
  }

  private static List<Read> read(Drawn drawn) {
    List<Read> read = new ArrayList<>();
    for (Element e : drawn.elements("text")) {
      double size = size(e);
      double width = e.getTextContent().length() * size * CHARACTER;
      Matcher at = PLACE.matcher(e.getAttribute("transform"));
      // The number in a ring is the ring's.
      if (e.getAttribute("class").equals("number") || e.getTextContent().isEmpty()) {
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
    for (Element ring : drawn.elements("circle", "ring")) {
      double u = Double.parseDouble(ring.getAttribute("cx"));
      double v = Double.parseDouble(ring.getAttribute("cy"));
      read.add(new Read("a ring", new Area(new Ellipse2D.Double(u - 2.05, v - 2.05, 4.1, 4.1))));
    }
    return read;
  }

  /** As the sheets' style says. */
  private static double size(Element text) {
    String own = text.getAttribute("font-size");
    return own.isEmpty() ? switch (text.getAttribute("class").split(" ")[0]) {
      case "title" -> text.getAttribute("class").contains("long") ? 3.9 : 5;
      case "subtitle", "head", "mark-text" -> 2.9;
      case "small" -> 2.3;
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

  private static boolean crosses(Line2D line, Area area) {
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

  private static List<Line2D> breaks(Drawn drawn) {
    List<Line2D> lines = new ArrayList<>();
    for (Element e : drawn.elements("polyline", "break")) {
      if (!isIn(e, "enlarged")) {
        List<Vec2> points = Drawn.points(e);
        for (int i = 1; i < points.size(); i++) {
          lines.add(new Line2D.Double(points.get(i - 1).u(), points.get(i - 1).v(), points.get(i).u(), points.get(i).v()));
        }
      }
    }
    return lines;
  }
}
