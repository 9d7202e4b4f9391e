package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.ifc.Drawing.number;
import static org.seamledger.ifc.Drawing.p;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.finding.Finding;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;

/** Units, placements, selection and relations, on models made for the purpose; expected values follow from the model by hand. */
class IfcReaderTest {

  private static double volume(Element e) {
    return ((Mesh) e.body().get(0)).volume();
  }

  private static void assertBox(Box3 b, double... e) {
    assertThat(new double[] {b.minX(), b.minY(), b.minZ(), b.maxX(), b.maxY(), b.maxZ()}).containsExactly(e, within(1e-6));
  }

  // Units

  @ParameterizedTest
  @CsvSource({"MILLI, 1000., millimetre", "CENTI, 100., centimetre", "KILO, 0.001, kilometre", "DECI, 10., decimetre"})
  void convertsPrefixedUnits(String prefix, double perMetre, String name) {
    Drawing d = Drawing.inUnit("IFC4", "IFCSIUNIT(*,.LENGTHUNIT.,." + prefix + ".,.METRE.)");
    d.roof(d.extruded(d.rectangle(4 * perMetre, 3 * perMetre), 2 * perMetre));
    Building b = d.read();
    assertThat(b.models().get(0).lengthUnit()).isEqualTo(name);
    assertThat(volume(b.roofs().get(0))).isCloseTo(24, within(1e-6));
  }

  /** An inch of 25.4 mm, given as a factor of another prefixed unit. */
  @Test
  void convertsByAFactorOfItsOwn() {
    Drawing d = Drawing.withoutUnits("IFC2X3");
    String millimetre = d.add("IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)");
    String factor = d.add("IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(25.4),%s)", millimetre);
    d.unit(String.format("IFCCONVERSIONBASEDUNIT(%s,.LENGTHUNIT.,'INCH',%s)", d.add("IFCDIMENSIONALEXPONENTS(1,0,0,0,0,0,0)"), factor));
    d.roof(d.extruded(d.rectangle(100, 100), 100));
    Building b = d.read();
    assertThat(b.models().get(0).lengthUnit()).isEqualTo("inch");
    assertThat(volume(b.roofs().get(0))).isCloseTo(Math.pow(2.54, 3), within(1e-9));
  }

  @Test
  void assumesMetresWithAFinding() {
    Drawing d = Drawing.withoutUnits("IFC4");
    d.roof(d.extruded(d.rectangle(4, 3), 2));
    Building b = d.read();
    assertThat(volume(b.roofs().get(0))).isCloseTo(24, within(1e-9));
    assertThat(b.findings()).extracting(Finding::code).containsExactly("model/no-length-unit");
  }

  // Placements

  @Test
  void nestsPlacements() {
    Drawing d = Drawing.ifc4();
    String site = d.placement("$", d.at(100, 0, 0));
    String turned = d.placement(site, d.axes(d.point(10, 0, 0), d.direction(0, 0, 1), d.direction(0, 1, 0)));
    String own = d.placement(turned, d.at(2, 0, 1));
    d.product("IFCROOF", own, d.shape("SweptSolid", d.extruded(d.rectangle(4, 1), 1)), ",$,$");
    // Turned by a right angle: local x is world y.
    assertBox(d.read().roofs().get(0).bounds(), 109.5, 0, 1, 110.5, 4, 2);
  }

