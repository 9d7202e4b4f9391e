package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.ifc.Drawing.list;
import static org.seamledger.ifc.Drawing.number;
import static org.seamledger.ifc.Drawing.p;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec3;

/** Every kind of solid against the volume of its closed form: by the divergence theorem where it is a mesh, and by its sections. */
class SolidsTest {

  private static void assertVolume(Drawing d, double expected, double relative) {
    assertVolume(d, expected, relative, relative + 3e-4);
  }

  private static void assertVolume(Drawing d, double expected, double relative, double bySections) {
    Solid body = d.body();
    if (body instanceof Mesh mesh) {
      assertThat(mesh.isClosed()).isTrue();
      assertThat(mesh.volume()).isCloseTo(expected, within(expected * relative));
    }
    assertThat(Drawing.volume(body)).isCloseTo(expected, within(expected * bySections));
  }

  @Test
  void extrudesObliquely() {
    Drawing d = Drawing.ifc4();
    d.roof(d.add("IFCEXTRUDEDAREASOLID(%s,$,%s,2.)", d.rectangle(4, 3), d.direction(0.6, 0, 0.8)));
    assertVolume(d, 4 * 3 * 2 * 0.8, 1e-9);
    assertThat(d.body().bounds().maxX()).isCloseTo(2 + 1.2, within(1e-9));
  }

  /** Prismatoid: (A + B + 4 M) h / 6. */
  @Test
  void extrudesWithATaper() {
    Drawing d = Drawing.ifc4();
    d.roof(d.add("IFCEXTRUDEDAREASOLIDTAPERED(%s,$,%s,3.,%s)", d.rectangle(4, 4), d.direction(0, 0, 1), d.rectangle(2, 2)));
    assertVolume(d, (16 + 4 + 4 * 9) * 3 / 6.0, 1e-6);
  }

  /** A frustum between circles of different size: π h (R² + R r + r²) / 3. */
  @Test
  void tapersCircles() {
    Drawing d = Drawing.ifc4();
    d.roof(d.add("IFCEXTRUDEDAREASOLIDTAPERED(%s,$,%s,3.,%s)", d.add("IFCCIRCLEPROFILEDEF(.AREA.,$,$,2.)"), d.direction(0, 0, 1),
        d.add("IFCCIRCLEPROFILEDEF(.AREA.,$,$,1.)")));
    assertVolume(d, Math.PI * 3 * (4 + 2 + 1) / 3, 1e-3);
  }

  /** Pappus: the area times the way of its centroid. */
  @Test
  void revolves() {
    for (double angle : new double[] {2 * Math.PI, Math.PI / 2, -Math.PI / 3}) {
      Drawing d = Drawing.ifc4();
      String profile = d.closedProfile(d.polyline(p(3, 0), p(4, 0), p(4, 2), p(3, 2), p(3, 0)));
      String axis = d.add("IFCAXIS1PLACEMENT(%s,%s)", d.point(0, 0, 0), d.direction(0, 1, 0));
      d.roof(d.add("IFCREVOLVEDAREASOLID(%s,%s,%s,%s)", profile, d.at(0, 0, 0), axis, number(angle)));
      assertVolume(d, 2 * 3.5 * Math.abs(angle), 1e-3);
    }
  }

  /** A profile that touches the axis gives a cylinder. */
  @Test
  void revolvesAboutAnEdge() {
    Drawing d = Drawing.ifc4();
    String profile = d.closedProfile(d.polyline(p(0, 0), p(1, 0), p(1, 2), p(0, 2), p(0, 0)));
    String axis = d.add("IFCAXIS1PLACEMENT(%s,%s)", d.point(0, 0, 0), d.direction(0, 1, 0));
    d.roof(d.add("IFCREVOLVEDAREASOLID(%s,%s,%s,%s)", profile, d.at(0, 0, 0), axis, number(2 * Math.PI)));
    assertVolume(d, 2 * Math.PI, 1e-3);
  }

