package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.seamledger.ifc.Drawing.p;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.element.Building;
import org.seamledger.finding.Finding;
import org.seamledger.finding.UnreadableModelException;

/** Broken models end in findings about what is broken, and the rest is read; no other exception, no hang. */
@Timeout(60)
@Tag("slow")
class BadInputTest {

  private interface Item {
    String in(Drawing d);
  }

  private static Arguments item(String name, Item item) {
    return Arguments.of(name, item);
  }

  static Stream<Arguments> brokenItems() {
    return Stream.of(
        item("infinite coordinate", d -> d.extruded(d.closedProfile(d.polyline(p(0, 0), p(1, 0)).replace("x", "")), 1)),
        item("coordinate that overflows", d -> d.extruded(d.closedProfile(d.add("IFCPOLYLINE((%s,%s,%s))", d.point(0, 0), d.point(1, 0),
            d.add("IFCCARTESIANPOINT((1.E999,1.))"))), 1)),
        item("direction of length zero", d -> d.add("IFCEXTRUDEDAREASOLID(%s,$,%s,1.)", d.rectangle(1, 1), d.direction(0, 0, 0))),
        item("extrusion in its own plane", d -> d.add("IFCEXTRUDEDAREASOLID(%s,$,%s,1.)", d.rectangle(1, 1), d.direction(1, 0, 0))),
        item("depth of zero", d -> d.extruded(d.rectangle(1, 1), 0)),
        item("negative depth", d -> d.extruded(d.rectangle(1, 1), -2)),
        item("reference to nothing", d -> d.add("IFCEXTRUDEDAREASOLID(#99999,$,%s,1.)", d.direction(0, 0, 1))),
        item("text where a number should be", d -> d.add("IFCEXTRUDEDAREASOLID(%s,$,%s,'deep')", d.rectangle(1, 1), d.direction(0, 0, 1))),
        item("profile where a direction should be", d -> d.add("IFCEXTRUDEDAREASOLID(%s,$,%s,1.)", d.rectangle(1, 1), d.rectangle(1, 1))),
        item("too few parameters", d -> d.add("IFCEXTRUDEDAREASOLID()")),
        item("item that is itself", d -> d.add("IFCCSGSOLID(#%d)", next(d))),
        item("Boolean result of itself", d -> d.add("IFCBOOLEANRESULT(.UNION.,#%d,#%<d)", next(d))),
        item("profile of itself", d -> d.extruded(d.add("IFCDERIVEDPROFILEDEF(.AREA.,$,#%d,%s,$)", next(d) + 2,
            d.add("IFCCARTESIANTRANSFORMATIONOPERATOR2D($,$,%s,1.)", d.point(0, 0))), 1)),
        item("curve of itself", d -> d.extruded(d.closedProfile(d.add("IFCTRIMMEDCURVE(#%d,(IFCPARAMETERVALUE(0.)),"
            + "(IFCPARAMETERVALUE(1.)),.T.,.PARAMETER.)", next(d))), 1)),
        item("profile that crosses itself", d -> d.extruded(d.closedProfile(d.polyline(p(0, 0), p(2, 2), p(2, 0), p(0, 2), p(0, 0))), 1)),
        item("profile without area", d -> d.extruded(d.closedProfile(d.polyline(p(0, 0), p(2, 2), p(0, 0))), 1)),
        item("shell without faces", d -> d.add("IFCFACETEDBREP(%s)", d.add("IFCCLOSEDSHELL(())"))),
        item("index out of range", d -> d.add("IFCTRIANGULATEDFACESET(%s,$,.T.,((1,2,9)),$)",
            d.add("IFCCARTESIANPOINTLIST3D(((0.,0.,0.),(1.,0.,0.),(0.,1.,0.)))"))),
        item("scale of zero", d -> d.extruded(d.add("IFCDERIVEDPROFILEDEF(.AREA.,$,%s,%s,$)", d.rectangle(1, 1),
            d.add("IFCCARTESIANTRANSFORMATIONOPERATOR2D($,$,%s,0.)", d.point(0, 0))), 1)),
        item("knots that do not fit", d -> d.extruded(d.closedProfile(d.add("IFCBSPLINECURVEWITHKNOTS(2,(%s,%s,%s),.UNSPECIFIED.,.F.,.F.,"
            + "(3,2000000000,3),(0.,1.,2.),.UNSPECIFIED.)", d.point(0, 0), d.point(1, 0), d.point(1, 1))), 1)),
        item("line that turns back", d -> d.add("IFCSWEPTDISKSOLID(%s,0.1,$,$,$)", d.polyline(p(0, 0, 0), p(1, 0, 0), p(0, 0, 0)))),
        item("axis through the profile", d -> d.add("IFCREVOLVEDAREASOLID(%s,%s,%s,1.)", d.rectangle(2, 2), d.at(0, 0, 0),
            d.add("IFCAXIS1PLACEMENT(%s,%s)", d.point(0, 0, 0), d.direction(0, 1, 0)))),
        item("half-space alone", d -> d.add("IFCHALFSPACESOLID(%s,.T.)", d.add("IFCPLANE(%s)", d.at(0, 0, 0)))),
        item("unknown item", d -> d.add("IFCSOMETHINGELSE($)")));
  }

