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
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;
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
        """, "d.json", KINDS).decisions();
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
      {"decisions": [], "why": 1} | d.json:1:19: expected one of the fields decisions, accepted, note, found "why"
      {"decisions": []} 1 | d.json:1:19: expected the end of the file, found 1
      {"decisions": [ | d.json:1:16: expected JSON, found Unexpected end-of-input
      {"accepted": [{"by": "A", "reason": "x"}]} | d.json:1:15: expected an accepted finding with its code, found none
      {"accepted": [{"finding": {"code": "a/b"}, "reason": "x"}]} | d.json:1:15: expected an accepted finding with its by, found none
      {"accepted": [{"finding": {"code": "a/b"}, "by": "A"}]} | d.json:1:15: expected an accepted finding with its reason, found none
      {"accepted": [{"finding": {"code": "a/b"}, "when": "soon"}]} | d.json:1:52: expected a day such as 2024-05-31, or a time
      {"accepted": [{"finding": {"elements": "x"}}]} | d.json:1:40: expected a list of GlobalIds, found "x"
      {"accepted": [{"finding": {"occurrence": 0}}]} | d.json:1:42: expected a whole number from 1 on, found 0
      {"accepted": [{"finding": 7}]} | d.json:1:27: expected an object with the finding's code, junction and elements, found 7
      {"accepted": {}} | d.json:1:14: expected a list of accepted findings, found an object
      [] | d.json:1:1: expected an object with the field "decisions", found a list
      {}                                                                   | expected the field "decisions" before this
      """)
  void saysWhatIsWrongAndWhere(String text, String message) {
    assertThatThrownBy(() -> DecisionReader.parse(text, "d.json", KINDS)).isInstanceOf(DecisionFormatException.class)
        .hasMessageContaining(message);
  }

  @Test
  void readsWhatIsAccepted() {
    DecisionReader.Content read = DecisionReader.parse("""
        {"accepted": [
          {"finding": {"code": "kind/flat-edge", "junction": "J1", "elements": ["e1", "e2"]}, "by": "A. Roofer", "when": "2024-05-31",
           "reason": "a membrane is ordered"},
          {"finding": {"code": "kind/flat-edge", "junction": null, "elements": [], "occurrence": 2}, "by": "B", "reason": "seen",
           "when": null}]}
        """, "d.json", KINDS);
    assertThat(read.decisions()).isEmpty();
    assertThat(read.accepted()).containsExactly(
        new AcceptedFinding("kind/flat-edge", "J1", List.of("e1", "e2"), 1,
            new Acceptance("A. Roofer", "2024-05-31", "a membrane is ordered")),
        new AcceptedFinding("kind/flat-edge", "", List.of(), 2, new Acceptance("B", "", "seen")));
    String twice = "{\"accepted\": [" + "{\"finding\": {\"code\": \"a\"}, \"by\": \"A\", \"reason\": \"x\"},".repeat(2);
    assertThatThrownBy(() -> DecisionReader.parse(twice.replaceFirst(",$", "]}"), "d.json", KINDS))
        .hasMessageContaining("expected one acceptance for each finding, found a second one");
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
