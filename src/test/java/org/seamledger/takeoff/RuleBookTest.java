package org.seamledger.takeoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.shacl.RuleLimits;
import org.seamledger.shacl.ShapeExamples;

/** The rules to read and to change, held against the files that they are read from. */
class RuleBookTest {

  private static final RuleBook PACKAGED = RuleBook.of(Optional.empty());

  private static RuleLimits.Limit limit(RuleBook book, String shape, String fact) {
    return book.limits().stream().filter(l -> l.shape().equals(shape) && l.fact().equals(fact)).findFirst().orElseThrow();
  }

  @Test
  void everyLimitStandsWhereItSays() throws IOException {
    for (RuleLimits.Limit l : PACKAGED.limits()) {
      String line = Files.readAllLines(Path.of("shapes", l.file()), StandardCharsets.UTF_8).get((int) l.line() - 1);
      int column = Integer.parseInt(l.id().substring(l.id().lastIndexOf(':') + 1));
      assertThat(line.substring(column - 1)).as(l.id()).startsWith(l.value());
      assertThat(line.substring(0, column - 1)).as(l.id()).endsWith(Map.of("at least", "sh:minInclusive ", "at most", "sh:maxInclusive ",
          "above", "sh:minExclusive ", "below", "sh:maxExclusive ").get(l.comparison()));
    }
    String all = PACKAGED.texts().values().stream().map(RuleBookTest::withoutComments).collect(Collectors.joining());
    assertThat(PACKAGED.limits()).as("none is missed").hasSize(all.split("sh:(min|max)(In|Ex)clusive", -1).length - 1);
  }

  private static String withoutComments(String text) {
    return text.lines().filter(l -> !l.startsWith("#")).collect(Collectors.joining("\n"));
  }

  @Test
  void aLimitSaysWhatItIsForAndWhoUsesIt() {
    RuleLimits.Limit level = limit(PACKAGED, "level line", "inclinationDegrees");
    assertThat(level.note()).isEqualTo("A line that rises less than this is level.");
    assertThat(level.comparison() + ' ' + level.value()).isEqualTo("below 0.5");
    Set<String> users = PACKAGED.entries().stream().filter(e -> e.limits().contains(level.id())).map(RuleBook.Entry::id)
        .collect(Collectors.toSet());
    assertThat(users).as("a ridge is level, a hip is not, a rake is another question").contains("ridge", "hip", "valley")
        .doesNotContain("rake");
  }

  @Test
  void aChangedLimitChangesThatNumberAlone() {
    RuleLimits.Limit level = limit(PACKAGED, "level line", "inclinationDegrees");
    RuleBook changed = PACKAGED.with(Map.of(), Map.of(level.id(), "1.25"));
    assertThat(changed.own()).containsOnlyKeys("kinds.ttl");
    List<String> before = PACKAGED.texts().get("kinds.ttl").lines().toList();
    List<String> after = changed.texts().get("kinds.ttl").lines().toList();
    assertThat(after).hasSameSizeAs(before);
    for (int i = 0; i < before.size(); i++) {
      assertThat(after.get(i)).isEqualTo(i + 1 == level.line() ? before.get(i).replace("0.5", "1.25") : before.get(i));
    }
    assertThat(changed.hash()).isNotEqualTo(PACKAGED.hash());
    assertThat(changed.with(Map.of(), Map.of(limit(changed, "level line", "inclinationDegrees").id(), "0.5")).hash())
        .as("and back").isEqualTo(PACKAGED.hash());
  }

  @Test
  void everyExampleHoldsAndThoseOfAMovedLimitDoNot() throws IOException {
    List<ShapeExamples.Example> all = PACKAGED.examples();
    try (Stream<Path> files = Files.walk(Path.of("shapes", "tests"))) {
      assertThat(all).hasSize((int) files.filter(f -> f.toString().endsWith(".ttl")).count());
    }
    assertThat(all).allMatch(ShapeExamples.Example::holds);
    RuleBook changed = PACKAGED.with(Map.of(), Map.of(limit(PACKAGED, "level line", "inclinationDegrees").id(), "0.4"));
    List<ShapeExamples.Example> broken = changed.examples().stream().filter(e -> !e.holds()).toList();
    // The example of the ridge says that a line that rises by 0.499° is level still.
    assertThat(broken).extracting(ShapeExamples.Example::file).contains("kinds/ridge.ttl");
    assertThat(broken.get(0).differences()).isNotEmpty();
  }

