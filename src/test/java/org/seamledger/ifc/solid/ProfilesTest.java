package org.seamledger.ifc.solid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.ifc.Drawing.number;
import static org.seamledger.ifc.Drawing.p;

import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.ifc.Drawing;

/** Every kind of profile, extruded, against the area of its closed form or of the section tables. */
class ProfilesTest {

  private static final double MM = 0.001;

  private static double area(Drawing d, String profile) {
    d.roof(d.extruded(profile, 2));
    return Drawing.sectionArea(d.body(), 1);
  }

  private static String parameters(double... mm) {
    return String.join(",", java.util.Arrays.stream(mm).mapToObj(x -> x < 0 ? "$" : number(x * MM)).toList());
  }

  /** Closed forms of plane geometry. */
  static Stream<Arguments> closedForms() {
    return Stream.of(
        Arguments.of("IFCRECTANGLEPROFILEDEF", "4.,3.", 12.0),
        Arguments.of("IFCROUNDEDRECTANGLEPROFILEDEF", "4.,3.,0.5", 12 - (4 - Math.PI) * 0.25),
        Arguments.of("IFCRECTANGLEHOLLOWPROFILEDEF", "4.,3.,0.25,$,$", 12 - 3.5 * 2.5),
        Arguments.of("IFCRECTANGLEHOLLOWPROFILEDEF", "4.,3.,0.25,0.25,0.5", 12 - (4 - Math.PI) * 0.25 - (3.5 * 2.5 - (4 - Math.PI) / 16)),
        Arguments.of("IFCCIRCLEPROFILEDEF", "1.5", Math.PI * 2.25),
        Arguments.of("IFCCIRCLEHOLLOWPROFILEDEF", "1.5,0.25", Math.PI * (2.25 - 1.5625)),
        Arguments.of("IFCELLIPSEPROFILEDEF", "2.,1.", Math.PI * 2),
        Arguments.of("IFCTRAPEZIUMPROFILEDEF", "4.,2.,3.,0.5", 9.0),
        Arguments.of("IFCISHAPEPROFILEDEF", "3.,4.,0.5,0.25,$", 2 * 3 * 0.25 + 3.5 * 0.5),
        Arguments.of("IFCASYMMETRICISHAPEPROFILEDEF", "3.,4.,0.5,0.25,$,2.,0.5,$,$", 3 * 0.25 + 2 * 0.5 + 3.25 * 0.5),
        Arguments.of("IFCLSHAPEPROFILEDEF", "4.,3.,0.5,$,$,$", 4 * 0.5 + 2.5 * 0.5),
        Arguments.of("IFCTSHAPEPROFILEDEF", "4.,3.,0.5,0.25,$,$,$,$,$", 3 * 0.25 + 3.75 * 0.5),
        Arguments.of("IFCUSHAPEPROFILEDEF", "4.,3.,0.5,0.25,$,$,$", 4 * 0.5 + 2 * 2.5 * 0.25),
        Arguments.of("IFCZSHAPEPROFILEDEF", "4.,2.,0.5,0.25,$,$", 4 * 0.5 + 2 * 1.5 * 0.25),
        Arguments.of("IFCCSHAPEPROFILEDEF", "4.,2.,0.25,0.75,$", 4 * 0.25 + 2 * 1.75 * 0.25 + 2 * 0.5 * 0.25));
  }

  @ParameterizedTest(name = "{0} {1}")
  @MethodSource("closedForms")
  void hasTheAreaOfItsClosedForm(String keyword, String parameters, double expected) {
    for (String schema : new String[] {"IFC2X3", "IFC4", "IFC4X3_ADD2"}) {
      Drawing d = Drawing.ifc(schema);
      String position = d.add("IFCAXIS2PLACEMENT2D(%s,%s)", d.point(10, 20), d.direction(0.6, 0.8));
      assertThat(area(d, d.add("%s(.AREA.,$,%s,%s)", keyword, position, parameters))).isCloseTo(expected, within(expected * 8e-4));
    }
  }

