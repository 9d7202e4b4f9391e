package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.Form.Placing;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

/**
 * One building in several models. Expected lengths are the closed forms beside each line of the whole house; where models have to be moved,
 * the movement that the generator made, turned round.
 */
@Tag("slow")
class FederationTest {

  private static final long SEED = Long.getLong("seamledger.seed", System.nanoTime());
  private static final int HOUSES = Math.max(3, Integer.getInteger("seamledger.houses", 40) / 5);
  private static final Path FOLDER = Path.of("ifc-samples", "infirmary");

  @TempDir
  private Path folder;

  private static Takeoff run(Inputs inputs) {
    return Analysis.run(inputs, Progress.NONE);
  }

  private static Inputs infirmary(String... files) {
    return Inputs.ofFiles(List.of(files).stream().map(f -> FOLDER.resolve(f + ".ifc")).toList());
  }

  private static List<String> differences(House expected, Takeoff found) {
    return Comparison.differences(expected.expectedByKind(), Comparison.byKind(found.junctions().stream()
        .map(j -> new Pipeline.Line(j.kind(), j.junction().lengthM())).toList()), 1e-3);
  }

  private static List<Finding> of(Takeoff takeoff, String code) {
    return takeoff.findings().stream().filter(f -> f.code().equals(code)).toList();
  }

  @Test
  void disciplinesMeetThroughTheMap() {
    Takeoff t = run(infirmary("roof", "services", "structure"));
    assertThat(differences(Federation.house(), t)).isEmpty();
    assertThat(of(t, "models/misplaced")).isEmpty();
    assertThat(of(t, "models/apart")).isEmpty();
    assertThat(of(t, "models/placed")).hasSize(2);
    assertThat(of(t, "models/duplicates")).singleElement().satisfies(f -> assertThat(f.elements())
        .containsExactlyInAnyOrder(GlobalIds.of("infirmary/west gable"), GlobalIds.of("infirmary/east gable")));
    assertThat(of(t, "models/duplicates-differ")).isEmpty();
  }

  /** The flue is the one pipe that nothing was cut for; it counts once, though three parts of it meet at the surface. */
  @Test
  void aPipeWithoutAnOpeningIsNamedWithItsRoof() {
    Takeoff t = run(infirmary("roof", "services"));
    assertThat(of(t, "penetration/small-no-opening")).singleElement().satisfies(f -> assertThat(f.elements())
        .containsExactly(GlobalIds.of("infirmary/north"), GlobalIds.of("infirmary/boiler flue coupling")));
    assertThat(t.elements().get(GlobalIds.of("infirmary/boiler flue coupling")).model()).isEqualTo(1);
    assertThat(t.elements().get(GlobalIds.of("infirmary/north")).model()).isZero();
  }

  /** Whichever model comes first, its world is the result's; kinds and lengths stay. */
  @Test
  void theFirstModelsWorldIsTheResults() {
    Takeoff t = run(infirmary("structure", "services", "roof"));
    assertThat(differences(Federation.house(), t)).isEmpty();
    Vec3 p = t.world(t.junctions().get(0).junction().path().get(0));
    assertThat(p.distance(Federation.PLACE.at())).isLessThan(30);
  }

  @Test
  void aMisplacedModelGetsTheMovementThatBringsItBack() {
    Takeoff t = run(infirmary("roof", "services-misplaced"));
    assertThat(of(t, "models/map-not-shared")).hasSize(1);
    assertThat(of(t, "models/misplaced")).singleElement().satisfies(f -> assertThat(f.message())
        .contains("does not overlap", "turned by -90°", "x +40 m, y +25 m, z -3.1 m", "3 pipes or ducts"));
    String argument = argument(of(t, "models/misplaced").get(0));
    Takeoff placed = run(Takeoffs.placed(infirmary("roof", "services-misplaced"), List.of(argument)));
    assertThat(differences(Federation.house(), placed)).isEmpty();
    assertThat(of(placed, "models/misplaced")).isEmpty();
    assertThat(of(placed, "models/placed")).hasSize(1);
  }

