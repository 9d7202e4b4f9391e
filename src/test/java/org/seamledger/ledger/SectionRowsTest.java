package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamledger.detail.Decision;

/** What sections show stays as long as a result that it belongs to: the one in force, and that by the rules alone. */
@Tag("slow")
class SectionRowsTest {

  private static final byte[] ONE = {1, 0, -1};
  private static final byte[] TWO = {2, 2};

  @TempDir
  private Path folder;

  private Path result(int lines) throws IOException {
    return Files.writeString(folder.resolve("result.json"), "{\"contract\":1,\"junctions\":[],\"quantities\":{\"panelSum\":" + lines
        + "},\"findings\":[]}");
  }

  @ParameterizedTest
  @EnumSource
  void belongToResults(StorageEngine which) throws IOException {
    try (Store store = Store.open(folder.resolve("data"), which.newDatabase())) {
      SectionRows sections = store.sections();
      String id = store.analyses().add(Analyses.newId(), Optional.empty(), "hall", List.of(), "").id();
      store.analyses().begin(id);
      sections.keep(id, "of a run that came to nothing", List.of(ONE));
      String byRules = Analyses.compress(result(1)).sha256();
      sections.keep(id, byRules, List.of(ONE, TWO));
      store.analyses().complete(id, result(1), Optional.empty());
      assertThat(store.analyses().ledgerHash(id)).isEqualTo(byRules);
      assertThat(sections.part(id, byRules, 0)).contains(ONE);
      assertThat(sections.part(id, byRules, 1)).contains(TWO);
      assertThat(sections.part(id, byRules, 2)).isEmpty();
      assertThat(sections.part(id, "of a run that came to nothing", 0)).isEmpty();

      Choices.Standing decided = new Choices.Standing(List.of(new Decision("J1", "hip", "", "seen on site")), 0, false);
      for (int lines = 2; lines < 4; lines++) {
        sections.keep(id, Analyses.compress(result(lines)).sha256(), List.of(TWO));
        store.choices().complete(id, decided, Optional.of(result(lines)), Optional.empty());
      }
      assertThat(sections.part(id, store.analyses().ledgerHash(id), 0)).contains(TWO);
      assertThat(sections.part(id, byRules, 0)).as("they come back when decisions are taken back").contains(ONE);
      sections.keep(id, store.analyses().ledgerHash(id), List.of(ONE));
      assertThat(sections.part(id, Analyses.compress(result(2)).sha256(), 0)).as("a result that was replaced").isEmpty();
      assertThat(sections.part(id, store.analyses().ledgerHash(id), 0)).as("written once more").contains(ONE);

      store.analyses().remove(id);
      assertThat(sections.part(id, byRules, 0)).isEmpty();
      sections.keep(id, byRules, List.of(ONE));
      assertThat(sections.part(id, byRules, 0)).as("of an analysis that was removed meanwhile").isEmpty();
    }
  }
}
