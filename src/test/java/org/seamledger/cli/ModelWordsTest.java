package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ModelWordsTest {

  @TempDir
  private Path folder;

  @BeforeEach
  void write() throws IOException {
    for (String file : List.of("b.ifc", "a.IFC", "c.ifczip", "notes.txt", "x.zip", "low/d.ifc.gz", "low/deep/e.ifc", ".git/f.ifc",
        "low/.g.ifc",
        "none/readme.md")) {
      Files.createDirectories(folder.resolve(file).getParent());
      Files.writeString(folder.resolve(file), "");
    }
  }

  private List<String> expand(String... words) {
    return ModelWords.expand(List.of(words).stream().map(w -> w.startsWith("server:") ? w : folder + "/" + w).toList()).stream()
        .map(f -> f.replace(folder + "/", "")).toList();
  }

  @Test
  void aFolderIsAllModelsInItAndBelowButHiddenOnes() {
    assertThat(expand("")).containsExactly("a.IFC", "b.ifc", "c.ifczip", "low/d.ifc.gz", "low/deep/e.ifc");
  }

  @Test
  void patternsMatchNamesAndFolders() {
    assertThat(expand("*.ifc")).containsExactly("b.ifc");
    assertThat(expand("**/*.ifc")).containsExactly("b.ifc", "low/deep/e.ifc");
    assertThat(expand("l?w/*")).containsExactly("low/d.ifc.gz");
    assertThat(expand("{a,c}.*")).containsExactly("a.IFC", "c.ifczip");
    assertThat(expand("[ab].*")).containsExactly("a.IFC", "b.ifc");
  }

  @Test
  void eachOnceInTheOrderOfTheWords() {
    assertThat(expand("low", "b.ifc", "*.ifc", "server:office/Gate [old]", "gone.ifc"))
        .containsExactly("low/d.ifc.gz", "low/deep/e.ifc", "b.ifc", "server:office/Gate [old]", "gone.ifc");
  }

  @Test
  void whatHoldsNoneIsSaid() {
    assertThatThrownBy(() -> expand("none")).isInstanceOf(UsageException.class).hasMessageContaining("none holds no model");
    assertThatThrownBy(() -> expand("z*.ifc")).isInstanceOf(UsageException.class).hasMessageContaining("no model matches");
    assertThatThrownBy(() -> expand("[.ifc")).isInstanceOf(UsageException.class).hasMessageContaining("is no pattern");
  }

  @Test
  void aFileWhoseNameLooksLikeAPatternIsThatFile() throws IOException {
    Files.writeString(folder.resolve("roof [2].ifc"), "");
    assertThat(expand("roof [2].ifc")).containsExactly("roof [2].ifc");
  }
}
