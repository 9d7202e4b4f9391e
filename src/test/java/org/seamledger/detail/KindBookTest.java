package org.seamledger.detail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Rules;

class KindBookTest {

  private static final Path KINDS = Path.of("shapes", "kinds.ttl");

  @TempDir
  private Path folder;

  /** The contract's table of kinds, in its order. */
  @Test
  void theProgramsOwnKindsAreThoseOfTheContract() {
    assertThat(KindBook.read(Rules.packaged()).all()).extracting(Kind::id).containsExactlyElementsOf(Kinds.ALL);
    assertThat(Kinds.JOINTS).allSatisfy(j -> assertThat(KindBook.read(Rules.packaged()).kind(j).family()).isEqualTo(Kind.Family.FIELD));
  }

  @Test
  void labelsAreWordsOfTheTrade() {
    KindBook book = KindBook.read(Rules.packaged());
    assertThat(book.kind("low-wall").label()).isEqualTo("downslope wall");
    assertThat(book.kind("high-edge").label()).isEqualTo("high eave");
    assertThat(book.all()).extracting(Kind::label).doesNotHaveDuplicates().allMatch(l -> l.equals(l.toLowerCase(java.util.Locale.ROOT)));
  }

  /** An office's folder from before kinds were described. */
  @Test
  void kindsThatSayNothingOfThemselvesAreAsTheProgramDescribesThem() throws IOException {
    String old = Files.readString(KINDS).replaceAll("\n  rdfs:label \"[^\n]*sl:meaning[^\n]*\n  sl:family[^\n]*", "");
    assertThat(old).doesNotContain("sl:order 10 ").contains("kind:ridge a sh:NodeShape ; sl:kind \"ridge\" ;\n  sh:node");
    Files.writeString(folder.resolve("kinds.ttl"), old);
    assertThat(KindBook.read(Rules.load(folder)).all()).isEqualTo(KindBook.read(Rules.packaged()).all());
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
      sl:kind "eave-2" ; rdfs:label "e" ; sl:meaning "m"                                        | needs sl:family
      sl:kind "eave-2" ; sl:family "edge" ; sl:meaning "m"                                      | needs one rdfs:label
      sl:kind "eave-2" ; sl:family "edge" ; rdfs:label "e"                                      | needs sl:meaning
      sl:kind "eave-2" ; sl:family "egde" ; rdfs:label "e" ; sl:meaning "m" | there are faces, edge, wall, penetration, round, field, level
      sl:kind "eave-2" ; sl:family "edge" ; rdfs:label "e" ; sl:meaning "m" ; sl:planline "eave" | did you mean planLine?
      sl:kind "eave-2" ; sl:family "edge" ; rdfs:label "e" ; sl:meaning "m" ; sl:section "eaves" | sl:section is "eaves"; there are ridge
      sl:kind "Eave 2" ; sl:family "edge" ; rdfs:label "e" ; sl:meaning "m"                     | is no name for a kind
      """)
  void aKindThatIsNotDescribedIsRefused(String kind, String problem) throws IOException {
    String text = Files.readString(KINDS);
    Files.writeString(folder.resolve("kinds.ttl"), text + "\nkind:other a sh:NodeShape ; " + kind + " ; sh:node kind:FreeEdge .\n");
    assertThatThrownBy(() -> new Kinds(Rules.load(folder))).isInstanceOfSatisfying(BrokenRulesException.class, e -> {
      assertThat(e).hasMessageContaining(problem);
      assertThat(e.line()).isEqualTo(text.lines().count() + 2);
    });
  }
}
