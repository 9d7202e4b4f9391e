package org.seamledger.rdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.seamledger.junction.Fact;
import org.seamledger.junction.FactList;

/** One list of facts: rules, their comments and the measured facts name nothing else, and say the same of it. */
class VocabularyTest {

  private static final Path SHAPES = Path.of("shapes");

  @Test
  void commentsOfTheRulesSayWhatTheListSays() throws IOException {
    assertThat(comments("kinds.ttl")).isEqualTo(meanings(FactList.LINE));
    assertThat(comments("details.ttl")).isEqualTo(meanings(FactList.CHOICE));
    assertThat(comments("nodes.ttl")).isEqualTo(meanings(FactList.NODE));
    assertThat(comments("fixity.ttl")).isEqualTo(meanings(FactList.PANEL));
    assertThat(comments("sequence.ttl")).isEqualTo(
        meanings(Stream.of(FactList.WORK, FactList.PRECEDENCE).flatMap(List::stream).toList()));
    assertThat(comments("findings.ttl")).isEqualTo(meanings(
        Stream.of(FactList.JUNCTION, FactList.NODE_REVIEW, FactList.FACE, FactList.SYSTEM).flatMap(List::stream).toList()));
  }

  private static Map<String, String> meanings(List<Fact> facts) {
    return new TreeMap<>(facts.stream().collect(Collectors.toMap(Fact::name, Fact::meaning)));
  }

  /** Facts in a file's comments: a name, then words as far as the next line that is not indented as far as they are. */
  private static Map<String, String> comments(String file) throws IOException {
    Map<String, String> found = new TreeMap<>();
    String name = "";
    for (String line : Files.readAllLines(SHAPES.resolve(file))) {
      Matcher begins = Pattern.compile("# {3,5}sl:(\\w+) {2,}(.*)").matcher(line);
      if (begins.matches() && FactList.find(begins.group(1)).isPresent() && !begins.group(2).startsWith("( ")) {
        name = begins.group(1);
        found.put(name, begins.group(2));
      } else if (line.matches("# {20,}.*") && found.containsKey(name)) {
        found.merge(name, line.substring(1).strip(), (a, b) -> a + " " + b);
      } else {
        name = "";
      }
    }
    return found;
  }

  /** Whatever a shape or a message of the rules names is in the list. */
  @Test
  void rulesNameNoOtherFacts() throws IOException {
    for (String file : List.of("kinds.ttl", "details.ttl", "findings.ttl", "fixity.ttl", "nodes.ttl", "sequence.ttl")) {
      String rules = Files.readAllLines(SHAPES.resolve(file)).stream().filter(l -> !l.startsWith("#")).collect(Collectors.joining("\n"));
      Matcher named = Pattern.compile("sh:path sl:(\\w+)|\\{(\\w+)}|sh:lessThan\\w* sl:(\\w+)").matcher(rules);
      while (named.find()) {
        String name = Stream.of(named.group(1), named.group(2), named.group(3)).filter(g -> g != null).findFirst().orElseThrow();
        assertThat(Vocabulary.facts()).as(file).contains(name);
      }
    }
  }

  @Test
  void numbersCarryTheirUnitInTheirNames() {
    Map<Fact.FactUnit, String> ends = Map.of(Fact.FactUnit.DEGREES, "Degrees", Fact.FactUnit.METRES, "M", Fact.FactUnit.SHARE, "Share",
        Fact.FactUnit.SQUARE_METRES, "M2", Fact.FactUnit.LITRES_PER_SECOND, "Lps", Fact.FactUnit.PASCALS, "Pa", Fact.FactUnit.MEGAPASCALS,
        "MPa", Fact.FactUnit.CELSIUS, "C", Fact.FactUnit.KELVINS, "K");
    for (Fact fact : FactList.all()) {
      if (fact.type() == Fact.FactType.NUMBER) {
        assertThat(fact.name()).endsWith(ends.get(fact.unit()));
      } else {
        assertThat(fact.unit()).as(fact.name()).isEqualTo(Fact.FactUnit.NONE);
      }
      assertThat(fact.meaning()).as(fact.name()).isNotBlank();
      assertThat(fact.measured()).as(fact.name()).isNotBlank();
    }
    assertThat(Vocabulary.facts()).containsExactlyElementsOf(FactList.all().stream().map(Fact::name).toList());
  }
}