  @Test
  void sweepsDisksAlongBentLines() {
    Drawing d = Drawing.ifc4();
    String line = d.polyline(p(0, 0, 0), p(0, 0, 2), p(3, 0, 2));
    d.roof(d.add("IFCSWEPTDISKSOLID(%s,0.1,$,$,$)", line));
    // The level part lies in a few of the slices only, so the sections say less.
    assertVolume(d, Math.PI * 0.01 * 5, 1.2e-3, 0.01);
    Drawing hollow = Drawing.ifc4();
    String straight = hollow.polyline(p(0, 0, 0), p(1, 1, 2));
    hollow.roof(hollow.add("IFCSWEPTDISKSOLID(%s,0.1,0.05,0.,1.)", straight));
    assertVolume(hollow, Math.PI * (0.01 - 0.0025) * Math.sqrt(6), 1e-3);
  }

  /** Pappus again: a quarter torus of pipe, and a pipe with a rounded corner. */
  @Test
  void sweepsDisksAlongArcs() {
    Drawing d = Drawing.ifc4();
    String circle = d.add("IFCCIRCLE(%s,2.)", d.at(0, 0, 0));
    String arc = d.add("IFCTRIMMEDCURVE(%s,(IFCPARAMETERVALUE(0.)),(IFCPARAMETERVALUE(%s)),.T.,.PARAMETER.)", circle,
        number(Math.PI / 2));
    d.roof(d.add("IFCSWEPTDISKSOLID(%s,0.25,$,$,$)", arc));
    assertVolume(d, Math.PI * 0.0625 * Math.PI, 1.5e-3, 0.01);
    Drawing e = Drawing.ifc4();
    String line = e.polyline(p(0, 0, 0), p(2, 0, 0), p(2, 2, 0));
    e.roof(e.add("IFCSWEPTDISKSOLIDPOLYGONAL(%s,0.1,$,$,$,0.5)", line));
    assertVolume(e, Math.PI * 0.01 * (1.5 + 1.5 + Math.PI / 4), 1.5e-3, 0.01);
  }

  @Test
  void sweepsProfilesWithAFixedReference() {
    Drawing d = Drawing.ifc4();
    String line = d.polyline(p(0, 0, 0), p(5, 0, 0), p(5, 5, 0), p(0, 5, 0), p(0, 0, 0));
    // The profile's x points up, its y to the right of the way: outwards where the way goes round counter-clockwise.
    String profile = d.closedProfile(d.polyline(p(0, 0), p(1, 0), p(1, 0.5), p(0, 0.5), p(0, 0)));
    d.roof(d.add("IFCFIXEDREFERENCESWEPTAREASOLID(%s,$,%s,$,$,%s)", profile, line, d.direction(0, 0, 1)));
    assertVolume(d, 36 - 25, 1e-6);
    assertThat(d.body().bounds()).satisfies(b -> {
      assertThat(b.minX()).isCloseTo(-0.5, within(1e-9));
      assertThat(b.maxZ()).isCloseTo(1, within(1e-9));
    });
  }

  @Test
  void readsPrimitives() {
    Drawing d = Drawing.ifc4();
    d.roof(d.add("IFCBLOCK(%s,1.,2.,3.)", d.at(1, 1, 1)));
    assertVolume(d, 6, 1e-9);
    Drawing pyramid = Drawing.ifc4();
    pyramid.roof(pyramid.add("IFCRECTANGULARPYRAMID(%s,2.,3.,4.)", pyramid.at(0, 0, 0)));
    assertVolume(pyramid, 8, 1e-6);
    Drawing cone = Drawing.ifc4();
    cone.roof(cone.add("IFCRIGHTCIRCULARCONE(%s,3.,2.)", cone.at(0, 0, 0)));
    assertVolume(cone, 4 * Math.PI, 1e-3);
    Drawing cylinder = Drawing.ifc4();
    cylinder.roof(cylinder.add("IFCRIGHTCIRCULARCYLINDER(%s,3.,2.)", cylinder.at(0, 0, 0)));
    assertVolume(cylinder, 12 * Math.PI, 1e-3);
    Drawing sphere = Drawing.ifc4();
    sphere.roof(sphere.add("IFCSPHERE(%s,0.5)", sphere.at(0, 0, 0)));
    assertVolume(sphere, Math.PI / 6, 2e-3, 4e-3);
  }

  private static String block(Drawing d, double x, double y, double z, double a, double b, double c) {
    return d.add("IFCBLOCK(%s,%s,%s,%s)", d.at(x, y, z), number(a), number(b), number(c));
  }

