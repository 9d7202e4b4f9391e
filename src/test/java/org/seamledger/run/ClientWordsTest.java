package org.seamledger.run;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClientWordsTest {

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "/var/lib/seamledger/uploads/0123/system.json: panel.coverage is no length | system.json: panel.coverage is no length",
      "/home/ida/my rules/kinds.ttl:12:3: expected a dot | kinds.ttl:12:3: expected a dot",
      "C:\\offices\\rules\\kinds.ttl:12: expected a dot | kinds.ttl:12: expected a dot",
      "/opt/rules holds no file of rules (*.ttl) | rules holds no file of rules (*.ttl)",
      "hall.ifc:7:12: expected a semicolon, found / or 3/16 in | hall.ifc:7:12: expected a semicolon, found / or 3/16 in",
      "tape of 3/16 in × 7/8 in is unknown | tape of 3/16 in × 7/8 in is unknown"})
  void foldersOfThisMachineStayOut(String message, String shown) {
    assertThat(ClientWords.withoutFolders(message)).isEqualTo(shown);
  }
}