  /**
   * Areas in cm² of hot-rolled sections as the section tables print them (EN 10365: IPE, IPN, UPN; EN 10056-1: angles; EN 10055: tees;
   * DIN 1027: zeds), from memory; dimensions in mm.
   */
  static Stream<Arguments> rolled() {
    return Stream.of(
        Arguments.of("IPE 200", "IFCISHAPEPROFILEDEF", parameters(100, 200, 5.6, 8.5, 12), 28.5),
        Arguments.of("HEB 300", "IFCISHAPEPROFILEDEF", parameters(300, 300, 11, 19, 27), 149.1),
        Arguments.of("IPN 200", "IFCISHAPEPROFILEDEF", parameters(90, 200, 7.5, 11.3, 7.5, 4.5) + ",0.1391", 33.4),
        Arguments.of("UPN 200", "IFCUSHAPEPROFILEDEF", parameters(200, 75, 8.5, 11.5, 11.5, 6) + ",0.0798", 32.2),
        Arguments.of("L 100x100x10", "IFCLSHAPEPROFILEDEF", parameters(100, -1, 10, 12, 6) + ",$", 19.2),
        Arguments.of("T 100", "IFCTSHAPEPROFILEDEF", parameters(100, 100, 11, 11, 11, 5.5, 3) + ",0.02,0.02", 20.9),
        Arguments.of("Z 100", "IFCZSHAPEPROFILEDEF", parameters(100, 55, 6.5, 8, 8, 4), 14.5));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("rolled")
  void hasTheAreaOfTheSectionTables(String name, String keyword, String parameters, double squareCentimetres) {
    Drawing d = Drawing.ifc4();
    double area = area(d, d.add("%s(.AREA.,'%s',$,%s)", keyword, name, parameters));
    assertThat(area * 1e4).isCloseTo(squareCentimetres, within(squareCentimetres * 0.006));
  }

  @Test
  void readsOutlinesWithHoles() {
    Drawing d = Drawing.ifc4();
    String outer = d.polyline(p(0, 0), p(4, 0), p(4, 3), p(0, 3), p(0, 0));
    String hole = d.polyline(p(1, 1), p(2, 1), p(2, 2), p(1, 2), p(1, 1));
    String circle = d.add("IFCCIRCLE(%s,0.5)", d.add("IFCAXIS2PLACEMENT2D(%s,$)", d.point(3, 1.5)));
    String profile = d.add("IFCARBITRARYPROFILEDEFWITHVOIDS(.AREA.,$,%s,(%s,%s))", outer, hole, circle);
    assertThat(area(d, profile)).isCloseTo(12 - 1 - Math.PI / 4, within(1e-3));
  }

  @Test
  void scalesAndMirrorsDerivedProfiles() {
    Drawing d = Drawing.ifc4();
    String base = d.closedProfile(d.polyline(p(0, 0), p(2, 0), p(0, 1), p(0, 0)));
    String operator = d.add("IFCCARTESIANTRANSFORMATIONOPERATOR2D($,$,%s,2.)", d.point(5, 0));
    String derived = d.add("IFCDERIVEDPROFILEDEF(.AREA.,$,%s,%s,$)", base, operator);
    String mirrored = d.add("IFCMIRROREDPROFILEDEF(.AREA.,$,%s,*,$)", derived);
    d.roof(d.extruded(mirrored, 2));
    var body = d.body();
    assertThat(Drawing.sectionArea(body, 1)).isCloseTo(4, within(1e-9));
    assertThat(body.bounds().minX()).isCloseTo(-9, within(1e-9));
    assertThat(body.bounds().maxX()).isCloseTo(-5, within(1e-9));
  }

  @Test
  void addsUpCompositeProfilesWithoutCountingTwice() {
    Drawing d = Drawing.ifc4();
    String a = d.closedProfile(d.polyline(p(0, 0), p(2, 0), p(2, 1), p(0, 1), p(0, 0)));
    String b = d.closedProfile(d.polyline(p(1, 0), p(3, 0), p(3, 1), p(1, 1), p(1, 0)));
    assertThat(area(d, d.add("IFCCOMPOSITEPROFILEDEF(.AREA.,$,(%s,%s),$)", a, b))).isCloseTo(3, within(1e-9));
  }

  /** A mitred strip's area is its thickness times the length of its centre line. */
  @Test
  void thickensCentreLines() {
    Drawing d = Drawing.ifc4();
    String line = d.polyline(p(0, 0), p(3, 0), p(3, 2));
    assertThat(area(d, d.add("IFCCENTERLINEPROFILEDEF(.AREA.,$,%s,0.2)", line))).isCloseTo(1.0, within(1e-9));
    Drawing e = Drawing.ifc4();
    String square = e.polyline(p(0, 0), p(3, 0), p(3, 3), p(0, 3), p(0, 0));
    assertThat(area(e, e.add("IFCCENTERLINEPROFILEDEF(.AREA.,$,%s,0.2)", square))).isCloseTo(2.4, within(1e-9));
  }
}