  @Test
  void movesFarSitesNearTheOriginWithoutLosingPrecision() {
    for (boolean inPoints : new boolean[] {false, true}) {
      Drawing d = Drawing.inUnit("IFC4", "IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)");
      double x = 3_512_345_678.5;
      double y = 5_412_345_678.25;
      String placement = d.placement("$", inPoints ? d.at(0, 0, 0) : d.at(x, y, 400_000));
      double px = inPoints ? x : 0;
      double py = inPoints ? y : 0;
      String item = d.add("IFCEXTRUDEDAREASOLID(%s,%s,%s,2000.)", d.rectangle(4000, 3000), d.at(px, py, inPoints ? 400_000 : 0),
          d.direction(0, 0, 1));
      d.product("IFCROOF", placement, d.shape("SweptSolid", item), ",$,$");
      Building b = d.read();
      Box3 box = b.roofs().get(0).bounds();
      assertThat(b.offset().x()).isEqualTo(Math.rint(x / 1000));
      assertThat(box.maxX() - box.minX()).isCloseTo(4, within(2e-9));
      assertThat(box.minX() + b.offset().x()).isCloseTo(x / 1000 - 2, within(2e-9));
      assertThat(box.minY() + b.offset().y()).isCloseTo(y / 1000 - 1.5, within(2e-9));
      assertThat(Math.abs(box.minX())).isLessThan(10);
    }
  }

  @Test
  void reportsPlacementsThatGoRoundInACircle() {
    Drawing d = Drawing.ifc4();
    d.roof(d.extruded(d.rectangle(4, 3), 2));
    int next = Integer.parseInt(d.at(0, 0, 0).substring(1)) + 1;
    String first = d.add("IFCLOCALPLACEMENT(#%d,#%d)", next + 1, next - 1);
    d.add("IFCLOCALPLACEMENT(%s,#%d)", first, next - 1);
    d.product("IFCROOF", first, d.shape("SweptSolid", d.extruded(d.rectangle(1, 1), 1)), ",$,$");
    Building b = d.read();
    assertThat(b.roofs()).hasSize(1);
    assertThat(b.findings()).extracting(Finding::code).containsExactlyInAnyOrder("model/broken-geometry", "roof/without-shape");
  }

  @Test
  void appliesTheContextsWorldCoordinateSystem() {
    Drawing d = Drawing.ifc4();
    String context = d.add("IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-5,%s,$)", d.at(7, 0, 0));
    String sub = d.add("IFCGEOMETRICREPRESENTATIONSUBCONTEXT('Body','Model',*,*,*,*,%s,$,.MODEL_VIEW.,$)", context);
    String shape = d.add("IFCPRODUCTDEFINITIONSHAPE($,$,(%s))",
        d.add("IFCSHAPEREPRESENTATION(%s,'Body','SweptSolid',(%s))", sub, d.extruded(d.rectangle(2, 2), 1)));
    d.product("IFCROOF", d.placement("$", d.at(0, 0, 0)), shape, ",$,$");
    assertBox(d.read().roofs().get(0).bounds(), 6, -1, 0, 8, 1, 1);
  }

  // Representations

  @Test
  void prefersTheBodyAndNeverTakesTheBox() {
    Drawing d = Drawing.ifc("IFC2X3");
    String context = d.add("IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,$,%s,$)", d.at(0, 0, 0));
    String box =
        d.add("IFCSHAPEREPRESENTATION(%s,'Box','BoundingBox',(%s))", context, d.add("IFCBOUNDINGBOX(%s,9.,9.,9.)", d.point(0, 0, 0)));
    String plan = d.add("IFCSHAPEREPRESENTATION(%s,'FootPrint','SweptSolid',(%s))", context, d.extruded(d.rectangle(9, 9), 9));
    String body = d.add("IFCSHAPEREPRESENTATION(%s,'Body','SweptSolid',(%s))", context, d.extruded(d.rectangle(2, 2), 1));
    d.product("IFCROOF", d.placement("$", d.at(0, 0, 0)), d.add("IFCPRODUCTDEFINITIONSHAPE($,$,(%s,%s,%s))", box, plan, body), ",$,$");
    assertBox(d.read().roofs().get(0).bounds(), -1, -1, 0, 1, 1, 1);
  }

