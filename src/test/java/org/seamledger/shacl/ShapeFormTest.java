package org.seamledger.shacl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Shapes that are not formed as the W3C's SHACL recommendation asks are told so, with file and line. */
class ShapeFormTest {

  private static final String HEAD = """
      @prefix sh: <http://www.w3.org/ns/shacl#> .
      @prefix sl: <https://seamledger.org/ns#> .
      @prefix kind: <https://seamledger.org/kind#> .
      @prefix rdf: <http://www.w3.org/1999/02/22-rdf-syntax-ns#> .
      """;

  @TempDir
  private Path folder;

  private void load(String text) throws IOException {
    Files.writeString(folder.resolve("mine.ttl"), HEAD + text);
    Rules.load(folder);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "kind:A sh:targetClass \"word\" . | sh:targetClass needs a name",
      "kind:A sh:property [ sh:path [ sh:inversePath _:p ] ] . _:p sh:inversePath _:q . _:q sh:inversePath _:p . | contains itself",
      "kind:A sh:or _:l . _:l rdf:first kind:B ; rdf:rest _:l . | contains itself",
      "kind:A sh:or _:l . _:l rdf:first kind:B . | needs a list",
      "kind:A sh:node kind:B . kind:B sh:node kind:A . | contains itself",
      "kind:A sh:property [ sh:minCount 1 ] . | needs one sh:path",
      "kind:A sh:property [ sh:path sl:foldDegrees ; sh:minCount 1.5 ] . | needs a whole number",
      "kind:A sh:property [ sh:path sl:foldDegrees ; sh:maxCount 99999999999 ] . | needs a whole number",
      "kind:A sh:property [ sh:path sl:foldDegrees ; sh:pattern \"(\" ] . | needs a regular expression"})
  void isToldWithFileAndLine(String text, String words) {
    assertThatThrownBy(() -> load(text)).isInstanceOf(BrokenRulesException.class).hasMessageContaining("mine.ttl:5:")
        .hasMessageContaining(words);
  }

  @Test
  void deepNestingEndsInALine() {
    assertThatThrownBy(() -> load("kind:A sh:node " + "[ sh:node ".repeat(50_000))).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("mine.ttl:5");
    assertThatThrownBy(() -> load("kind:A sh:node " + "[ sh:not ".repeat(150) + "kind:A" + "]".repeat(150) + " ."))
        .isInstanceOf(BrokenRulesException.class).hasMessageContaining("mine.ttl:5");
  }

  @Test
  void aFileWithoutEndIsNotReadToItsEnd() throws IOException {
    Path endless = Path.of("/dev/zero");
    org.junit.jupiter.api.Assumptions.assumeTrue(Files.exists(endless), "no endless file here");
    Files.createSymbolicLink(folder.resolve("mine.ttl"), endless);
    assertThatThrownBy(() -> Rules.load(folder)).isInstanceOf(BrokenRulesException.class).hasMessageContaining("mine.ttl")
        .hasMessageContaining("more than 16 MiB");
  }

  @Test
  void theProgramsOwnShapesAreWellFormed() {
    assertThat(Rules.packaged().hash()).hasSize(64);
  }
}