  @Test
  void combinesBooleans() {
    for (String[] c : new String[][] {{"UNION", "15"}, {"INTERSECTION", "1"}, {"DIFFERENCE", "7"}}) {
      Drawing d = Drawing.ifc4();
      String a = block(d, 0, 0, 0, 2, 2, 2);
      String b = block(d, 1, 1, 1, 2, 2, 2);
      d.roof(d.add("IFCCSGSOLID(%s)", d.add("IFCBOOLEANRESULT(.%s.,%s,%s)", c[0], a, b)));
      assertVolume(d, Double.parseDouble(c[1]), 1e-4);
    }
  }

  /** Tools that are Boolean results themselves: 8 − (8 ∩ 8 − …) by inclusion and exclusion. */
  @Test
  void nestsBooleansInBothOperands() {
    Drawing d = Drawing.ifc4();
    String tool = d.add("IFCBOOLEANRESULT(.DIFFERENCE.,%s,%s)", block(d, 0, 0, 0, 1, 2, 2), block(d, 0, 0, 0, 1, 1, 1));
    d.roof(d.add("IFCBOOLEANRESULT(.UNION.,%s,%s)",
        d.add("IFCBOOLEANRESULT(.DIFFERENCE.,%s,%s)", block(d, 0, 0, 0, 2, 2, 2), tool), block(d, 3, 0, 0, 1, 1, 1)));
    assertVolume(d, 8 - (4 - 1) + 1, 1e-4);
  }

  private static String plane(Drawing d, double z, double nx, double nz) {
    return d.add("IFCPLANE(%s)", d.axes(d.point(0, 0, z), d.direction(nx, 0, nz), d.direction(nz, 0, -nx)));
  }

  /** A true AgreementFlag means that the material lies where the normal does not point to, so that much is taken away. */
  @Test
  void clipsByHalfSpacesOnTheSideThatTheFlagSays() {
    for (boolean agrees : new boolean[] {true, false}) {
      for (String half : new String[] {"IFCHALFSPACESOLID(%s,%s)", "IFCBOXEDHALFSPACE(%s,%s,%s)"}) {
        Drawing d = Drawing.ifc("IFC2X3");
        String plane = plane(d, 1.5, 0, 1);
        String box = d.add("IFCBOUNDINGBOX(%s,1.,1.,1.)", d.point(0, 0, 0));
        String tool = d.add(half, plane, agrees ? ".T." : ".F.", box);
        d.roof(d.add("IFCBOOLEANCLIPPINGRESULT(.DIFFERENCE.,%s,%s)", d.extruded(d.rectangle(2, 2), 2), tool));
        assertVolume(d, agrees ? 2 : 6, 1e-4);
      }
    }
  }

  @Test
  void clipsByBoundedHalfSpacesInsideTheBoundaryOnly() {
    Drawing d = Drawing.ifc("IFC2X3");
    String boundary = d.polyline(p(0, 0), p(1, 0), p(1, 1), p(0, 1), p(0, 0));
    String tool = d.add("IFCPOLYGONALBOUNDEDHALFSPACE(%s,.F.,%s,%s)", plane(d, 1.5, 0, 1), d.at(0, 0, -7), boundary);
    d.roof(d.add("IFCBOOLEANCLIPPINGRESULT(.DIFFERENCE.,%s,%s)", d.extruded(d.rectangle(4, 4), 2), tool));
    assertVolume(d, 32 - 0.5, 1e-4);
  }

