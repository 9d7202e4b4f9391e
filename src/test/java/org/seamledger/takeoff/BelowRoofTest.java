package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.finding.Finding;
import org.seamledger.ifc.Drawing;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.progress.Progress;

/** Doors, rooms and walls below a roof, in small models whose distances are drawn by hand. */
class BelowRoofTest {

  @TempDir
  private Path folder;

  /** By the names that authors of models give; common practice, no source. */
  @ParameterizedTest
  @CsvSource({"Copper sheet; Plywood, COPPER", "Stehfalz Kupfer 0.6, COPPER", "galvanised steel, GALVANIZED_STEEL",
      "Alu-Zink, ALUMINIUM_ZINC_STEEL", "Aluminium, ALUMINIUM", "zinc, ZINC", "leadership, ", "Concrete; Tiles, "})
  void metalsByName(String names, String metal) {
    assertThat(String.valueOf((Object) MetalNames.named(names))).isEqualTo(String.valueOf((Object) metal));
  }

  /**
   * A shed roof of 30° over x from 0 to 6 m and y from 0 to 10 m, low edge at x = 0 and z = 3 m; a wall 0.3 m thick that begins
   * {@code overhang} behind that edge; in it, or {@code doorBehind} it, a door.
   */
  private static Drawing shed(double overhang, double doorBehind, boolean turned, String material) {
    Drawing d = Drawing.ifc4();
    double rise = 6 * Math.tan(Math.toRadians(30));
    String profile = d.closedProfile(d.polyline(Drawing.p(0, 3), Drawing.p(6, 3 + rise), Drawing.p(6, 2.8 + rise), Drawing.p(0, 2.8),
        Drawing.p(0, 3)));
    // Profile x along the world's x, profile y up: extruded along −y from y = 10.
    String solid = d.add("IFCEXTRUDEDAREASOLID(%s,%s,%s,10.)", profile, d.axes(d.point(0, 10, 0), d.direction(0, -1, 0),
        d.direction(1, 0, 0)), d.direction(0, 0, 1));
    String roof = d.roof(solid);
    if (!material.isEmpty()) {
      d.add("IFCRELASSOCIATESMATERIAL('%s',$,$,$,(%s),%s)", d.id(), roof, d.add("IFCMATERIAL('%s',$,$)", material));
    }
    String wall = box(d, "IFCWALL", ",$,$", overhang + 0.15, 5, 0, 0.3, 10, 3);
    double x = overhang + 0.15 + doorBehind;
    String opening = box(d, "IFCOPENINGELEMENT", ",$,$", x, 5, 0, turned ? 1 : 0.3, turned ? 0.3 : 1, 2.1);
    String door = d.product("IFCDOOR", d.placement("$", d.at(x, 5, 0)), "$", ",$,$,$,$,$,$");
    d.add("IFCRELVOIDSELEMENT('%s',$,$,$,%s,%s)", d.id(), wall, opening);
    d.add("IFCRELFILLSELEMENT('%s',$,$,$,%s,%s)", d.id(), opening, door);
    box(d, "IFCSPACE", ",$,.ELEMENT.,.INTERNAL.,$", 3, 5, 0, 4, 8, 2.5);
    box(d, "IFCSPACE", ",$,.ELEMENT.,.EXTERNAL.,$", -3, 5, 0, 4, 8, 2.5);
    return d;
  }

  private static String box(Drawing d, String keyword, String rest, double x, double y, double z, double dx, double dy, double dz) {
    return d.product(keyword, d.placement("$", d.at(x, y, z)), d.shape("SweptSolid", d.extruded(d.rectangle(dx, dy), dz)), rest);
  }

  private List<Finding> snow(Drawing d) throws IOException {
    return analyse(d, "{}").findings().stream().filter(f -> f.code().equals("snow/over-entry")).toList();
  }

  private Takeoff analyse(Drawing d, String system) throws IOException {
    Path model = Files.writeString(folder.resolve("shed.ifc"), d.text());
    Optional<Path> file = Optional.of(Files.writeString(folder.resolve("s.json"), system));
    return Analysis.run(Inputs.ofFiles(List.of(model)).withSystem(file), Progress.NONE);
  }

  @Test
  void doorsAndRoomsOfTheModelAreRead() {
    List<Element> below = shed(0.6, 0, false, "").read().below();
    assertThat(below).extracting(Element::category).containsExactly(Category.DOOR, Category.SPACE);
    // The door takes the hole's place: it has no body of its own here.
    assertThat(below.get(0).bounds().maxZ()).isEqualTo(2.1);
  }

  @Test
  void snowSlidesOnADoorInTheWallBehindTheEave() throws IOException {
    List<Finding> found = snow(shed(0.6, 0, false, ""));
    assertThat(found).singleElement().satisfies(f -> {
      assertThat(f.message()).isEqualTo("snow and ice slide from this eave on doors below it: 1");
      assertThat(f.elements()).hasSize(2);
    });
  }

  /** One stands in an inner wall, the other in a wall square to the eave. */
  @ParameterizedTest
  @CsvSource({"1.5, false", "0, true"})
  void notOnOtherDoors(double behind, boolean turned) throws IOException {
    assertThat(snow(shed(0.6, behind, turned, ""))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0.3048", "0.6"})
  void iceBarrierReachesInsideTheWall(double overhang) throws IOException {
    Takeoff t = analyse(shed(overhang, 0, false, ""), "{\"site\": {\"iceBarrier\": true}}");
    // Level, overhang and wall of 0.3 m and 24 in; along 30° that over the cosine; 10 m long (R905.1.2).
    String area = MeasureFormat.plain(10 * (overhang + 0.3 + 0.6096) / Math.cos(Math.toRadians(30)), 1) + " m²";
    assertThat(t.findings()).filteredOn(f -> f.code().equals("ice/barrier")).singleElement()
        .satisfies(f -> assertThat(f.message()).contains(area, "no wall is in the model for 0"));
  }

  @Test
  void metalOfTheModel() {
    assertThat(shed(0.6, 0, false, "Copper, standing seam").read().roofs().get(0).properties()).containsEntry(Element.MATERIALS,
        "Copper, standing seam");
  }
}