  @Test
  void whatCannotBeUsedIsRefusedWithFileLineAndReason(@TempDir Path folder) throws IOException {
    String kinds = PACKAGED.texts().get("kinds.ttl");
    int line = (int) kinds.substring(0, kinds.indexOf("sh:maxExclusive 0.5")).lines().count();
    assertThatThrownBy(() -> PACKAGED.with(Map.of("kinds.ttl", kinds.replaceFirst("sh:maxExclusive 0.5", "sh:maxExclusiv 0.5")), Map.of()))
        .isInstanceOf(UnusableFileException.class).hasMessageStartingWith("kinds.ttl:" + line + ":")
        .hasMessageContaining("did you mean maxExclusive?");
    assertThatThrownBy(() -> PACKAGED.with(Map.of(), Map.of("kinds.ttl:1:1", "3"))).hasMessageContaining("no limit at kinds.ttl:1:1");
    String id = PACKAGED.limits().get(0).id();
    assertThatThrownBy(() -> PACKAGED.with(Map.of(), Map.of(id, "3 ] . kind:x a sh:NodeShape"))).hasMessageContaining("needs a number");
    assertThatThrownBy(() -> PACKAGED.with(Map.of("../kinds.ttl", kinds), Map.of())).hasMessageContaining("has a name such as kinds.ttl");
    Files.createDirectories(folder.resolve("empty"));
    assertThatThrownBy(() -> RuleBook.of(Optional.of(folder.resolve("empty")))).isInstanceOf(UnusableFileException.class);
  }

  @Test
  void aFolderIsThoseRulesAgainAndMayBringExamples(@TempDir Path folder) throws IOException {
    RuleBook changed = PACKAGED.with(Map.of(), Map.of(limit(PACKAGED, "level line", "inclinationDegrees").id(), "0.4"));
    for (Map.Entry<String, String> f : changed.own().entrySet()) {
      Files.writeString(folder.resolve(f.getKey()), f.getValue());
    }
    assertThat(RuleBook.of(Optional.of(folder)).hash()).isEqualTo(changed.hash());
    Path own = Files.createDirectories(folder.resolve("tests").resolve("kinds")).resolve("ridge.ttl");
    Files.writeString(own,
        Files.readString(Path.of("shapes", "tests", "kinds", "ridge.ttl")).replace("0.499", "0.399").replace("0.5 ;", "0.4 ;"));
    assertThat(RuleBook.of(Optional.of(folder)).examples()).filteredOn(e -> e.file().equals("kinds/ridge.ttl")).hasSize(1)
        .allMatch(ShapeExamples.Example::holds);
  }

  /** A fact that is missing has no value that it must not have: what the shape says of both is said once. */
  @Test
  void wordsOfCompoundShapesSayEachThingOnce() {
    List<RuleBook.Entry> all = PACKAGED.entries();
    String cricket = all.stream().filter(e -> e.sort().equals("detail") && e.id().equals("curb-upslope-cricket")).findFirst()
        .orElseThrow().requires();
    assertThat(cricket).startsWith("kind curb-upslope and ").contains("minSlopeDegrees below 60 where known",
        "neighbourClass none of IfcWindow, IfcWindowStandardCase").doesNotContain("minSlopeDegrees absent", "neighbourClass absent");
  }

  @Test
  void anOfficesExamplesAreRunAndSavedWithItsRules() {
    String text = PACKAGED.texts().get("kinds.ttl") + "# our own\n";
    RuleBook mine = PACKAGED.with(Map.of("kinds.ttl", text, "tests/kinds/ours.ttl", "this is no Turtle"), Map.of());
    assertThat(mine.own()).containsOnlyKeys("kinds.ttl", "tests/kinds/ours.ttl");
    assertThat(mine.examples()).filteredOn(e -> !e.holds()).extracting(ShapeExamples.Example::file).containsExactly("kinds/ours.ttl");
    assertThatThrownBy(() -> PACKAGED.with(Map.of("tests/../kinds.ttl", text), Map.of()))
        .hasMessageContaining("a file of rules has a name");
  }
}
