package org.seamledger.rdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The facts that rules may ask for are those that are written down, in the code and beside the rules. */
class VocabularyTest {

  private static final Path SOURCES = Path.of("src/main/java/org/seamledger");

  @Test
  void factsOfLinesAreThoseOfTheJunctionPackage() throws IOException {
    assertThat(new TreeSet<>(Vocabulary.LINE_FACTS)).isEqualTo(cells("junction", 1));
  }

  @Test
  void otherFactsAreThoseOfTheDetailPackage() throws IOException {
    Set<String> written = cells("detail", 1);
    written.addAll(cells("detail", 2));
    Set<String> known = new TreeSet<>(Vocabulary.DETAIL_FACTS);
    known.addAll(Vocabulary.FINDING_FACTS);
    // Found by the package itself, and told in its text.
    known.removeAll(Set.of("kind", "lengthM", "detail", "metalFirst", "beadOnly", "sealantExposed"));
    assertThat(written).containsAll(known);
  }

  @Test
  void everyFactIsExplainedBesideTheRules() throws IOException {
    String text = "";
    for (String file : new String[] {"kinds.ttl", "details.ttl", "findings.ttl"}) {
      text += Files.readString(Path.of("shapes", file)).lines().filter(l -> l.startsWith("#")).reduce("", (a, b) -> a + "\n" + b);
    }
    for (String fact : Vocabulary.facts()) {
      assertThat(text).contains("sl:" + fact);
    }
  }

  private static Set<String> cells(String folder, int column) throws IOException {
    Set<String> names = new TreeSet<>();
    Matcher rows = Pattern.compile("<tr><td>(.*?)</td><td>(.*?)</td>", Pattern.DOTALL)
        .matcher(Files.readString(SOURCES.resolve(folder).resolve("package-info.java")));
    while (rows.find()) {
      for (String name : rows.group(column).split(",")) {
        if (name.strip().matches("[a-z]\\w+")) {
          names.add(name.strip());
        }
      }
    }
    return names;
  }
}