  private static String argument(Finding f) {
    Matcher m = Pattern.compile("--place (\\S+) ").matcher(f.message());
    assertThat(m.find()).as(f.message()).isTrue();
    return m.group(1);
  }

  /** Any house, split into roof and the rest, each in a world, unit and schema of its own: the map undoes it all. */
  @Test
  void turnsAndShiftsThatTheMapUndoesChangeNothing() throws IOException {
    for (int i = 0; i < HOUSES; i++) {
      Random random = new Random(SEED + i);
      RandomHouses chance = new RandomHouses(random);
      House house = chance.house();
      Georeference place = new Georeference(new Vec3(random.nextInt(900_000), random.nextInt(9_000_000), random.nextInt(2000)),
          random.nextDouble() * 360 - 180, "EPSG:25832");
      Takeoff whole = Pipeline.analyse(house, Form.PLAIN);
      List<Path> files = new ArrayList<>();
      files.add(write("a", house.only(true, t -> false), pose(chance.form(), random), place));
      files.add(write("b", house.only(false, t -> true), pose(chance.form(), random), place));
      Takeoff together = run(Inputs.ofFiles(files));
      Map<String, List<Double>> expected = lengths(whole);
      assertThat(Comparison.differences(expected, lengths(together), 1e-3)).as("seed %d: %s", SEED + i, house.name()).isEmpty();
    }
  }

  private static Map<String, List<Double>> lengths(Takeoff t) {
    return Comparison.byKind(t.junctions().stream().map(j -> new Pipeline.Line(j.kind(), j.junction().lengthM())).toList());
  }

  private static Form pose(Form form, Random random) {
    Form plain = form.mirrored() ? form.mirroredLeftRight() : form;
    return plain.at(Placing.SITE, random.nextDouble() * 400 - 200, random.nextDouble() * 400 - 200, random.nextDouble() * 20 - 10)
        .turned(random.nextDouble() * 360 - 180).made(Form.Make.SLABS);
  }

  private Path write(String name, House part, Form form, Georeference place) throws IOException {
    return Files.writeString(folder.resolve(name + ".ifc"), IfcWriter.text(part, form, Optional.of(Georeference.of(place, form))),
        StandardCharsets.US_ASCII);
  }

  /** Models of two places with one name for the map and none for the other keep their own coordinates. */
  @Test
  void differentMapsAreNotMixed() throws IOException {
    House house = Federation.house();
    Path a = write("a", house.only(true, t -> false), Form.PLAIN, Federation.PLACE);
    Path b = write("b", house.only(false, t -> true), Form.PLAIN,
        new Georeference(new Vec3(1, 2, 3), 77, "EPSG:31467"));
    Takeoff t = run(Inputs.ofFiles(List.of(a, b)));
    assertThat(of(t, "models/different-maps")).singleElement()
        .satisfies(f -> assertThat(f.message()).contains("EPSG:31467", "EPSG:25832"));
    assertThat(differences(house, t)).isEmpty();
  }

  /** The same walls, one of them 100 mm further out: both are named, the first model's count. */
  @Test
  void duplicatesThatDifferAreWarnedOf() throws IOException {
    House house = Federation.house();
    Path a = write("a", house, Form.PLAIN, Federation.PLACE);
    Path b =
        write("b", new House("infirmary").wall("west gable", -0.1, 0, 0.3, 8, 0, 4), Form.PLAIN.made(Form.Make.SLABS), Federation.PLACE);
    Takeoff t = run(Inputs.ofFiles(List.of(a, b)));
    assertThat(of(t, "models/duplicates-differ")).singleElement()
        .satisfies(f -> assertThat(f.elements()).containsExactly(GlobalIds.of("infirmary/west gable")));
    assertThat(differences(house, t)).isEmpty();
  }

  /** A house given twice is one house. */
  @Test
  void aModelGivenTwiceCountsOnce() throws IOException {
    Path a = write("a", Federation.house(), Form.PLAIN, Federation.PLACE);
    Takeoff t = run(Inputs.ofFiles(List.of(a, a)));
    assertThat(differences(Federation.house(), t)).isEmpty();
    assertThat(of(t, "models/duplicates")).hasSize(1);
  }
}
