package org.seamledger.export.section;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.detail.Decision;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** Whatever is drawn from what was kept is, byte for byte, what is drawn from the takeoff. */
@Tag("slow")
class StoredSectionsTest {

  private static final SheetSetup SMALL = new SheetSetup(Paper.A4, DrawingUnits.US, TitleBlock.EMPTY);

  private static Takeoff takeoff(String model, Optional<Path> system, List<Decision> decisions) {
    return Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples", model))).withSystem(system).withDecisions(decisions), Progress.NONE);
  }

  private static Optional<String> drawn(List<byte[]> parts, String line, SheetSetup setup) {
    return StoredSections.svg(part -> part < parts.size() ? Optional.of(parts.get(part)) : Optional.empty(), line, setup);
  }

  private static void assertSame(Takeoff takeoff) {
    List<byte[]> parts = StoredSections.write(takeoff);
    assertThat(takeoff.lines()).isNotEmpty();
    SheetSetup setup = SMALL;
    for (DetailedJunction line : takeoff.lines()) {
      setup = setup == SMALL ? SheetSetup.DEFAULT : SMALL;
      assertThat(drawn(parts, line.junction().junction().id(), setup)).contains(SectionSheet.draw(takeoff, setup, line));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"school.ifc", "dairy.ifc"})
  void drawsTheSame(String model) {
    assertSame(takeoff(model, Optional.empty(), List.of()));
  }

  @Test
  void drawsTheSameOfValuesAndDetailsThatPeopleChose(@TempDir Path folder) throws IOException {
    Path system = Files.writeString(folder.resolve("system.json"), "{\"name\": \"Änderung <1>\","
        + " \"panel\": {\"seamHeight\": \"65 mm\", \"longest\": \"3.1 m\"}, \"tape\": {\"width\": \"30 mm\", \"thickness\": \"6 mm\"}}");
    Takeoff byRules = takeoff("gatehouse.ifc", Optional.of(system), List.of());
    String ridge = byRules.junctions().stream().filter(j -> j.kind().equals("ridge")).findFirst().orElseThrow().junction().id();
    Takeoff decided = takeoff("gatehouse.ifc", Optional.of(system), List.of(new Decision(ridge, "hip", "", "seen on site")));
    assertThat(decided.decided()).hasSize(1);
    assertThat(decided.joints()).as("panels longer than 3.1 m are lapped").isNotEmpty();
    assertSame(decided);
  }

  @Test
  void drawsNothingOfWhatItDoesNotKnow() throws IOException {
    Takeoff takeoff = takeoff("gatehouse.ifc", Optional.empty(), List.of());
    List<byte[]> parts = new ArrayList<>(StoredSections.write(takeoff));
    String line = takeoff.lines().get(0).junction().junction().id();
    assertThat(drawn(parts, "Jnowhere", SMALL)).isEmpty();
    assertThat(drawn(List.of(), line, SMALL)).as("none were kept").isEmpty();
    assertThat(drawn(parts.subList(0, 1), line, SMALL)).as("a part is missing").isEmpty();
    byte[] lines = parts.get(1);
    parts.set(1, new byte[] {1, 2, 3});
    assertThat(drawn(parts, line, SMALL)).as("a part that is none").isEmpty();
    parts.set(1, Arrays.copyOf(lines, lines.length / 2));
    assertThat(drawn(parts, line, SMALL)).as("half a part").isEmpty();
    parts.set(1, lines);
    assertThat(drawn(parts, line, SMALL)).isPresent();
    StoredSections.Head head = StoredSections.read(StoredSections.Head.class, parts.get(0));
    parts.set(0, StoredSections.compressed(new StoredSections.Head("of another program", head.common())));
    assertThat(drawn(parts, line, SMALL)).isEmpty();
  }

  private record Before(String name, double size) {
  }

  private record After(String name, int size) {
  }

  private record Within(List<Before> all) {
  }

  @Test
  void knowsRecordsByTheirShape() {
    assertThat(RecordCodec.shape(List.of(Before.class))).contains("double size").isNotEqualTo(RecordCodec.shape(List.of(After.class)));
    assertThat(RecordCodec.shape(List.of(Within.class))).contains(RecordCodec.shape(List.of(Before.class)));
  }
}
