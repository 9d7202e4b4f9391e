package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;

/**
 * Elements by what people find them by; what is expected stands in the text of the sample (ifc-samples/gatehouse.ifc, its storey is Roof).
 */
class MentionsTest {

  private static final String CHIMNEY = "1N2KbnKcnVdM4S7vhoc46V";
  private static final String CONTAINED = "#115,#124,#136,#146),#19);";

  @TempDir
  private Path folder;

  private Map<String, ElementLabel> elements(String text) throws IOException {
    return Analysis.run(Inputs.ofFiles(List.of(Files.writeString(folder.resolve("house.ifc"), text))), Progress.NONE).elements();
  }

  private static String gatehouse() throws IOException {
    String text = Files.readString(Path.of("ifc-samples/gatehouse.ifc"));
    assertThat(text).contains(CONTAINED);
    return text;
  }

  @Test
  void anElementHasItsClassNameAndStorey() throws IOException {
    assertThat(elements(gatehouse()).get(CHIMNEY)).isEqualTo(new ElementLabel(CHIMNEY, "IfcChimney", "chimney", 0, "Roof"));
  }

  @Test
  void oneInNoStoreyHasTheStoreyOfItsWholeOrNone() throws IOException {
    String loose = gatehouse().replace(CONTAINED, CONTAINED.replace("#136,", ""));
    assertThat(elements(loose).get(CHIMNEY).storey()).isEmpty();
    String part = loose.replace("ENDSEC;\nEND-ISO", "#900=IFCRELAGGREGATES('0x1sBTbXn9IxkKbmyhCvbr',$,$,$,#146,(#136));\nENDSEC;\nEND-ISO");
    assertThat(part).isNotEqualTo(loose);
    assertThat(elements(part).get(CHIMNEY).storey()).as("a part of what is contained").isEqualTo("Roof");
  }

  /** Nothing of it is near a roof, or has a shape: only the finding names it. */
  @Test
  void whatOnlyAFindingNamesIsThereToo() throws IOException {
    String shapeless = gatehouse().replace("$,'chimney',$,$,#127,#135,", "$,'chimney',$,$,#127,$,");
    assertThat(elements(shapeless).get(CHIMNEY)).isEqualTo(new ElementLabel(CHIMNEY, "IfcChimney", "chimney", 0, "Roof"));
  }
}
