package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.Finding;
import org.seamledger.samples.Form.Placing;
import org.seamledger.samples.Form.Schema;
import org.seamledger.samples.Form.Unit;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

/**
 * Models of one building that were moved on purpose, every one but that of the roof: the movements that the findings name must together
 * give what the models give where they were never moved, junction for junction and by the same ids.
 */
@Tag("slow")
class PlacementTest {

  private static final long SEED = Long.getLong("seamledger.seed", System.nanoTime());
  private static final int ROUNDS = Math.max(4, Integer.getInteger("seamledger.houses", 40) / 5);
  private static final Pattern PLACE = Pattern.compile("--place (\\S+) ");

  @TempDir
  private Path folder;

  private static Takeoff run(Inputs inputs) {
    return Analysis.run(inputs, Progress.NONE);
  }

  private static Inputs of(List<Path> files) {
    return Inputs.ofFiles(files);
  }

  /** Kind and length, to the tenth of a millimetre, by id. */
  private static SortedMap<String, String> lines(Takeoff t) {
    SortedMap<String, String> lines = new TreeMap<>();
    t.junctions().forEach(j -> lines.put(j.junction().id(), j.kind() + " " + Math.round(j.junction().lengthM() * 1e4)));
    return lines;
  }

  private static List<Finding> misplaced(Takeoff t) {
    return t.findings().stream().filter(f -> f.code().equals("models/misplaced")).toList();
  }

  private static List<String> suggestions(Takeoff t) {
    List<String> words = new ArrayList<>();
    misplaced(t).forEach(f -> {
      Matcher m = PLACE.matcher(f.message());
      assertThat(m.find()).as(f.message()).isTrue();
      words.add(m.group(1));
      assertThat(m.group(1)).endsWith("=" + f.remedy().orElseThrow().movement());
    });
    return words;
  }

  private Path write(String name, House part, Form form, Optional<Georeference> place) throws IOException {
    return Files.writeString(folder.resolve(name + ".ifc"), IfcWriter.text(part, form, place), StandardCharsets.US_ASCII);
  }

  private static House part(String what) {
    House house = Federation.house();
    return switch (what) {
      case "roof" -> house.only(true, t -> t.role() == Thing.Role.WALL);
      case "services" -> house.only(false, t -> t.role() != Thing.Role.WALL);
      default -> house.only(false, t -> t.role() == Thing.Role.WALL);
    };
  }

  private static Form moved(Random random, Placing placing, boolean square) {
    double turn = square ? 90 * random.nextInt(4) : random.nextDouble() * 360 - 180;
    Unit unit = Unit.values()[random.nextInt(Unit.values().length)];
    return Form.PLAIN.as(Schema.values()[random.nextInt(3)]).in(unit).made(Form.Make.SLABS).at(placing, random.nextDouble() * 600 - 300,
        random.nextDouble() * 600 - 300, random.nextDouble() * 40 - 20).turned(turn);
  }

  private Takeoff rightly() throws IOException {
    return run(of(List.of(write("roof", part("roof"), Form.PLAIN, Optional.empty()),
        write("services", part("services"), Form.PLAIN.made(Form.Make.SLABS), Optional.empty()),
        write("structure", part("structure"), Form.PLAIN.made(Form.Make.SLABS), Optional.empty()))));
  }

  /**
   * Turned by quarters and by any angle. Pipes in holes tell nothing of heights, so that the storeys of their model must; the structure has
   * walls of the architect's, and may be moved in each element or in its very geometry, so that no site tells how.
   */
  @Test
  void allSuggestionsTogetherGiveTheResultOfTheRightModels() throws IOException {
    SortedMap<String, String> expected = lines(rightly());
    for (int i = 0; i < ROUNDS; i++) {
      Random random = new Random(SEED + i);
      Placing placing = Placing.values()[random.nextInt(3)];
      boolean square = i % 2 == 0;
      List<Path> files =
          List.of(folder.resolve("roof.ifc"), write("services", part("services"), moved(random, Placing.SITE, square), Optional.empty()),
              write("structure", part("structure"), moved(random, placing, square), Optional.empty()));
      Takeoff before = run(of(files));
      Takeoff after = run(Takeoffs.placed(of(files), suggestions(before)));
      assertThat(lines(after)).as("seed %d: %s", SEED + i, before.findings()).isEqualTo(expected);
      assertThat(misplaced(after)).as("seed %d", SEED + i).isEmpty();
    }
  }

  /**
   * The wall of a neighbour who knows of no map, and of nothing else that is here: so far from the zero that it lies at no roof either,
   * where the placements of the buildings are made to coincide.
   */
  private Path stranger(Form form) throws IOException {
    House shed = new House("shed").wall("shed wall", 90, 0, 94, 0.3, 0, 2);
    return write("stranger", shed, form.made(Form.Make.SLABS), Optional.empty());
  }

  private List<Path> mapped(Random random) throws IOException {
    List<Path> files = new ArrayList<>();
    for (String part : List.of("roof", "services", "structure")) {
      Form form = moved(random, Placing.SITE, false);
      files.add(write(part, part(part), part.equals("roof") ? form.made(Form.Make.ROOF_OF_SLABS) : form,
          Optional.of(Georeference.of(Federation.PLACE, form))));
    }
    return files;
  }

  private static List<Path> order(List<Path> files, int... places) {
    return java.util.Arrays.stream(places).mapToObj(files::get).toList();
  }

  /** Three that share a map meet through it wherever a fourth without one stands in the order: no junction is lost or moved. */
  @Test
  void aModelWithoutAMapTakesNoMapAway() throws IOException {
    for (int i = 0; i < Math.max(2, ROUNDS / 4); i++) {
      Random random = new Random(SEED + i);
      List<Path> files = new ArrayList<>(mapped(random));
      SortedMap<String, String> expected = lines(run(of(files)));
      files.add(stranger(Form.PLAIN));
      for (int[] order : new int[][] {{0, 1, 2, 3}, {3, 0, 1, 2}, {0, 3, 1, 2}}) {
        Takeoff t = run(of(order(files, order)));
        assertThat(lines(t)).as("seed %d, order %s", SEED + i, java.util.Arrays.toString(order)).isEqualTo(expected);
        assertThat(misplaced(t)).as("seed %d", SEED + i).isEmpty();
        assertThat(t.findings()).filteredOn(f -> f.code().equals("models/map-not-shared")).singleElement()
            .satisfies(f -> assertThat(f.message())
                .contains("stranger.ifc does not.")
                .contains(order[0] == 3 ? "they lie as roof.ifc does by its own coordinates"
                    : "stranger.ifc was taken where its own coordinates put it in the world of roof.ifc. Through the map"
                        + " services.ifc, structure.ifc came to it"));
      }
    }
  }

  /** The first states no map, and the others wrong places in one: each gets its own movement, and together these give the right result. */
  @Test
  void modelsThatShareAMapWhichTheFirstDoesNotKnowAreBroughtToItOneByOne() throws IOException {
    SortedMap<String, String> expected = lines(rightly());
    for (int i = 0; i < Math.max(2, ROUNDS / 4); i++) {
      List<Path> files = new ArrayList<>(mapped(new Random(SEED + i)));
      files.set(0, write("roof", part("roof"), Form.PLAIN, Optional.empty()));
      Takeoff before = run(of(files));
      assertThat(misplaced(before)).as("seed %d: %s", SEED + i, before.findings()).hasSize(2);
      assertThat(lines(run(Takeoffs.placed(of(files), suggestions(before))))).as("seed %d: %s", SEED + i, before.findings())
          .isEqualTo(expected);
    }
  }
}
