package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.export.JsonLedger;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Aside;
import org.seamledger.progress.Progress;
import org.seamledger.samples.Terrace;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;

/** An analysis with helping threads says to the byte what one thread says, and fails as one thread fails. */
@Tag("slow")
class OneThreadTest {

  private static final int HOUSES = 200;

  @TempDir
  private Path folder;

  /** Does something while no processor is to spare, so that no thread helps. */
  private static <T> T alone(Supplier<T> work) {
    CompletableFuture<Boolean> end = new CompletableFuture<>();
    List<Aside<Boolean>> busy = new ArrayList<>();
    Optional<Aside<Boolean>> next;
    while ((next = Aside.ifSpare(end::join)).isPresent()) {
      busy.add(next.get());
    }
    try {
      Assumptions.assumeFalse(busy.isEmpty(), "one processor only");
      return work.get();
    } finally {
      end.complete(true);
      busy.forEach(Aside::close);
    }
  }

  private static String json(List<Path> models) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      JsonLedger.write(Analysis.run(Inputs.ofFiles(models), Progress.NONE), Optional.empty(), out);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return out.toString(StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @ValueSource(strings = {"school", "granary", "gatehouse"})
  void samplesAreTheSame(String sample) {
    List<Path> models = List.of(Path.of("ifc-samples/" + sample + ".ifc"));
    assertThat(json(models)).isEqualTo(alone(() -> json(models)));
  }

  /** Houses of which every third is broken, each in one of several ways; GlobalIds that stand twice. */
  private Path broken() throws IOException {
    String text = Files.readString(Terrace.write(folder.resolve("whole.ifc"), HOUSES));
    List<String> lines = new ArrayList<>(text.lines().toList());
    String wall = lines.stream().filter(l -> l.contains("=IFCWALL(")).findFirst().orElseThrow();
    String id = wall.substring(wall.indexOf("('") + 2, wall.indexOf("',"));
    for (int i = 0, walls = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.contains("=IFCWALL(")) {
        walls++;
        lines.set(i, switch (walls % 6) {
          case 0 -> line.replaceFirst("\\('[^']*'", "('" + id + "'");
          case 2 -> line.replace("#7,", "#" + (9_000_001 + walls / 6 % 2) + ",");
          case 4 -> line.replace("#7,", "#8999999,");
          default -> line;
        });
      }
    }
    lines.add(lines.indexOf("DATA;") + 1, "#9000001=IFCLOCALPLACEMENT(#9000002,#2);\n#9000002=IFCLOCALPLACEMENT(#9000001,#2);");
    return Files.writeString(folder.resolve("broken.ifc"), String.join("\n", lines) + "\n");
  }

  @Test
  void brokenElementsAreReportedTheSame() throws IOException {
    List<Path> models = List.of(broken());
    String together = json(models);
    assertThat(together).contains("IFCLOCALPLACEMENT #9000001 is placed relative to itself").contains("#8999999 is referred to")
        .isEqualTo(alone(() -> json(models)));
  }

  /** Of several instances that can't be read the first counts. */
  @Test
  void failsAtTheSamePlace() throws IOException {
    String text = Files.readString(Terrace.write(folder.resolve("whole.ifc"), HOUSES));
    Path model = Files.writeString(folder.resolve("unreadable.ifc"), text.replaceAll("(=IFCWALL\\('[^']*',)", "$1..,"));
    String together = failure(model);
    assertThat(together).contains("unreadable.ifc").isEqualTo(alone(() -> failure(model)));
  }

  private static String failure(Path model) {
    StringBuilder message = new StringBuilder();
    assertThatThrownBy(() -> json(List.of(model))).isInstanceOfSatisfying(UnreadableModelException.class,
        e -> message.append(e.getMessage()));
    return message.toString();
  }
}