  @Test
  void keepsTheGoodItemsOfAShapeAndReportsTheOthers() {
    Drawing d = Drawing.ifc4();
    String good = d.extruded(d.rectangle(4, 3), 2);
    String odd = d.add("IFCSECTIONEDSURFACE($,$,$)");
    String broken = d.extruded(d.closedProfile(d.polyline(p(0, 0), p(2, 2), p(2, 0), p(0, 2), p(0, 0))), 1);
    d.roof(good, odd, broken);
    Building b = d.read();
    assertThat(b.roofs().get(0).body()).hasSize(1);
    assertThat(b.findings()).extracting(Finding::code).containsExactlyInAnyOrder("model/unsupported-geometry", "model/broken-geometry");
    assertThat(b.findings()).allSatisfy(f -> assertThat(f.elements()).containsExactly(b.roofs().get(0).globalId()));
    assertThat(b.findings()).anySatisfy(f -> assertThat(f.message()).contains("IFCSECTIONEDSURFACE " + odd));
    assertThat(b.findings()).anySatisfy(f -> assertThat(f.message()).contains("crosses itself"));
  }

  // Selection

  private static String slab(Drawing d, String name, String type, double x, double z) {
    return d.add("IFCSLAB('%s',$,'%s','',$,%s,%s,$,%s)", d.id(), name, d.placement("$", d.at(x, 0, z)),
        d.shape("SweptSolid", d.extruded(d.rectangle(4, 3), 0.2)), type);
  }

  @Test
  void takesSlabsAndCoveringsTypedByThemselvesOrByTheirType() {
    for (String schema : new String[] {"IFC2X3", "IFC4", "IFC4X3_ADD2"}) {
      Drawing d = Drawing.ifc(schema);
      slab(d, "own", ".ROOF.", 0, 3);
      String byType = slab(d, "by type", ".NOTDEFINED.", 5, 3);
      String type = d.add("IFCSLABTYPE('%s',$,'T',$,$,$,$,$,$,.ROOF.)", d.id());
      d.add("IFCRELDEFINESBYTYPE('%s',$,$,$,(%s),%s)", d.id(), byType, type);
      slab(d, "floor", ".FLOOR.", 0, 0);
      d.add("IFCCOVERING('%s',$,'covering','',$,%s,%s,$,.ROOFING.)", d.id(), d.placement("$", d.at(9, 0, 3)),
          d.shape("SweptSolid", d.extruded(d.rectangle(1, 1), 0.1)));
      assertThat(d.read().roofs()).extracting(Element::name).containsExactlyInAnyOrder("own", "by type", "covering");
    }
  }

