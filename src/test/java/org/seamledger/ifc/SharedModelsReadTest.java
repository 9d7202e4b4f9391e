package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.SharedModels;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.finding.Finding;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.geometry.Mesh;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.progress.Progress;
import org.seamledger.step.StepFile;

/** Models that other people's tools wrote, against the quantities that those tools wrote into them. */
@Tag("slow")
class SharedModelsReadTest {

  private static Building read(String... prefixes) throws IOException {
    List<IfcInput> inputs = new ArrayList<>();
    try {
      for (String prefix : prefixes) {
        Path file = SharedModels.named(prefix);
        String name = file.getFileName().toString();
        inputs.add(new IfcInput(StepFile.open(FileChannel.open(file), name, Progress.NONE), name));
      }
      return IfcReader.read(inputs, Progress.NONE);
    } finally {
      for (IfcInput input : inputs) {
        input.file().close();
      }
    }
  }

  private static Element named(Building b, String name) {
    return b.roofs().stream().filter(e -> e.name().equals(name)).findFirst().orElseThrow();
  }

  private static double volume(Element e) {
    return e.body().stream().mapToDouble(s -> ((Mesh) s).volume()).sum();
  }

  /** What the models' headers, projects and SOURCES say of them. */
  @ParameterizedTest
  @CsvSource({
      "d01, IFC4, metre, ARCHICAD-64 20.0.0, 2",
      "d02, IFC2X3, millimetre, ArchiCAD-64 18.0.0, 52",
      "d03, IFC2X3, metre, Autodesk Revit Architecture 2011 2011, 1",
      "d04_, IFC4, millimetre, IFC manager for sketchup 5.3.3, 2",
      "d05, IFC2X3, millimetre, Renga Architecture 2.2.1552.18922, 4",
      "d06, IFC2X3, metre, BricsCAD BIM, 13",
      "d07, IFC2X3, millimetre, FreeCAD 0.15 build3751 (Git), 6",
      "d08, IFC4, metre, Bonsai 0.0.0, 4",
      "d09, IFC4, metre, BlenderBIM 0.0.999999, 5",
      "d10, IFC2X3, millimetre, Autodesk Revit 2015 (ENU) 2015, 4",
      "d11, IFC2X3, foot, Autodesk Revit 2014 (ENU) 2014, 1",
      "d12, IFC4, millimetre, Autodesk Revit 2027 (ENU) 2027, 1",
      "d13, IFC2X3, millimetre, ArchiCAD 14.0 14.0, 2"})
  void readsEveryModel(String prefix, String schema, String unit, String application, int roofs) throws IOException {
    Building b = read(prefix);
    assertThat(b.models()).singleElement().satisfies(m -> {
      assertThat(m.schema()).isEqualTo(schema);
      assertThat(m.lengthUnit()).isEqualTo(unit);
      assertThat(m.application()).isEqualTo(application);
    });
    assertThat(b.roofs()).hasSize(roofs).allSatisfy(e -> assertThat(e.body()).isNotEmpty());
    assertThat(b.findings()).extracting(Finding::code)
        .noneMatch(c -> c.startsWith("model/unsupported") || c.startsWith("model/broken"));
  }

  /** The authoring tool states a volume of 16.5122 m³ for each slab. */
  @Test
  void slabsHaveTheVolumesThatTheirToolStates() throws IOException {
    Building gable = read("d01");
    for (Element slab : gable.roofs()) {
      assertThat(volume(slab)).isCloseTo(16.5122, within(1e-3));
    }
    // Qto_SlabBaseQuantities, NetVolume.
    Building asymmetric = read("d04_");
    assertThat(volume(named(asymmetric, "house - roof - slab left"))).isCloseTo(6.7203, within(1e-3));
    assertThat(volume(named(asymmetric, "house - roof - slab right"))).isCloseTo(9.3635, within(1e-3));
    assertThat(named(asymmetric, "house - roof - slab left").properties().get("Qto_SlabBaseQuantities.NetVolume")).startsWith("6.7203");
  }

