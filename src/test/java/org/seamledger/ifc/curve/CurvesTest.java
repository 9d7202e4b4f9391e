package org.seamledger.ifc.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.ifc.Drawing.p;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.ifc.Drawing;

/** Curves as outlines, against the areas that they go round (closed forms of plane geometry). */
class CurvesTest {

  private static double area(Drawing d, String curve) {
    d.roof(d.extruded(d.closedProfile(curve), 1));
    return Drawing.sectionArea(d.body(), 0.5);
  }

  private static String at(Drawing d, double x, double y) {
    return d.add("IFCAXIS2PLACEMENT2D(%s,$)", d.point(x, y));
  }

  private static String segment(Drawing d, String curve, boolean same) {
    return d.add("IFCCOMPOSITECURVESEGMENT(.CONTINUOUS.,%s,%s)", same ? ".T." : ".F.", curve);
  }

  /** A half disk of radius 2: the arc trimmed in every way the schema has, and a straight line back. */
  @ParameterizedTest
  @CsvSource({
      "IFCPARAMETERVALUE(0.), IFCPARAMETERVALUE(3.141592653589793), .T., .PARAMETER., .T.",
      "IFCPARAMETERVALUE(3.141592653589793), IFCPARAMETERVALUE(0.), .F., .PARAMETER., .F.",
      "start, end, .T., .CARTESIAN., .T.",
      "end, start, .F., .CARTESIAN., .F.",
      "'IFCPARAMETERVALUE(0.),start', 'end,IFCPARAMETERVALUE(3.141592653589793)', .T., .UNSPECIFIED., .T."})
  void trimsArcs(String from, String to, String sense, String master, String same) {
    Drawing d = Drawing.ifc4();
    String circle = d.add("IFCCIRCLE(%s,2.)", at(d, 0, 0));
    String start = d.point(2, 0);
    String end = d.point(-2, 0);
    String arc = d.add("IFCTRIMMEDCURVE(%s,(%s),(%s),%s,%s)", circle, from.replace("start", start).replace("end", end),
        to.replace("start", start).replace("end", end), sense, master);
    String back = d.add("IFCPOLYLINE((%s,%s))", end, start);
    String whole = d.add("IFCCOMPOSITECURVE((%s,%s),.F.)", segment(d, arc, same.equals(".T.")), segment(d, back, true));
    assertThat(area(d, whole)).isCloseTo(2 * Math.PI, within(2 * Math.PI * 8e-4));
  }

  @Test
  void readsTrimmingAnglesInTheModelsUnit() {
    Drawing d = Drawing.ifc4();
    String radian = d.add("IFCSIUNIT(*,.PLANEANGLEUNIT.,$,.RADIAN.)");
    String factor = d.add("IFCMEASUREWITHUNIT(IFCPLANEANGLEMEASURE(0.017453292519943295),%s)", radian);
    d.unit(String.format("IFCCONVERSIONBASEDUNIT(%s,.PLANEANGLEUNIT.,'DEGREE',%s)",
        d.add("IFCDIMENSIONALEXPONENTS(0,0,0,0,0,0,0)"), factor));
    String circle = d.add("IFCCIRCLE(%s,2.)", at(d, 1, 1));
    String arc = d.add("IFCTRIMMEDCURVE(%s,(IFCPARAMETERVALUE(90.)),(IFCPARAMETERVALUE(180.)),.T.,.PARAMETER.)", circle);
    String line = d.polyline(p(-1, 1), p(1, 1), p(1, 3));
    String whole = d.add("IFCCOMPOSITECURVE((%s,%s),.F.)", segment(d, arc, true), segment(d, line, true));
    assertThat(area(d, whole)).isCloseTo(Math.PI, within(Math.PI * 8e-4));
  }

  @Test
  void readsEllipses() {
    Drawing d = Drawing.ifc4();
    assertThat(area(d, d.add("IFCELLIPSE(%s,3.,1.)", at(d, 0, 0)))).isCloseTo(3 * Math.PI, within(3 * Math.PI * 8e-4));
  }