  @Test
  void takesPartsOfRoofsAndLeavesTheirRaftersToTheNeighbours() {
    Drawing d = Drawing.ifc4();
    String roof = d.add("IFCROOF('%s',$,'whole','',$,%s,$,$,$)", d.id(), d.placement("$", d.at(0, 0, 0)));
    String slab = slab(d, "slab", ".NOTDEFINED.", 0, 3);
    String layer = d.product("IFCBUILDINGELEMENTPART", d.placement("$", d.at(0, 0, 3.2)),
        d.shape("SweptSolid", d.extruded(d.rectangle(4, 3), 0.1)), ",$,$");
    String rafter =
        d.product("IFCMEMBER", d.placement("$", d.at(0, 0, 3)), d.shape("SweptSolid", d.extruded(d.rectangle(0.1, 3), 0.2)), ",$,$");
    String assembly = d.add("IFCELEMENTASSEMBLY('%s',$,'','',$,$,$,$,$,$)", d.id());
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s,%s))", d.id(), roof, slab, assembly);
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s,%s))", d.id(), assembly, layer, rafter);
    Building b = d.read();
    assertThat(b.roofs()).extracting(Element::ifcClass).containsExactlyInAnyOrder("IfcSlab", "IfcBuildingElementPart");
    assertThat(b.roofs()).filteredOn(e -> e.ifcClass().equals("IfcSlab"))
        .extracting(Element::whole).containsExactly("0000000000000000000001");
    assertThat(b.neighbours()).extracting(Element::ifcClass, Element::category)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("IfcMember", Category.PENETRATION));
    assertThat(b.findings()).isEmpty();
  }

  /** A roof whose own body only repeats its parts counts once; one that differs counts too. */
  @ParameterizedTest
  @CsvSource({"0.2, 1", "0.5, 2"})
  void dropsABodyThatRepeatsTheParts(double thickness, int expected) {
    Drawing d = Drawing.ifc4();
    String roof = d.product("IFCROOF", d.placement("$", d.at(0, 0, 3)),
        d.shape("SweptSolid", d.extruded(d.rectangle(4, 3), thickness)), ",$,$");
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s))", d.id(), roof, slab(d, "slab", ".ROOF.", 0, 3));
    assertThat(d.read().roofs()).hasSize(expected);
  }

  @ParameterizedTest
  @CsvSource({"Roof slab 200, true", "Dachfläche Süd, true", "Steildach, true", "toiture terrasse, false", "Кровля, true",
      "kattopinta, false",
      "vesikatto, true", "Roof drain, false", "Decke Dachgeschoss, false", "Floor, false", "Waterproof layer, false", "Cubierta 1, true",
      "Basic Roof:Generic - 12:129201, true", "střecha, true", "STRECHA, true", "roof-1, true"})
  void knowsRoofsByName(String name, boolean expected) {
    Drawing d = Drawing.ifc4();
    slab(d, "", ".FLOOR.", 50, 0);
    d.add("IFCBUILDINGELEMENTPROXY('%s',$,'%s','',$,%s,%s,$,$)", d.id(), escaped(name), d.placement("$", d.at(0, 0, 3)),
        d.shape("SweptSolid", d.extruded(d.rectangle(4, 3), 0.2)));
    Building b = d.read();
    assertThat(b.roofs()).hasSize(expected ? 1 : 0);
    assertThat(b.findings()).extracting(Finding::code).contains(expected ? "roof/by-name" : "roof/none");
  }

  private static String escaped(String s) {
    StringBuilder out = new StringBuilder();
    for (char c : s.toCharArray()) {
      out.append(c < 128 ? "" + c : String.format("\\X2\\%04X\\X0\\", (int) c));
    }
    return out.toString();
  }

  private static Drawing roofAt3() {
    Drawing d = Drawing.ifc4();
    slab(d, "roof", ".ROOF.", 0, 3);
    return d;
  }

  private static String block(Drawing d, String keyword, double x, double z, double height) {
    return d.product(keyword, d.placement("$", d.at(x, 0, z)), d.shape("SweptSolid", d.extruded(d.rectangle(0.3, 0.3), height)), ",$,$");
  }

  @Test
  void takesNeighboursThatReachTheRoofAndNoOthers() {
    Drawing d = roofAt3();
    block(d, "IFCCHIMNEY", 0, 0, 5);
    block(d, "IFCDUCTSEGMENT", 1, 2, 1.1);
    block(d, "IFCWALL", 2.5, 0, 4);
    // Below, beside, above.
    block(d, "IFCCOLUMN", 0, 0, 2.9);
    block(d, "IFCWALL", 20, 0, 4);
    block(d, "IFCWALL", 0, 9, 4);
    // Never.
    block(d, "IFCRAILING", 0, 3, 1);
    block(d, "IFCFURNISHINGELEMENT", 0, 3, 1);
    block(d, "IFCSANITARYTERMINAL", 0, 3, 1);
    block(d, "IFCSPACE", 0, 0, 5);
    block(d, "IFCVIRTUALELEMENT", 0, 0, 5);
    assertThat(d.read().neighbours()).extracting(Element::ifcClass).containsExactlyInAnyOrder("IfcChimney", "IfcDuctSegment", "IfcWall");
  }

  @Test
  void countsPanelsOfCurtainWallsAsWalls() {
    Drawing d = roofAt3();
    String curtain = d.add("IFCCURTAINWALL('%s',$,'','',$,$,$,$,$)", d.id());
    String plate = block(d, "IFCPLATE", 2, 0, 5);
    String mullion = block(d, "IFCMEMBER", 2, 0, 5);
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s,%s))", d.id(), curtain, plate, mullion);
    Building b = d.read();
    assertThat(b.neighbours()).hasSize(2).allSatisfy(e -> assertThat(e.category()).isEqualTo(Category.WALL));
  }

  @Test
  void takesWindowsOfRoofsAndNotThoseOfWalls() {
    Drawing d = Drawing.ifc4();
    String roof = slab(d, "roof", ".ROOF.", 0, 3);
    String wall = block(d, "IFCWALL", 1, 0, 5);
    String[] windows = new String[2];
    String[] hosts = {roof, wall};
    for (int i = 0; i < 2; i++) {
      String opening = block(d, "IFCOPENINGELEMENT", 0, 2.9, 0.5);
      d.add("IFCRELVOIDSELEMENT('%s',$,$,$,%s,%s)", d.id(), hosts[i], opening);
      windows[i] = d.product("IFCWINDOW", d.placement("$", d.at(0, 0, 3)), d.shape("SweptSolid", d.extruded(d.rectangle(0.3, 0.3), 0.3)),
          ",$,$,$,$,$,$");
      d.add("IFCRELFILLSELEMENT('%s',$,$,$,%s,%s)", d.id(), opening, windows[i]);
    }
    block(d, "IFCOPENINGELEMENT", 0, 2.9, 0.5);
    Building b = d.read();
    assertThat(b.neighbours()).extracting(Element::ifcClass).containsExactlyInAnyOrder("IfcWall", "IfcWindow");
    assertThat(b.roofs().get(0).openings()).singleElement().satisfies(o -> assertThat(o.fillingClass()).isEqualTo("IfcWindow"));
    assertThat(b.neighbours()).filteredOn(e -> e.category() == Category.WALL).allSatisfy(e -> assertThat(e.openings()).isEmpty());
  }

  // Identity and order

  @Test
  void keepsElementsWithTheSameGlobalIdApart() {
    Drawing d = roofAt3();
    String text = d.text();
    String twice = text.replace("ENDSEC;\nEND-ISO", "#901=IFCSLAB('0000000000000000000001',$,'second','',$,#902,#903,$,.ROOF.);\n"
        + "#902=IFCLOCALPLACEMENT($,#904);\n#904=IFCAXIS2PLACEMENT3D(#905,$,$);\n#905=IFCCARTESIANPOINT((0.,0.,0.));\n"
        + text.lines().filter(l -> l.contains("IFCPRODUCTDEFINITIONSHAPE")).findFirst().orElseThrow().replaceFirst("#\\d+", "#903")
        + "\nENDSEC;\nEND-ISO");
    assertThat(Drawing.read(twice).roofs()).extracting(Element::globalId)
        .containsExactly("0000000000000000000001", "0000000000000000000001~2");
  }

  @Test
  void doesNotDependOnTheOrderOfInstances() {
    Drawing d = roofAt3();
    block(d, "IFCCHIMNEY", 0, 0, 5);
    block(d, "IFCWALL", 1.5, 0, 5);
    String[] parts = d.text().split("(?<=DATA;\n)|(?=ENDSEC;\nEND-ISO)");
    Building expected = d.read();
    for (int seed = 0; seed < 5; seed++) {
      List<String> lines = new ArrayList<>(parts[1].lines().toList());
      Collections.shuffle(lines, new Random(seed));
      Building b = Drawing.read(parts[0] + String.join("\n", lines) + "\n" + parts[2]);
      assertThat(b.neighbours().stream().map(IfcReaderTest::fingerprint)).as("seed %d", seed)
          .containsExactlyElementsOf(expected.neighbours().stream().map(IfcReaderTest::fingerprint).toList());
      assertThat(fingerprint(b.roofs().get(0))).isEqualTo(fingerprint(expected.roofs().get(0)));
    }
  }

  private static String fingerprint(Element e) {
    return e.globalId() + " " + e.ifcClass() + " " + e.bounds();
  }

  // Schemas

  @ParameterizedTest
  @ValueSource(strings = {"IFC151", "IFC20_LONGFORM", "IFC4X1", "AUTOMOTIVE_DESIGN", "IFC5"})
  void refusesOtherSchemas(String schema) {
    Drawing d = Drawing.ifc(schema);
    d.roof(d.extruded(d.rectangle(4, 3), 2));
    assertThatThrownBy(d::read).isInstanceOf(UnreadableModelException.class).hasMessageContaining(schema);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"IFC2X_FINAL", "IFC2X2_FINAL", "IFC2X3", "IFC2X3_TC1", "IFC4", "IFC4_ADD2_TC1", "IFC4X3", "IFC4X3_ADD2", "ifc4x3_rc4"})
  void readsTheSchemasInAllTheirEditions(String schema) {
    Drawing d = Drawing.ifc(schema);
    d.roof(d.extruded(d.rectangle(4, 3), 2));
    assertThat(schema.toUpperCase(java.util.Locale.ROOT)).startsWith(d.read().models().get(0).schema());
  }

  // Properties

  @Test
  void readsPropertiesWithTheirUnits() {
    Drawing d = Drawing.inUnit("IFC4", "IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)");
    String roof = d.roof(d.extruded(d.rectangle(4000, 3000), 200));
    String set = d.add("IFCPROPERTYSET('%s',$,'Pset_RoofCommon',$,(%s,%s,%s,%s))", d.id(),
        d.add("IFCPROPERTYSINGLEVALUE('Width',$,IFCPOSITIVELENGTHMEASURE(4000.),$)"),
        d.add("IFCPROPERTYSINGLEVALUE('Own',$,IFCLENGTHMEASURE(4.),%s)", d.add("IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.)")),
        d.add("IFCPROPERTYSINGLEVALUE('Pitch',$,IFCPLANEANGLEMEASURE(%s),$)", number(Math.PI / 6)),
        d.add("IFCPROPERTYSINGLEVALUE('IsExternal',$,IFCBOOLEAN(.T.),$)"));
    String quantities = d.add("IFCELEMENTQUANTITY('%s',$,'Qto_RoofBaseQuantities',$,$,(%s))", d.id(),
        d.add("IFCQUANTITYAREA('GrossArea',$,$,12000000.,$)"));
    d.add("IFCRELDEFINESBYPROPERTIES('%s',$,$,$,(%s),%s)", d.id(), roof, set);
    d.add("IFCRELDEFINESBYPROPERTIES('%s',$,$,$,(%s),%s)", d.id(), roof, quantities);
    assertThat(d.read().roofs().get(0).properties()).containsExactlyEntriesOf(new java.util.TreeMap<>(java.util.Map.of(
        "Pset_RoofCommon.Width", "4", "Pset_RoofCommon.Own", "4", "Pset_RoofCommon.Pitch", "30", "Pset_RoofCommon.IsExternal", "true",
        "Qto_RoofBaseQuantities.GrossArea", "12")));
  }

  @Test
  void takesOpeningsOutOfSlabs() {
    Drawing d = Drawing.ifc4();
    String roof = slab(d, "roof", ".ROOF.", 0, 3);
    d.add("IFCRELVOIDSELEMENT('%s',$,$,$,%s,%s)", d.id(), roof, block(d, "IFCOPENINGELEMENT", 0, 2.9, 0.5));
    Element e = d.read().roofs().get(0);
    assertThat(Drawing.sectionArea(e.solid(), 3.1)).isCloseTo(12 - 0.09, within(1e-6));
  }
}
