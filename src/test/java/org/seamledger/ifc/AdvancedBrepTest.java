package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.ifc.Drawing.list;
import static org.seamledger.ifc.Drawing.number;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Solid;

/** Bodies bounded by curved faces, against the volumes of their closed forms. */
@Tag("slow")
class AdvancedBrepTest {

  private final Drawing d = Drawing.ifc4();

  private String vertex(double x, double y, double z) {
    return d.add("IFCVERTEXPOINT(%s)", d.point(x, y, z));
  }

  private String line(String from, String to) {
    return d.add("IFCEDGECURVE(%s,%s,%s,.T.)", from, to,
        d.add("IFCLINE(%s,%s)", d.point(0, 0, 0), d.add("IFCVECTOR(%s,1.)", d.direction(0, 0, 1))));
  }

  private String circle(double x, double y, double z, double r) {
    return d.add("IFCCIRCLE(%s,%s)", d.at(x, y, z), number(r));
  }

  private String arc(String from, String to, String circle) {
    return d.add("IFCEDGECURVE(%s,%s,%s,.T.)", from, to, circle);
  }

  private String along(String edge) {
    return d.add("IFCORIENTEDEDGE(*,*,%s,.T.)", edge);
  }

  private String against(String edge) {
    return d.add("IFCORIENTEDEDGE(*,*,%s,.F.)", edge);
  }

  private String face(String surface, boolean same, String[]... loops) {
    List<String> bounds = new ArrayList<>();
    for (String[] loop : loops) {
      bounds.add(d.add("IFCFACEBOUND(%s,.T.)", d.add("IFCEDGELOOP(%s)", list(loop))));
    }
    return d.add("IFCADVANCEDFACE(%s,%s,%s)", list(bounds), surface, same ? ".T." : ".F.");
  }

  private String plane(double z, boolean up) {
    return d.add("IFCPLANE(%s)", d.axes(d.point(0, 0, z), d.direction(0, 0, up ? 1 : -1), d.direction(1, 0, 0)));
  }

  private void assertVolume(double expected, double relative, String... faces) {
    d.roof(d.add("IFCADVANCEDBREP(%s)", d.add("IFCCLOSEDSHELL(%s)", list(faces))));
    Solid body = d.body();
    assertThat(((Mesh) body).isClosed()).isTrue();
    assertThat(((Mesh) body).volume()).isCloseTo(expected, within(expected * relative));
    assertThat(Drawing.volume(body)).isCloseTo(expected, within(expected * (relative + 1e-3)));
  }

  /** The side of a cylinder, its loop cut open along a seam that it follows twice. */
  @Test
  void readsCylindersWithASeam() {
    String low = vertex(1, 0, 0);
    String high = vertex(1, 0, 3);
    String bottom = arc(low, low, circle(0, 0, 0, 1));
    String top = arc(high, high, circle(0, 0, 3, 1));
    String seam = line(low, high);
    String side = d.add("IFCCYLINDRICALSURFACE(%s,1.)", d.at(0, 0, 0));
    assertVolume(3 * Math.PI, 1e-3,
        face(side, true, new String[] {along(bottom), along(seam), against(top), against(seam)}),
        face(plane(0, false), true, new String[] {against(bottom)}),
        face(plane(3, true), true, new String[] {along(top)}));
  }

  /** The same with two loops that go round and no seam; also a hollow one. */
  @Test
  void readsCylindersWithTwoLoops() {
    String v = vertex(1, 0, 0);
    String w = vertex(1, 0, 3);
    String bottom = arc(v, v, circle(0, 0, 0, 1));
    String top = arc(w, w, circle(0, 0, 3, 1));
    String vi = vertex(0, 0.5, 0);
    String wi = vertex(-0.5, 0, 3);
    String innerBottom = arc(vi, vi, circle(0, 0, 0, 0.5));
    String innerTop = arc(wi, wi, circle(0, 0, 3, 0.5));
    assertVolume(3 * Math.PI * 0.75, 1.2e-3,
        face(d.add("IFCCYLINDRICALSURFACE(%s,1.)", d.at(0, 0, 0)), true, new String[] {along(bottom)}, new String[] {against(top)}),
        face(d.add("IFCCYLINDRICALSURFACE(%s,0.5)", d.at(0, 0, 0)), false, new String[] {against(innerBottom)},
            new String[] {along(innerTop)}),
        face(plane(0, false), true, new String[] {against(bottom)}, new String[] {along(innerBottom)}),
        face(plane(3, true), true, new String[] {along(top)}, new String[] {against(innerTop)}));
  }