  /** GrossArea 175.36709089 m² of an advanced BRep, as stated; half its surface less the edges, so compare the slab's own volume. */
  @Test
  void advancedBrepIsClosedAndItsQuantitiesAreRead() throws IOException {
    Element roof = read("d12").roofs().get(0);
    assertThat(roof.body()).singleElement().satisfies(s -> assertThat(((Mesh) s).isClosed()).isTrue());
    assertThat(Double.parseDouble(roof.properties().get("Qto_RoofBaseQuantities.GrossArea"))).isCloseTo(175.36709089, within(1e-6));
  }

  /** Areas are stated in square millimetres, as that model names no area unit, and in square feet. */
  @Test
  void convertsQuantitiesByTheirMeasure() throws IOException {
    Building renga = read("d05");
    List<Double> areas = renga.roofs().stream().flatMap(e -> e.properties().entrySet().stream())
        .filter(p -> p.getKey().endsWith(".TotalSurfaceArea")).map(p -> Double.parseDouble(p.getValue())).sorted().toList();
    assertThat(areas).hasSize(4);
    assertThat(areas.get(3)).isCloseTo(161.62072853, within(1e-6));
    assertThat(areas.get(2)).isCloseTo(89.76045792, within(1e-6));
    Element feet = read("d11").roofs().get(0);
    String total = feet.properties().entrySet().stream().filter(p -> p.getKey().endsWith("Pset_RoofCommon.TotalArea"))
        .map(java.util.Map.Entry::getValue).findFirst().orElseThrow();
    assertThat(Double.parseDouble(total)).isCloseTo(53.8860251243651 * 0.3048 * 0.3048, within(1e-6));
  }

  /** The model types no roof; names say "Basic Roof". Its GlobalIds are parts of UUIDs. */
  @Test
  void takesRoofsByNameWhereNoneIsTyped() throws IOException {
    Building b = read("d07");
    assertThat(b.findings()).extracting(Finding::code).contains("roof/by-name", "model/bad-global-id");
    assertThat(b.roofs()).allSatisfy(e -> assertThat(e.ifcClass()).isEqualTo("IfcSlab"));
  }

  /** Windows fill openings of the IfcRoof, which has no body; its slab has the same openings once more, unfilled. */
  @Test
  void givesTheOpeningsOfABodilessRoofToItsParts() throws IOException {
    Building b = read("d03");
    assertThat(b.roofs().get(0).openings()).hasSize(2).extracting(Opening::fillingClass).containsOnly("IfcWindow");
    List<String> windows = b.roofs().get(0).openings().stream().map(Opening::filling).toList();
    assertThat(b.neighbours()).filteredOn(e -> e.category() == Category.PENETRATION).extracting(Element::globalId).containsAll(windows);
  }

  /** The architect's model has the chimney without a shape, the engineer's with one: 0.70 × 0.70 m, top at 4.70 m. */
  @Test
  void readsSeveralModelsAsOneBuilding() throws IOException {
    Building alone = read("d04_");
    assertThat(alone.findings()).extracting(Finding::code).containsExactly("roof/neighbour-without-shape");
    Building both = read("d04_", "d04b");
    assertThat(both.findings()).isEmpty();
    Element chimney = both.neighbours().stream().filter(e -> e.ifcClass().equals("IfcChimney")).findFirst().orElseThrow();
    assertThat(chimney.model()).isEqualTo(1);
    assertThat(chimney.bounds().maxZ()).isCloseTo(4.70, within(1e-6));
    assertThat(chimney.bounds().maxX() - chimney.bounds().minX()).isCloseTo(0.70, within(1e-6));
  }

  /** Spatial zones, structural members, buildings and openings look like roofs or walls, and are none. */
  @Test
  void leavesOutWhatOnlyLooksLikeABuildingElement() throws IOException {
    for (String prefix : new String[] {"d04_", "d08", "d09"}) {
      Building b = read(prefix);
      assertThat(b.neighbours()).extracting(Element::ifcClass).doesNotContain("IfcSpatialZone", "IfcStructuralSurfaceMember",
          "IfcVirtualElement", "IfcBuilding", "IfcSpace", "IfcOpeningElement");
    }
  }

  @Test
  void refusesACommentThatNeverEnds() {
    assertThatThrownBy(() -> read("d14")).isInstanceOf(UnreadableModelException.class).hasMessageContaining(":15:");
  }
}