  private static int next(Drawing d) {
    return Integer.parseInt(d.direction(0, 0, 1).substring(1)) + 1;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("brokenItems")
  void leavesOutTheBrokenItemAndSaysSo(String name, Object item) {
    Drawing d = Drawing.ifc4();
    String broken = ((Item) item).in(d);
    d.roof(broken, d.extruded(d.rectangle(4, 3), 2));
    Building b = d.read();
    assertThat(b.roofs()).singleElement().satisfies(e -> assertThat(Drawing.volume(e.solid())).isBetween(23.99, 24.01));
    assertThat(b.findings()).singleElement().satisfies(f -> {
      assertThat(f.code()).startsWith("model/");
      assertThat(f.elements()).containsExactly(b.roofs().get(0).globalId());
      assertThat(f.message()).contains("IfcRoof");
    });
  }

  /** A number that no building has is named as such, and nothing is laid out or counted over it. */
  @ParameterizedTest
  @ValueSource(doubles = {1e9, 1e12, 1e300})
  void leavesOutWhatLiesBeyondAnyBuilding(double far) {
    Drawing d = Drawing.ifc4();
    d.roof(d.extruded(d.closedProfile(d.polyline(p(0, 0), p(far, 0), p(0, 1), p(0, 0))), 1), d.extruded(d.rectangle(4, 3), 2));
    Building b = d.read();
    assertThat(b.roofs()).singleElement().satisfies(e -> assertThat(Drawing.volume(e.solid())).isBetween(23.99, 24.01));
    assertThat(b.findings()).singleElement().satisfies(f -> assertThat(f.code()).isEqualTo("model/out-of-bounds"));
  }

  /** A roof with nothing in it says so. */
  @ParameterizedTest
  @ValueSource(strings = {"$", "#99999", "'text'", "(())"})
  void reportsEmptyRoofs(String representation) {
    Drawing d = Drawing.ifc4();
    d.product("IFCROOF", d.placement("$", d.at(0, 0, 0)), representation, ",$,$");
    Building b = d.read();
    assertThat(b.roofs()).isEmpty();
    assertThat(b.findings()).extracting(Finding::code).contains("roof/none", "roof/without-shape");
  }

  private static String model() {
    Drawing d = Drawing.ifc4();
    String clip = d.add("IFCHALFSPACESOLID(%s,.F.)", d.add("IFCPLANE(%s)", d.at(0, 0, 3.5)));
    String roof = d.roof(d.add("IFCBOOLEANCLIPPINGRESULT(.DIFFERENCE.,%s,%s)", d.extruded(d.rectangle(4, 3), 4), clip));
    String opening = d.product("IFCOPENINGELEMENT", d.placement("$", d.at(0, 0, 2)),
        d.shape("SweptSolid", d.extruded(d.closedProfile(d.polyline(p(0, 0), p(1, 0), p(0, 1), p(0, 0))), 3)), ",$,$");
    d.add("IFCRELVOIDSELEMENT('%s',$,$,$,%s,%s)", d.id(), roof, opening);
    String circle = d.add("IFCCIRCLEPROFILEDEF(.AREA.,$,$,0.1)");
    String pipe = d.product("IFCPIPESEGMENT", d.placement("$", d.at(1, 1, 0)), d.shape("SweptSolid", d.extruded(circle, 6)), ",$,$");
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s))", d.id(), roof, pipe);
    String points = d.add("IFCCARTESIANPOINTLIST3D(((0.,0.,0.),(1.,0.,0.),(0.,1.,0.),(0.,0.,9.)))");
    d.product("IFCWALL", d.placement("$", d.at(0, 0, 0)), d.shape("Tessellation",
        d.add("IFCTRIANGULATEDFACESET(%s,$,.T.,((1,3,2),(1,2,4),(2,3,4),(3,1,4)),$)", points)), ",$,$");
    d.add("IFCRELDEFINESBYPROPERTIES('%s',$,$,$,(%s),%s)", d.id(), roof, d.add("IFCPROPERTYSET('%s',$,'P',$,(%s))", d.id(),
        d.add("IFCPROPERTYSINGLEVALUE('W',$,IFCLENGTHMEASURE(4.),$)")));
    return d.text();
  }

  /** Every parameter of a model, one at a time, replaced by what does not belong there. */
  @ParameterizedTest
  @ValueSource(strings = {"$", "*", "#99999", "-1.", "0", "1.E400", "'x'", ".X.", "()", "((1.),(2.))", "IFCBOOLEAN(.T.)", "#1", "#20",
      "1.E-300", "1.E300"})
  void survivesEveryParameterBeingWrong(String wrong) {
    String model = model();
    Matcher m = Pattern.compile("#\\d+(?=[,)])|-?\\d+\\.[-\\dE]*|(?<=[(,])\\.\\w+\\.|(?<=[(,])\\$").matcher(model);
    List<int[]> places = new ArrayList<>();
    int data = model.indexOf("DATA;");
    while (m.find()) {
      if (m.start() > data) {
        places.add(new int[] {m.start(), m.end()});
      }
    }
    for (int[] place : places) {
      readOrRefuse(model.substring(0, place[0]) + wrong + model.substring(place[1]), "at " + place[0]);
    }
  }

  /** Bytes changed, left out and repeated at random. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void survivesDamage(int seed) {
    Random random = new Random(seed);
    String model = model();
    for (int i = 0; i < 150; i++) {
      StringBuilder s = new StringBuilder(model);
      for (int k = random.nextInt(4); k >= 0; k--) {
        int at = random.nextInt(s.length() - 20);
        switch (random.nextInt(4)) {
          case 0 -> s.setCharAt(at, (char) (32 + random.nextInt(95)));
          case 1 -> s.delete(at, at + random.nextInt(20));
          case 2 -> s.insert(at, s.substring(at, at + random.nextInt(20)));
          default -> s.setCharAt(at, "#(),;'.0$*".charAt(random.nextInt(10)));
        }
      }
      readOrRefuse(s.toString(), "seed " + seed + ", model " + i);
    }
  }

  private static void readOrRefuse(String text, String where) {
    try {
      assertThat(Drawing.read(text).models()).hasSize(1);
    } catch (UnreadableModelException e) {
      assertThat(e.getMessage()).doesNotContain("\n");
    } catch (RuntimeException | StackOverflowError e) {
      fail(where + ": " + e, e);
    }
  }
}