  /** A barrel vault: half a cylinder over a rectangle. */
  @ParameterizedTest
  @ValueSource(strings = {"cylinder", "extrusion", "spline", "revolution"})
  void readsBarrelsOnEverySurfaceThatIsACylinder(String kind) {
    String a = vertex(2, 0, 0);
    String b = vertex(-2, 0, 0);
    String c = vertex(-2, 5, 0);
    String e = vertex(2, 5, 0);
    // Circles about the y-axis, from +x over the top to -x.
    String front = d.add("IFCCIRCLE(%s,2.)", d.axes(d.point(0, 0, 0), d.direction(0, -1, 0), d.direction(1, 0, 0)));
    String back = d.add("IFCCIRCLE(%s,2.)", d.axes(d.point(0, 5, 0), d.direction(0, -1, 0), d.direction(1, 0, 0)));
    String frontArc = arc(a, b, front);
    String backArc = arc(e, c, back);
    String left = line(b, c);
    String right = line(a, e);
    String floorFront = line(a, b);
    String floorBack = line(e, c);
    String vertical = "IFCPLANE(%s)";
    assertVolume(Math.PI * 2 * 5, 1.2e-3,
        face(barrel(kind), true, new String[] {along(right), along(backArc), against(left), against(frontArc)}),
        face(d.add(vertical, d.axes(d.point(0, 0, 0), d.direction(0, -1, 0), d.direction(1, 0, 0))), true,
            new String[] {along(frontArc), against(floorFront)}),
        face(d.add(vertical, d.axes(d.point(0, 5, 0), d.direction(0, 1, 0), d.direction(1, 0, 0))), true,
            new String[] {along(floorBack), against(backArc)}),
        face(plane(0, false), true, new String[] {along(floorFront), along(left), against(floorBack), against(right)}));
  }

  private String barrel(String kind) {
    String axes = d.axes(d.point(0, 0, 0), d.direction(0, 1, 0), d.direction(1, 0, 0));
    switch (kind) {
      case "cylinder" :
        return d.add("IFCCYLINDRICALSURFACE(%s,2.)", axes);
      case "extrusion" :
        String curve = d.add("IFCCIRCLE(%s,2.)", d.add("IFCAXIS2PLACEMENT2D(%s,$)", d.point(0, 0)));
        String profile = d.add("IFCARBITRARYCLOSEDPROFILEDEF(.CURVE.,$,%s)", curve);
        return d.add("IFCSURFACEOFLINEAREXTRUSION(%s,%s,%s,5.)", profile, axes, d.direction(0, 0, 1));
      case "revolution" :
        String generator = d.add("IFCARBITRARYOPENPROFILEDEF(.CURVE.,$,%s)", d.polyline(Drawing.p(2, 0), Drawing.p(2, 5)));
        String axis = d.add("IFCAXIS1PLACEMENT(%s,%s)", d.point(0, 0, 0), d.direction(0, 1, 0));
        return d.add("IFCSURFACEOFREVOLUTION(%s,$,%s)", generator, axis);
      default :
        return halfTurnSpline();
    }
  }

  /** Half a turn as a rational quadratic spline of five points (The NURBS Book, section 7.5), straight the other way. */
  private String halfTurnSpline() {
    double[][] arc = {{2, 0}, {2, 2}, {0, 2}, {-2, 2}, {-2, 0}};
    List<String> rows = new ArrayList<>();
    for (double[] p : arc) {
      rows.add(list(d.point(p[0], 0, p[1]), d.point(p[0], 5, p[1])));
    }
    String w = number(Math.sqrt(0.5));
    return d.add("IFCRATIONALBSPLINESURFACEWITHKNOTS(2,1,%s,.UNSPECIFIED.,.F.,.F.,.F.,(3,2,3),(2,2),(0.,1.,2.),(0.,1.),.UNSPECIFIED.,"
        + "((1.,1.),(%s,%s),(1.,1.),(%s,%s),(1.,1.)))", list(rows), w, w, w, w);
  }

  /** A dome: the loop goes round the pole. */
  @Test
  void readsDomes() {
    String v = vertex(2, 0, 0);
    String rim = arc(v, v, circle(0, 0, 0, 2));
    assertVolume(2 * Math.PI * 8 / 3, 4e-3,
        face(d.add("IFCSPHERICALSURFACE(%s,2.)", d.at(0, 0, 0)), true, new String[] {along(rim)}),
        face(plane(0, false), true, new String[] {against(rim)}));
  }

  /** A wedge cut from a cylinder by a sloping plane through the axis height: V = π r² (mean height). */
  @Test
  void readsCylindersCutByASlopingPlane() {
    String low = vertex(1, 0, 0);
    String high = vertex(1, 0, 3);
    String bottom = arc(low, low, circle(0, 0, 0, 1));
    // The plane z = 2 + x cuts an ellipse with half axes √2 and 1.
    String ellipse = d.add("IFCELLIPSE(%s,%s,1.)", d.axes(d.point(0, 0, 2), d.direction(-1, 0, 1), d.direction(1, 0, 1)),
        number(Math.sqrt(2)));
    String top = arc(high, high, ellipse);
    String seam = line(low, high);
    assertVolume(2 * Math.PI, 1.2e-3,
        face(d.add("IFCCYLINDRICALSURFACE(%s,1.)", d.at(0, 0, 0)), true,
            new String[] {along(bottom), along(seam), against(top), against(seam)}),
        face(plane(0, false), true, new String[] {against(bottom)}),
        face(d.add("IFCPLANE(%s)", d.axes(d.point(0, 0, 2), d.direction(-1, 0, 1), d.direction(1, 0, 1))), true,
            new String[] {along(top)}));
  }
}
