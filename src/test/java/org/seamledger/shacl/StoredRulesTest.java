package org.seamledger.shacl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.GraphMemFactory;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the build stores of the rules is what reading their files gives. */
class StoredRulesTest {

  private static final RuleFiles FILES = RuleFiles.packaged();

  private final Graph read = GraphMemFactory.createDefaultGraph();
  private final Places readPlaces = new Places();
  private final Graph stored = GraphMemFactory.createDefaultGraph();
  private final Places storedPlaces = new Places();

  @Test
  void theBuildStoredTheRulesThatArePacked() {
    assertThat(StoredRules.read(FILES, FILES.hash(), stored, storedPlaces)).as("what the build stored is of the files beside it").isTrue();
  }

  @Test
  void graphsAreTheSame() {
    fill();
    assertThat(stored.size()).isEqualTo(read.size()).isGreaterThan(5000);
    assertThat(stored.isIsomorphicWith(read)).isTrue();
  }

  @Test
  void everyTripleHasThePlaceThatReadingGives() {
    fill();
    assertThat(placed(storedPlaces)).isEqualTo(placed(readPlaces)).hasSizeGreaterThan(5000);
  }

  @Test
  void filesWithAnotherLetterAreReadAnew() {
    RuleFiles changed = FILES.with(Map.of("kinds.ttl", FILES.texts().get("kinds.ttl") + " "));
    assertThat(StoredRules.read(changed, changed.hash(), stored, storedPlaces)).isFalse();
    assertThat(stored.isEmpty()).isTrue();
  }

  @Test
  void theSameFilesGiveTheSameBytes() throws IOException {
    assertThat(written()).isEqualTo(written()).hasSizeGreaterThan(100_000);
  }

  /** Wrong rules end no build, and what an earlier one stored goes: the program says what is wrong with file and line. */
  @Test
  void wrongRulesAreNotStored(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("rules.bin");
    StoredRules.store(FILES, file);
    assertThat(file).hasBinaryContent(written());
    StoredRules.store(FILES.with(Map.of("kinds.ttl", "nonsense")), file);
    assertThat(file).doesNotExist();
  }

  private static byte[] written() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    StoredRules.write(FILES, out);
    return out.toByteArray();
  }

  private void fill() {
    Rules.read(FILES, read, readPlaces);
    StoredRules.read(FILES, FILES.hash(), stored, storedPlaces);
  }

  /** Triples by their places, blank nodes without their names, which differ from one reading to the next. */
  private static Map<String, TreeSet<String>> placed(Places places) {
    Map<String, TreeSet<String>> all = new TreeMap<>();
    places.forEach((t, place) -> all.computeIfAbsent(place.toString(), p -> new TreeSet<>()).add(text(t)));
    return all;
  }

  private static String text(Triple t) {
    return Stream.of(t.getSubject(), t.getPredicate(), t.getObject()).map(StoredRulesTest::text)
        .collect(Collectors.joining(" "));
  }

  private static String text(Node n) {
    return n.isBlank() ? "[]" : n.toString();
  }
}
