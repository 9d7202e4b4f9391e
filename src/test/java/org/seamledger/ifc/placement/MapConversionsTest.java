package org.seamledger.ifc.placement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.Drawing;
import org.seamledger.ifc.entity.Findings;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.ifc.entity.Model;
import org.seamledger.progress.Progress;
import org.seamledger.site.MapConversion;
import org.seamledger.source.ByteArrayChannel;
import org.seamledger.step.StepFile;

/**
 * Ways in which models state where they lie in a map. Expected places are worked by hand from ISO 16739-1 (IfcMapConversion,
 * IfcMapConversionScaled, IfcRigidOperation); the property sets of IFC2X3 are common practice.
 */
class MapConversionsTest {

  private final Findings findings = new Findings();

  private Optional<MapConversion> read(Drawing d) {
    try (StepFile file = StepFile.open(new ByteArrayChannel(d.text().getBytes(StandardCharsets.UTF_8)), "m.ifc", Progress.NONE)) {
      return MapConversions.of(new Model(new IfcInput(file, "m.ifc"), 0, findings));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void assertAt(Optional<MapConversion> m, Vec3 world, double e, double n, double h) {
    Vec3 p = m.orElseThrow().toMap(world);
    assertThat(p.x()).isCloseTo(e, within(1e-7));
    assertThat(p.y()).isCloseTo(n, within(1e-7));
    assertThat(p.z()).isCloseTo(h, within(1e-7));
  }

  private static String context(Drawing d, String type) {
    return d.add("IFCGEOMETRICREPRESENTATIONCONTEXT($,'" + type + "',3,1.E-5,%s,$)", d.at(0, 0, 0));
  }

  private static String crs(Drawing d, String unit) {
    return d.add("IFCPROJECTEDCRS('EPSG:2169',$,$,$,$,$,%s)", unit);
  }

  private static String metre(Drawing d) {
    return d.add("IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.)");
  }

  private static Drawing millimetres(String schema) {
    return Drawing.inUnit(schema, "IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.)");
  }

  /** Whatever the writer made of the scale between millimetres and metres, 1 m along x is 1 m along the map's (0, 1): north. */
  @ParameterizedTest
  @CsvSource({"0.001, 0", "$, 1", "1., 1", "1000., 1"})
  void scaleIsReadInTheOneWayThatMakesAMetreAMetre(String scale, int told) {
    Drawing d = millimetres("IFC4");
    d.add("IFCMAPCONVERSION(%s,%s,76670.,77179.,293.7,0.,1.,%s)", context(d, "Model"), crs(d, metre(d)), scale);
    assertAt(read(d), Vec3.X, 76670, 77180, 293.7);
    assertThat(findings.all()).hasSize(told).allSatisfy(f -> assertThat(f.code()).isEqualTo("models/map-scale"));
  }

  /** Without a unit of its own the map is in the project's: 76670 m in millimetres. */
  @Test
  void aMapWithoutAUnitIsInTheProjects() {
    Drawing d = millimetres("IFC4X3");
    d.add("IFCMAPCONVERSION(%s,%s,76670000.,0.,0.,$,$,$)", context(d, "Model"), crs(d, "$"));
    assertAt(read(d), Vec3.X, 76671, 0, 0);
  }

  /** A grid's own factor, 0.9996, stays. */
  @Test
  void aGridFactorIsKept() {
    Drawing d = Drawing.ifc4();
    d.add("IFCMAPCONVERSION(%s,%s,0.,0.,0.,1.,0.,0.9996)", context(d, "Model"), crs(d, metre(d)));
    assertAt(read(d), new Vec3(100, 0, 10), 99.96, 0, 9.996);
    assertThat(findings.all()).isEmpty();
  }

  /** Millimetres to metres by Scale, then a factor an axis: (2, 3) m become (1.998, 3.003) m, 4 m high 4 m. */
  @Test
  void factorsOfAnAxis() {
    Drawing d = millimetres("IFC4X3_ADD2");
    d.add("IFCMAPCONVERSIONSCALED(%s,%s,10.,20.,30.,1.,0.,0.001,0.999,1.001,1.)", context(d, "Model"), crs(d, metre(d)));
    assertAt(read(d), new Vec3(2, 3, 4), 11.998, 23.003, 34);
  }

  @Test
  void aRigidOperationMovesOnly() {
    Drawing d = Drawing.ifc("IFC4X3_ADD2");
    d.add("IFCRIGIDOPERATION(%s,%s,IFCLENGTHMEASURE(400000.),IFCLENGTHMEASURE(5000000.),7.)", context(d, "Model"), crs(d, metre(d)));
    assertAt(read(d), new Vec3(1, 2, 3), 400_001, 5_000_002, 10);
  }

  /** By angles on the globe nothing can be placed without a projection. */
  @Test
  void aRigidOperationByAnglesIsRefusedWithAFinding() {
    Drawing d = Drawing.ifc("IFC4X3_ADD2");
    d.add("IFCRIGIDOPERATION(%s,%s,IFCPLANEANGLEMEASURE(0.1),IFCPLANEANGLEMEASURE(0.8),7.)", context(d, "Model"),
        d.add("IFCGEOGRAPHICCRS('EPSG:4326',$,$,$,$,$)"));
    assertThat(read(d)).isEmpty();
    assertThat(findings.all()).extracting(Finding::code).containsExactly("models/map-unusable");
  }

  /** Some writers give the plan's context a conversion with other numbers, and name it first. */
  @Test
  void theModelsContextCounts() {
    Drawing d = Drawing.ifc4();
    String crs = crs(d, metre(d));
    d.add("IFCMAPCONVERSION(%s,%s,1.,2.,3.,1.,0.,1.)", context(d, "Plan"), crs);
    String model = context(d, "Model");
    String body = d.add("IFCGEOMETRICREPRESENTATIONSUBCONTEXT('Body','Model',*,*,*,*,%s,$,.MODEL_VIEW.,$)", model);
    d.add("IFCMAPCONVERSION(%s,%s,70.,80.,90.,1.,0.,1.)", body, crs);
    assertAt(read(d), Vec3.ZERO, 70, 80, 90);
  }

  @ParameterizedTest
  @ValueSource(strings = {"IFCMAPCONVERSION(%s,%s,1.,2.,3.,0.,0.,1.)", "IFCMAPCONVERSION(%s,%s,$,2.,3.,1.,0.,1.)",
      "IFCMAPCONVERSION(%s,%s,1.,2.,3.,1.,0.,0.)", "IFCMAPCONVERSION(%s,%s,1.,2.,3.,1.,0.,-1.)",
      "IFCMAPCONVERSION(%s,%s,'a',2.,3.,1.,0.,1.)",
      "IFCMAPCONVERSION(%s,#9999,1.,2.,3.,1.,0.,1.)/*%s*/", "IFCMAPCONVERSION(%s,%s)"})
  void brokenConversionsAreFindings(String broken) {
    Drawing d = Drawing.ifc4();
    d.add(broken, context(d, "Model"), crs(d, metre(d)));
    assertThat(read(d)).isEmpty();
    assertThat(findings.all()).extracting(Finding::code).containsExactly("models/map-unusable");
  }

  /** Names in any case, numbers as measures, reals or text; the map's unit as a word: 1 ft of model is 0.3048 m. */
  @ParameterizedTest
  @CsvSource({"ePset_MapConversion, IFCREAL(1000.5), IFCREAL(0.3048)", "ePSet_MapConversion, IFCLENGTHMEASURE(1000.5), IFCREAL(0.3048)",
      "EPSET_MAPCONVERSION, IFCTEXT('1000.5'), IFCLABEL('0.3048')"})
  void propertySetsOfIfc2x3(String name, String eastings, String scale) {
    Drawing d = Drawing.withoutUnits("IFC2X3");
    String factor = d.add("IFCMEASUREWITHUNIT(IFCLENGTHMEASURE(0.3048),%s)", metre(d));
    d.unit("IFCCONVERSIONBASEDUNIT(" + d.add("IFCDIMENSIONALEXPONENTS(1,0,0,0,0,0,0)") + ",.LENGTHUNIT.,'FOOT'," + factor + ")");
    set(d, name, property(d, "Eastings", eastings), property(d, "Northings", "IFCREAL(2000.)"),
        property(d, "OrthogonalHeight", "IFCREAL(30.)"),
        property(d, "XAxisAbscissa", "IFCREAL(0.6)"), property(d, "XAxisOrdinate", "IFCREAL(0.8)"), property(d, "Scale", scale));
    set(d, "ePset_ProjectedCRS", property(d, "Name", "IFCLABEL('EPSG:2169')"), property(d, "MapUnit", "IFCLABEL('METRE')"));
    Optional<MapConversion> m = read(d);
    assertAt(m, new Vec3(10, 0, 1), 1006.5, 2008, 31);
    assertThat(m.orElseThrow().crs()).isEqualTo("EPSG:2169");
    assertThat(findings.all()).isEmpty();
  }

  @Test
  void anUnknownMapUnitIsAFinding() {
    Drawing d = Drawing.ifc("IFC2X3");
    set(d, "ePset_MapConversion", property(d, "Eastings", "IFCREAL(1.)"), property(d, "Northings", "IFCREAL(2.)"));
    set(d, "ePset_ProjectedCRS", property(d, "MapUnit", "IFCLABEL('cubit')"));
    assertThat(read(d)).isEmpty();
    assertThat(findings.all()).singleElement().satisfies(f -> assertThat(f.message()).contains("cubit"));
  }

  @Test
  void mostModelsStateNone() {
    assertThat(read(Drawing.ifc4())).isEmpty();
    assertThat(read(Drawing.ifc("IFC2X3"))).isEmpty();
    assertThat(findings.all()).isEmpty();
  }

  private static String property(Drawing d, String name, String value) {
    return d.add("IFCPROPERTYSINGLEVALUE('" + name + "',$," + value + ",$)");
  }

  private static void set(Drawing d, String name, String... properties) {
    d.add("IFCPROPERTYSET('%s',$,'%s',$,%s)", d.id(), name, Drawing.list(properties));
  }
}
