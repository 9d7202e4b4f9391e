package org.seamledger.detail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.shacl.Rules;

/** Places are counted by hand in the texts that stand here. */
class DecisionReaderTest {

  private static final Set<String> KINDS = KindBook.read(Rules.packaged()).ids();

  @TempDir
  private Path folder;

  @Test
  void readsWhatIsChosen() {
    List<Decision> read = DecisionReader.parse("""
        {"note": "from the walk of the roof", "decisions": [
          {"junction": "J1", "kind": "valley", "reason": "measured", "note": "photo 3"},
          {"reason": "no room", "detail": "none", "junction": "J2", "kind": null}]}
        """, "d.json", KINDS);
    assertThat(read).containsExactly(new Decision("J1", "valley", "", "measured"), new Decision("J2", "", "none", "no room"));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      {"decisions": [{"junction": "J1", "kind": "rigde", "reason": "x"}]}  | d.json:1:43: expected one of the kinds ridge
      {"decisions": [{"junction": "J1", "kind": "hip"}]}                   | d.json:1:16: expected a decision with its reason, found none
      {"decisions": [{"junction": "J1", "reason": "x"}]} | d.json:1:16: expected a decision with kind or detail, found neither
      {"decisions": [{"kind": "hip", "reason": "x"}]}                      | d.json:1:16: expected a decision with its junction, found none
      {"decisions": [{"junction": 7, "kind": "hip", "reason": "x"}]}       | d.json:1:29: expected a text for junction, found 7
      {"decisions": [5]} | d.json:1:16: expected an object with junction, kind or detail, and reason, found 5
      {"decisions": {}}                                                    | d.json:1:15: expected a list of decisions, found an object
      {"decisions": [], "why": 1} | d.json:1:19: expected one of the fields decisions, note, found "why"
      {"decisions": []} 1                                                  | d.json:1:19: expected the end of the file, found 1
      {"decisions": [                                                      | d.json:1:16: expected JSON, found Unexpected end-of-input
      [] | d.json:1:1: expected an object with the field "decisions", found a list
      {}                                                                   | expected the field "decisions" before this
      """)
  void saysWhatIsWrongAndWhere(String text, String message) {
    assertThatThrownBy(() -> DecisionReader.parse(text, "d.json", KINDS)).isInstanceOf(DecisionFormatException.class)
        .hasMessageContaining(message);
  }

  @Test
  void reportsEveryFault() {
    String text = "{\"decisions\": [\n {\"junction\": \"J1\", \"kind\": \"hip\", \"reason\": \"x\"},\n"
        + " {\"junction\": \"J1\", \"kind\": \"hip\", \"reason\": \"x\"},\n {\"junction\": \"J2\", \"kind\": \"roof\","
        + " \"reason\": \"x\"}]}";
    assertThatThrownBy(() -> DecisionReader.parse(text, "d.json", KINDS))
        .hasMessageContaining("d.json:3:15: expected one decision for each junction, found \"J1\"").hasMessageContaining("d.json:4:29: ");
  }

  @Test
  void namesAFileThatCannotBeRead() throws IOException {
    assertThatThrownBy(() -> DecisionReader.read(folder.resolve("none.json"), KINDS))
        .hasMessageEndingWith("none.json: expected a readable JSON file in UTF-8, found no such file");
    Path latin = Files.write(folder.resolve("latin.json"), new byte[] {'{', (byte) 0xe4, '}'});
    assertThatThrownBy(() -> DecisionReader.read(latin, KINDS)).hasMessageContaining("found bytes that are not UTF-8");
  }
}