  @Test
  void readsIndexedCurvesWithArcs() {
    Drawing d = Drawing.ifc4();
    String points = d.add("IFCCARTESIANPOINTLIST2D(((0.,0.),(4.,0.),(5.,1.),(4.,2.),(0.,2.)))");
    String curve = d.add("IFCINDEXEDPOLYCURVE(%s,(IFCLINEINDEX((1,2)),IFCARCINDEX((2,3,4)),IFCLINEINDEX((4,5,1))),.F.)", points);
    assertThat(area(d, curve)).isCloseTo(8 + Math.PI / 2, within(2e-3));
  }

  @Test
  void readsIndexedCurvesWithoutSegments() {
    Drawing d = Drawing.ifc("IFC4X3");
    String points = d.add("IFCCARTESIANPOINTLIST2D(((0.,0.),(4.,0.),(4.,2.),(0.,0.)),$)");
    assertThat(area(d, d.add("IFCINDEXEDPOLYCURVE(%s,$,$)", points))).isCloseTo(4, within(1e-9));
  }

  /** A rational quadratic B-spline of nine points is an exact circle (The NURBS Book, section 7.5). */
  @Test
  void readsRationalSplines() {
    Drawing d = Drawing.ifc4();
    double[][] square = {p(1, 0), p(1, 1), p(0, 1), p(-1, 1), p(-1, 0), p(-1, -1), p(0, -1), p(1, -1), p(1, 0)};
    String poles = Drawing.list(java.util.Arrays.stream(square).map(d::point).toList());
    String w = Drawing.number(Math.sqrt(0.5));
    String curve = d.add("IFCRATIONALBSPLINECURVEWITHKNOTS(2,%s,.CIRCULAR_ARC.,.T.,.F.,(3,2,2,2,3),(0.,1.,2.,3.,4.),.UNSPECIFIED.,"
        + "(1.,%s,1.,%s,1.,%s,1.,%s,1.))", poles, w, w, w, w);
    assertThat(area(d, curve)).isCloseTo(Math.PI, within(Math.PI * 1e-3));
  }

  /** The area under the parabola y = x² from 0 to 1 is a third (Archimedes). */
  @Test
  void readsBezierCurvesOfTheOldSchema() {
    Drawing d = Drawing.ifc("IFC2X3");
    String poles = Drawing.list(d.point(0, 0), d.point(0.5, 0), d.point(1, 1));
    String parabola = d.add("IFCBEZIERCURVE(2,%s,.PARABOLIC_ARC.,.F.,.F.)", poles);
    String back = d.polyline(p(1, 1), p(1, 0), p(0, 0));
    String whole = d.add("IFCCOMPOSITECURVE((%s,%s),.F.)", segment(d, parabola, true), segment(d, back, true));
    assertThat(area(d, whole)).isCloseTo(1.0 / 3, within(5e-4));
  }

  @Test
  void trimsLinesByParameterAndPoint() {
    Drawing d = Drawing.ifc4();
    String vector = d.add("IFCVECTOR(%s,2.)", d.direction(1, 0));
    String line = d.add("IFCLINE(%s,%s)", d.point(0, 0), vector);
    // The vector is 2 long, so the parameter 1.5 lies at x = 3.
    String bottom = d.add("IFCTRIMMEDCURVE(%s,(IFCPARAMETERVALUE(0.)),(IFCPARAMETERVALUE(1.5)),.T.,.PARAMETER.)", line);
    String rest = d.polyline(p(3, 0), p(3, 2), p(0, 2), p(0, 0));
    String whole = d.add("IFCCOMPOSITECURVE((%s,%s),.F.)", segment(d, bottom, true), segment(d, rest, true));
    assertThat(area(d, whole)).isCloseTo(6, within(1e-9));
  }

  @Test
  void offsetsCurves() {
    Drawing d = Drawing.ifc4();
    String square = d.polyline(p(0, 0), p(4, 0), p(4, 4), p(0, 4), p(0, 0));
    assertThat(area(d, d.add("IFCOFFSETCURVE2D(%s,0.5,.F.)", square))).isCloseTo(9, within(1e-9));
  }
}
