package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Details;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Takeoff;
import org.w3c.dom.Element;

/**
 * Every detail's sheet, measured as it would be printed: words and numbers apart, leaders across nothing that is read, all on the paper,
 * and every part of the detail drawn once by its id. Areas are compared by the JDK's own geometry, not by that which placed them.
 */
@Tag("slow")
class SectionLayoutTest {

  private static final SortedMap<String, Detail> BOOK = new Details(Rules.packaged()).book();
  private static final RoofSystem PLATES = RoofSystem.parse("{\"fasteners\": {\"backUpPlates\": true}}", "plates.json");

  static Stream<String> details() {
    return BOOK.keySet().stream();
  }

  private static List<SheetSetup> setups() {
    return List.of(SheetSetup.DEFAULT, new SheetSetup(Paper.A4, DrawingUnits.METRIC, TitleBlock.EMPTY),
        new SheetSetup(Paper.LETTER, DrawingUnits.BOTH, TitleBlock.EMPTY));
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
      PrintedSheet sheet = new PrintedSheet(drawn);
      assertThat(sheet.leaders()).as(where + ": a leader for each number").hasSameSizeAs(drawn.elements("g", "pointed"));
      sheet.isReadable(where);
      for (PrintedSheet.Read read : sheet.read()) {
        for (Line2D broken : breaks(drawn)) {
          assertThat(PrintedSheet.crosses(broken, read.area())).as(where + ": a break line through " + read.says()).isFalse();
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
      new PrintedSheet(drawn).isInFrame(setup.paper(), where);
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
    Takeoff takeoff = DetailScenes.of(BOOK.get(id), system, "Roof slab", "model.ifc");
    DrawnIsCountedTest.compare(takeoff, takeoff.detailed().get(0), id);
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

  private static List<Line2D> breaks(Drawn drawn) {
    List<Line2D> lines = new ArrayList<>();
    for (Element e : drawn.elements("polyline", "break")) {
      if (!PrintedSheet.isIn(e, "enlarged")) {
        List<Vec2> points = Drawn.points(e);
        for (int i = 1; i < points.size(); i++) {
          lines.add(new Line2D.Double(points.get(i - 1).u(), points.get(i - 1).v(), points.get(i).u(), points.get(i).v()));
        }
      }
    }
    return lines;
  }
}
