package org.seamledger.enrich;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.progress.Progress;
import org.seamledger.step.StepFile;

/** The rules as this program's tests hold copies of models to them, on the body's own passing and failing files. */
class BodyRulesTest {

  @Test
  void agreeWithTheBodysFiles() throws IOException {
    Path rules = SharedModels.folder().resolveSibling("standards").resolve("ifc-rules");
    List<String> disagreed = new ArrayList<>();
    int seen = 0;
    for (String rule : List.of("pjs003", "pse001", "pse002", "sps007", "ojt001-scenario01", "gem004", "gem052", "qty001")) {
      for (Path file : files(rules.resolve("files"), rule)) {
        try (StepFile model = StepFile.open(FileChannel.open(file), file.toString(), Progress.NONE)) {
          Set<String> broken =
              Stream.concat(BodyRules.violations(model).stream(), BodyRules.violations(model, rules.resolve("tables")).stream())
                  .filter(v -> v.toLowerCase(java.util.Locale.ROOT).startsWith(rule.substring(0, 6))).collect(Collectors.toSet());
          if (broken.isEmpty() == file.getFileName().toString().startsWith("fail")) {
            disagreed.add(file.getFileName() + " " + broken);
          }
          seen++;
        }
      }
    }
    assertThat(disagreed).isEmpty();
    assertThat(seen).isGreaterThan(100);
  }

  private static List<Path> files(Path folder, String rule) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.getFileName().toString().matches("(pass|fail)-" + rule + ".*\\.ifc")).sorted().toList();
    }
  }
}
