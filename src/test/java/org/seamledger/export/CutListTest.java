package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;

class CutListTest {

  private static List<String> rows(String sample) throws IOException {
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(Path.of("ifc-samples/worked", sample))), Progress.NONE);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CutList.write(takeoff, out);
    return out.toString(StandardCharsets.UTF_8).lines().toList();
  }

  /**
   * A ridge of 40 ft over pans of 16 in from its end: 30 square pieces a side, 16 in less the five layers of 0.024 in of a double fold:
   * 15.88 in = 403.352 mm (worked by hand).
   */
  @Test
  void closuresOfARidgeAreSquareAndEqual() throws IOException {
    List<String> closures = rows("ridge-40ft.ifc").stream().filter(row -> row.startsWith("closure,")).toList();
    assertThat(closures).hasSize(2).allMatch(row -> row.matches("closure,F\\d,J\\w+,30,,,0\\.403352,15 7/8 in,0,0,"));
  }

  /**
   * Hips of 18 ft at 6:12 over a run of 12 ft: 9 closures of 24 in a side; tan ψ = tan 45° · cos 26.565°, ψ = 41.81°, the bevel is
   * 90° − ψ = 48.19°. The fold of 0.12 in takes 0.12 in / sin ψ = 0.18 in off: 23.82 in = 605.028 mm.
   */
  @Test
  void closuresOfAHipAreBevelled() throws IOException {
    List<String> closures = rows("regular-hip.ifc").stream().filter(row -> row.startsWith("closure,")).toList();
    assertThat(closures).isNotEmpty()
        .allMatch(row -> row.matches("closure,F\\d,J\\w+,9,,,0\\.605028,23 13/16 in,48\\.1896\\d\\d,48\\.1896\\d\\d,"));
  }

  @Test
  void panelsComeFirst() throws IOException {
    List<String> rows = rows("ridge-40ft.ifc");
    assertThat(rows.get(0)).startsWith("part,face,junction,pieces,");
    assertThat(rows.get(1)).matches("panel,F1,,30,0\\.4064,16 in,[\\d.]+,[\\d /]+ in,0,0,");
  }
}
