package org.seamledger.ifc;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import org.seamledger.finding.UnreadableModelException;

/**
 * Whatever stands in the data section: a building or the one exception. The normal test run replays the files in
 * {@code src/test/resources/org/seamledger/ifc/IfcReaderFuzzTestInputs}; with {@code JAZZER_FUZZ=1} and {@code -Djazzer.hooks=true} it
 * looks for new ones.
 */
class IfcReaderFuzzTest {

  private static final String[] SCHEMAS = {"IFC2X3", "IFC4", "IFC4X3"};

  @FuzzTest(maxDuration = "4m")
  void anyDataSectionGivesABuildingOrTheOneException(byte[] bytes) {
    String data = new String(bytes, StandardCharsets.ISO_8859_1);
    String schema = SCHEMAS[bytes.length % 3];
    try {
      Drawing.read(("ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\nFILE_NAME('','',(''),(''),'','','');\nFILE_SCHEMA(('" + schema
          + "'));\nENDSEC;\nDATA;\n" + data + "\nENDSEC;\nEND-ISO-10303-21;\n").getBytes(StandardCharsets.ISO_8859_1));
    } catch (UnreadableModelException e) {
      if (e.getMessage().indexOf('\n') >= 0) {
        throw new AssertionError("more than one line: " + e.getMessage(), e);
      }
    }
  }
}
