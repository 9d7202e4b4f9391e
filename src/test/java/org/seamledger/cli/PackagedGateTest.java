package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.cli.InstalledProgram.Ended;

/** The example of a gate in a pipeline, run as it stands by {@code sh}, over two revisions of a sample. */
@Tag("packaged")
class PackagedGateTest {

  @TempDir
  private Path folder;

  private Ended gate(String model) {
    return InstalledProgram.run(folder,
        List.of("sh", "-c", "SEAMLEDGER=\"$1\" IDS=\"$2\" sh gate.sh \"$3\" kept.json", "sh", InstalledProgram.launcher().toString(),
            InstalledProgram.launcher().resolveSibling("shapes/ids/roof-model.ids").toString(), model));
  }

  @Test
  void passesFailsAndPassesAgainOnceItIsAccepted() throws Exception {
    Files.copy(Path.of("src/pipelines/gate.sh"), folder.resolve("gate.sh"));
    String second = Files.readString(InstalledProgram.samples().resolve("gatehouse.ifc"));
    Files.writeString(folder.resolve("second.ifc"), second);
    Files.writeString(folder.resolve("first.ifc"), second.replace("$,'chimney',$,$,#127,#135,", "$,'chimney',$,$,#127,$,"));
    assertThat(gate("first.ifc")).as("the first revision").isEqualTo(new Ended(0, "", ""));
    byte[] kept = Files.readAllBytes(folder.resolve("kept.json"));
    Ended worse = gate("second.ifc");
    assertThat(worse.status()).as("a chimney without a cricket").isEqualTo(1);
    assertThat(worse.err()).contains("drainage/no-cricket, penetration/no-opening").hasLineCount(1);
    assertThat(folder.resolve("kept.json")).as("what passed last").hasBinaryContent(kept);
    assertThat(folder.resolve("reports/changes.txt")).content().contains("4 added");
    assertThat(folder.resolve("reports/model.xml")).content().contains("<testsuite ");
    ObjectMapper json = new ObjectMapper();
    assertThat(json.readTree(folder.resolve("reports/findings.sarif").toFile()).at("/runs/0/results")).hasSizeGreaterThan(2)
        .hasSameSizeAs(json.readTree(folder.resolve("reports/result.json").toFile()).at("/findings"));
    Files.writeString(folder.resolve("decisions.json"), """
        {"accepted": [
          {"finding": {"code": "drainage/no-cricket", "junction": "J0xcbxgtm",
            "elements": ["0hGinPNwiSDrAurecV39RR", "1N2KbnKcnVdM4S7vhoc46V"]},
           "by": "A. Planner", "when": "2024-05-31", "reason": "it is on the drawings"},
          {"finding": {"code": "penetration/no-opening", "junction": "J0tjnsqpc",
            "elements": ["0hGinPNwiSDrAurecV39RR", "1N2KbnKcnVdM4S7vhoc46V"]},
           "by": "A. Planner", "when": "2024-05-31", "reason": "agreed with the architect"}]}
        """);
    assertThat(gate("second.ifc")).as("accepted").isEqualTo(new Ended(0, "", ""));
    assertThat(gate("first.ifc").status()).as("back to the first").isZero();
  }
}