  /** Authoring tools write one clipping inside the other; five thousand must neither overflow a stack nor take long. */
  @Test
  void followsClippingsNestedThousandsDeep() {
    Drawing d = Drawing.ifc("IFC2X3");
    String body = d.extruded(d.rectangle(2, 2), 2);
    List<String> planes = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      planes.add(plane(d, 1 + i * 0.1, 0, 1));
    }
    for (int i = 0; i < 5000; i++) {
      body = d.add("IFCBOOLEANCLIPPINGRESULT(.DIFFERENCE.,%s,%s)", body, d.add("IFCHALFSPACESOLID(%s,.F.)", planes.get(i % 10)));
    }
    d.roof(body);
    assertThat(Drawing.sectionArea(d.body(), 0.5)).isCloseTo(4, within(1e-6));
    assertThat(Drawing.sectionArea(d.body(), 1.5)).isEqualTo(0);
  }

  private static String brep(Drawing d, double[][] corners, int[][] faces) {
    return d.add("IFCFACETEDBREP(%s)", shell(d, "IFCCLOSEDSHELL", corners, faces));
  }

  private static String shell(Drawing d, String keyword, double[][] corners, int[][] faces) {
    List<String> points = new ArrayList<>();
    for (double[] c : corners) {
      points.add(d.point(c));
    }
    List<String> all = new ArrayList<>();
    for (int[] face : faces) {
      String loop = d.add("IFCPOLYLOOP(%s)", list(java.util.Arrays.stream(face).mapToObj(points::get).toList()));
      all.add(d.add("IFCFACE((%s))", d.add("IFCFACEOUTERBOUND(%s,.T.)", loop)));
    }
    return d.add("%s(%s)", keyword, list(all));
  }

  private static double[][] boxCorners(double x0, double y0, double z0, double x1, double y1, double z1) {
    return new double[][] {{x0, y0, z0}, {x1, y0, z0}, {x1, y1, z0}, {x0, y1, z0}, {x0, y0, z1}, {x1, y0, z1}, {x1, y1, z1}, {x0, y1, z1}};
  }

  private static final int[][] BOX = {{0, 3, 2, 1}, {4, 5, 6, 7}, {0, 1, 5, 4}, {1, 2, 6, 5}, {2, 3, 7, 6}, {3, 0, 4, 7}};

  @Test
  void readsFacetedBreps() {
    Drawing d = Drawing.ifc("IFC2X3");
    d.roof(brep(d, boxCorners(0, 0, 0, 4, 3, 2), BOX));
    assertVolume(d, 24, 1e-9);
  }

  @Test
  void takesVoidsAway() {
    Drawing d = Drawing.ifc("IFC2X3");
    String outer = shell(d, "IFCCLOSEDSHELL", boxCorners(0, 0, 0, 4, 3, 2), BOX);
    String inner = shell(d, "IFCCLOSEDSHELL", boxCorners(1, 1, 0.5, 2, 2, 1.5), BOX);
    d.roof(d.add("IFCFACETEDBREPWITHVOIDS(%s,(%s))", outer, inner));
    assertVolume(d, 23, 1e-4);
  }

  @Test
  void readsSurfaceModels() {
    Drawing d = Drawing.ifc("IFC2X3");
    d.roof(d.add("IFCSHELLBASEDSURFACEMODEL((%s))", shell(d, "IFCCLOSEDSHELL", boxCorners(0, 0, 0, 4, 3, 2), BOX)));
    assertVolume(d, 24, 1e-9);
    Drawing e = Drawing.ifc("IFC2X3");
    e.roof(e.add("IFCFACEBASEDSURFACEMODEL((%s,%s))",
        shell(e, "IFCCONNECTEDFACESET", boxCorners(0, 0, 0, 4, 3, 2), java.util.Arrays.copyOfRange(BOX, 0, 2)),
        shell(e, "IFCCONNECTEDFACESET", boxCorners(0, 0, 0, 4, 3, 2), java.util.Arrays.copyOfRange(BOX, 2, 6))));
    assertVolume(e, 24, 1e-9);
  }

  /** Two bodies in one face set may overlap; one inside the other is a hollow. */
  @Test
  void readsTriangulatedFaceSetsOfSeveralBodies() {
    String square = "(1,3,2),(1,4,3),(5,6,7),(5,7,8),(1,2,6),(1,6,5),(2,3,7),(2,7,6),(3,4,8),(3,8,7),(4,1,5),(4,5,8)";
    for (double shift : new double[] {1, 10}) {
      Drawing d = Drawing.ifc4();
      String points = d.add("IFCCARTESIANPOINTLIST3D((%s,%s))", rows(boxCorners(0, 0, 0, 2, 2, 2)),
          rows(boxCorners(shift, 0, 0, shift + 2, 2, 2)));
      d.roof(d.add("IFCTRIANGULATEDFACESET(%s,$,.T.,(%s,%s),$)", points, square, shifted(square, 8)));
      assertVolume(d, shift == 1 ? 12 : 16, 1e-4);
    }
    Drawing hollow = Drawing.ifc("IFC4X3");
    String points = hollow.add("IFCCARTESIANPOINTLIST3D((%s,%s))", rows(boxCorners(0, 0, 0, 3, 3, 3)), rows(boxCorners(1, 1, 1, 2, 2, 2)));
    hollow.roof(hollow.add("IFCTRIANGULATEDFACESET(%s,.T.,$,(%s,%s),$)", points, square, shifted(square, 8)));
    assertThat(Drawing.volume(hollow.body())).isCloseTo(26, within(1e-3));
  }

  private static String shifted(String triangles, int by) {
    return java.util.regex.Pattern.compile("\\d+").matcher(triangles).replaceAll(m -> "" + (Integer.parseInt(m.group()) + by));
  }

  private static String rows(double[][] points) {
    return String.join(",", java.util.Arrays.stream(points).map(Drawing::numbers).toList());
  }

  @Test
  void readsPolygonalFaceSetsWithHolesAndIndirection() {
    // A frame: the top and bottom faces have a hole, the points are reached through PnIndex backwards.
    double[][] outer = boxCorners(0, 0, 0, 4, 4, 1);
    double[][] inner = boxCorners(1, 1, 0, 3, 3, 1);
    Drawing d = Drawing.ifc4();
    String points = d.add("IFCCARTESIANPOINTLIST3D((%s,%s))", rows(outer), rows(inner));
    List<String> faces = new ArrayList<>();
    faces.add(d.add("IFCINDEXEDPOLYGONALFACEWITHVOIDS((1,4,3,2),((9,10,11,12)))"));
    faces.add(d.add("IFCINDEXEDPOLYGONALFACEWITHVOIDS((5,6,7,8),((13,16,15,14)))"));
    for (int[] side : new int[][] {{1, 2, 6, 5}, {2, 3, 7, 6}, {3, 4, 8, 7}, {4, 1, 5, 8}}) {
      faces.add(d.add("IFCINDEXEDPOLYGONALFACE((%d,%d,%d,%d))", side[0], side[1], side[2], side[3]));
      faces.add(d.add("IFCINDEXEDPOLYGONALFACE((%d,%d,%d,%d))", side[3] + 8, side[2] + 8, side[1] + 8, side[0] + 8));
    }
    d.roof(d.add("IFCPOLYGONALFACESET(%s,.T.,%s,(1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16))", points, list(faces)));
    assertVolume(d, 12, 1e-9);
  }

  @Test
  void mapsItemsScaledMirroredAndUnevenly() {
    String[] operators = {
        "IFCCARTESIANTRANSFORMATIONOPERATOR3D($,$,%s,2.,$)",
        "IFCCARTESIANTRANSFORMATIONOPERATOR3DNONUNIFORM($,$,%s,2.,$,3.,0.5)"};
    double[] expected = {24 * 8, 24 * 3};
    Box3[] boxes = {new Box3(6, -3, 0, 14, 3, 4), new Box3(6, -4.5, 0, 14, 4.5, 1)};
    for (int i = 0; i < 2; i++) {
      Drawing d = Drawing.ifc4();
      String item = mapped(d, d.extruded(d.rectangle(4, 3), 2), d.add(operators[i], d.point(10, 0, 0)));
      d.roof(item);
      assertVolume(d, expected[i], 1e-9);
      assertBox(d.body().bounds(), boxes[i]);
    }
    Drawing d = Drawing.ifc4();
    String wedge = d.extruded(d.closedProfile(d.polyline(p(0, 0), p(2, 0), p(0, 1), p(0, 0))), 1);
    String mirror = d.add("IFCCARTESIANTRANSFORMATIONOPERATOR3D(%s,%s,%s,$,%s)", d.direction(1, 0, 0), d.direction(0, -1, 0),
        d.point(0, 0, 0), d.direction(0, 0, 1));
    d.roof(mapped(d, wedge, mirror));
    assertVolume(d, 1, 1e-9);
    assertBox(d.body().bounds(), new Box3(0, -1, 0, 2, 0, 1));
  }

  private static String mapped(Drawing d, String item, String operator) {
    String context = d.add("IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,$,%s,$)", d.at(0, 0, 0));
    String representation = d.add("IFCSHAPEREPRESENTATION(%s,'Body','SweptSolid',(%s))", context, item);
    String map = d.add("IFCREPRESENTATIONMAP(%s,%s)", d.at(0, 0, 0), representation);
    return d.add("IFCMAPPEDITEM(%s,%s)", map, operator);
  }

  /** One box, 4 × 3 × 2 m with a corner in the origin, in every way to write it: the same section with a sloping plane. */
  @Test
  void givesTheSameSectionsHoweverABoxIsModelled() {
    List<java.util.function.Function<Drawing, String>> ways = List.of(
        d -> block(d, 0, 0, 0, 4, 3, 2),
        d -> d.add("IFCEXTRUDEDAREASOLID(%s,%s,%s,2.)", d.rectangle(4, 3), d.at(2, 1.5, 0), d.direction(0, 0, 1)),
        d -> d.add("IFCEXTRUDEDAREASOLID(%s,%s,%s,4.)", d.rectangle(3, 2),
            d.axes(d.point(0, 1.5, 1), d.direction(1, 0, 0), d.direction(0, 1, 0)), d.direction(0, 0, 1)),
        d -> brep(d, boxCorners(0, 0, 0, 4, 3, 2), BOX),
        d -> d.add("IFCSHELLBASEDSURFACEMODEL((%s))", shell(d, "IFCOPENSHELL", boxCorners(0, 0, 0, 4, 3, 2), BOX)),
        d -> d.add("IFCTRIANGULATEDFACESET(%s,$,$,((1,3,2),(1,4,3),(5,6,7),(5,7,8),(1,2,6),(1,6,5),(2,3,7),(2,7,6),(3,4,8),(3,8,7),"
            + "(4,1,5),(4,5,8)),$)", d.add("IFCCARTESIANPOINTLIST3D((%s))", rows(boxCorners(0, 0, 0, 4, 3, 2)))),
        d -> d.add("IFCBOOLEANCLIPPINGRESULT(.DIFFERENCE.,%s,%s)", block(d, 0, 0, 0, 4, 3, 5),
            d.add("IFCHALFSPACESOLID(%s,.F.)", plane(d, 2, 0, 1))),
        d -> d.add("IFCBOOLEANRESULT(.UNION.,%s,%s)", block(d, 0, 0, 0, 2, 3, 2), block(d, 1.5, 0, 0, 2.5, 3, 2)),
        d -> mapped(d, block(d, 0, 0, 0, 2, 1.5, 1), d.add("IFCCARTESIANTRANSFORMATIONOPERATOR3D($,$,%s,2.,$)", d.point(0, 0, 0))),
        d -> d.add("IFCFIXEDREFERENCESWEPTAREASOLID(%s,%s,%s,$,$,%s)", d.rectangle(2, 3), d.at(0, 0, 0),
            d.polyline(p(0, 1.5, 1), p(1, 1.5, 1), p(4, 1.5, 1)), d.direction(0, 0, 1)));
    Plane sloping = Plane.through(new Vec3(2, 1.5, 1), new Vec3(-0.3, 0.1, 1));
    Region window = Region.rectangle(-20, -20, 20, 20);
    for (java.util.function.Function<Drawing, String> way : ways) {
      Drawing d = Drawing.ifc4();
      d.roof(way.apply(d));
      Region section = d.body().section(sloping, 1e-6, SectionSide.BELOW, window);
      // The plane leaves the box through its four upright sides only: plan area over the cosine of the slope.
      assertThat(section.area()).isCloseTo(12 * Math.sqrt(1 + 0.09 + 0.01), within(1e-5));
      assertThat(section.perimeter()).isCloseTo(2 * (4 * Math.hypot(1, 0.3) + 3 * Math.hypot(1, 0.1)), within(1e-5));
    }
  }

  private static void assertBox(Box3 b, Box3 e) {
    assertThat(new double[] {b.minX(), b.minY(), b.minZ(), b.maxX(), b.maxY(), b.maxZ()})
        .containsExactly(new double[] {e.minX(), e.minY(), e.minZ(), e.maxX(), e.maxY(), e.maxZ()}, within(1e-9));
  }
}
