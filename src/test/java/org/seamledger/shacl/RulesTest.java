package org.seamledger.shacl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.detail.Details;
import org.seamledger.detail.DesignReview;
import org.seamledger.detail.Kinds;

/** Rules from a folder: what an office may change, and what it is told when it slips. */
class RulesTest {

  private static final Path SHAPES = Path.of("shapes");

  @TempDir
  Path folder;

  @Test
  void anEditedLimitGivesOtherKindsWithoutANewBuild() throws IOException {
    Map<String, Object> line = Map.of("against", "wall", "faceCount", 1, "minSlopeDegrees", 20.0, "obliquityDegrees", 70.0,
        "lowRiseDegrees", -18.9, "highRiseDegrees", -18.9, "inclinationDegrees", 7.0);
    assertThat(Rules.packaged().choice("kind").decide(line)).containsExactly("skew-wall");
    edit("kinds.ttl", "sh:minInclusive 75", "sh:minInclusive 65");
    Rules own = Rules.load(folder);
    assertThat(own.choice("kind").decide(line)).containsExactly("headwall");
    assertThat(own.hash()).isNotEqualTo(Rules.packaged().hash());
  }

  @Test
  void theHashKnowsTextsButNotLineEnds() throws IOException {
    edit("kinds.ttl", "\n", "\r\n");
    assertThat(Rules.load(folder).hash()).isEqualTo(Rules.packaged().hash()).matches("[0-9a-f]{64}");
    Files.writeString(folder.resolve("more.ttl"), "# nothing\n");
    assertThat(Rules.load(folder).hash()).isNotEqualTo(Rules.packaged().hash());
  }

  @Test
  void aSlipInTheSyntaxHasItsLineAndColumn() throws IOException {
    edit("kinds.ttl", "sh:minInclusive 85 ]", "sh:minInclusive 85 ");
    int line = lineOf("sh:minInclusive 85");
    assertThatThrownBy(() -> Rules.load(folder)).isInstanceOfSatisfying(BrokenRulesException.class, e -> {
      assertThat(e.file()).isEqualTo(folder.resolve("kinds.ttl").toString());
      assertThat(e.line()).isEqualTo(line);
      assertThat(e.column()).isPositive();
      assertThat(e.getMessage()).doesNotContain("\n");
    });
  }

  @Test
  void aFactThatNobodyMeasuresIsRefused() throws IOException {
    edit("kinds.ttl", "sl:obliquityDegrees ; sh:minInclusive 85", "sl:obliqueDegrees ; sh:minInclusive 85");
    broken("sl:obliqueDegrees", "there is no fact obliqueDegrees (did you mean obliquityDegrees?)");
  }

  @Test
  void aConstraintThatShaclDoesNotHaveIsRefused() throws IOException {
    edit("kinds.ttl", "sh:maxInclusive 15", "sh:maxInclusiv 15");
    broken("sh:maxInclusiv", "sh:maxInclusiv is no term of SHACL Core (did you mean maxInclusive?)");
  }

  @Test
  void aLimitThatIsNoNumberIsRefused() throws IOException {
    edit("kinds.ttl", "sh:maxInclusive 15", "sh:maxInclusive \"15°\"");
    broken("15°", "sh:maxInclusive needs a number, found \"15°\"");
  }

  @Test
  void aReferenceToNowhereIsRefused() throws IOException {
    edit("kinds.ttl", "sh:node kind:AtWall , kind:WallAlongFall", "sh:node kind:AtWall , kind:WallAlong");
    broken("kind:WallAlong ;", "refers to the shape WallAlong, which is nowhere");
  }

  @Test
  void aShapeWithoutAKindIsRefused() throws IOException {
    edit("kinds.ttl", "kind:hip a sh:NodeShape ; sl:kind \"hip\" ;", "kind:hip a sh:NodeShape ;");
    broken("kind:hip a", "the shape hip has no effect: give it a name (sl:kind \"...\") or refer to it");
  }

  @Test
  void aKindThatThereIsNotIsRefused() throws IOException {
    edit("kinds.ttl", "sl:kind \"hip\"", "sl:kind \"hipp\"");
    int line = lineOf("hipp");
    assertThatThrownBy(() -> new Kinds(Rules.load(folder))).isInstanceOfSatisfying(BrokenRulesException.class, e -> {
      assertThat(e.line()).isEqualTo(line);
      assertThat(e.getMessage()).contains("there is no kind \"hipp\"");
    });
  }

  @Test
  void aKindClaimedTwiceIsRefused() throws IOException {
    edit("kinds.ttl", "sl:kind \"hip\"", "sl:kind \"ridge\"");
    assertThatThrownBy(() -> new Kinds(Rules.load(folder))).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("a second shape claims sl:kind ridge");
  }

  @Test
  void noShapesAtAllAreRefused() throws IOException {
    assertThatThrownBy(() -> Rules.load(folder)).isInstanceOf(BrokenRulesException.class).hasMessageContaining("holds no file of rules");
    assertThatThrownBy(() -> Rules.load(folder.resolve("nowhere"))).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("is no folder of rules");
    Files.writeString(folder.resolve("kinds.ttl"), "# empty\n");
    assertThatThrownBy(() -> new Kinds(Rules.load(folder))).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("no shape has sl:kind");
    Files.write(folder.resolve("kinds.ttl"), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
    assertThatThrownBy(() -> Rules.load(folder)).isInstanceOf(BrokenRulesException.class).hasMessageContaining("is not UTF-8 text");
  }

  @Test
  void slipsInDetailsHaveTheirLine() throws IOException {
    edit("details-content.ttl", "sl:form \"bead\"", "sl:form \"bad\"");
    int line = lineOf("\"bad\"", "details-content.ttl");
    assertThatThrownBy(() -> new Details(Rules.load(folder))).isInstanceOfSatisfying(BrokenRulesException.class, e -> {
      assertThat(e.line()).isEqualTo(line);
      assertThat(e.getMessage()).contains("sl:form is \"bad\"; there are tape, bead, in-seam");
    });
    edit("details-content.ttl", "sl:girthMm 90", "sl:girth 90");
    assertThatThrownBy(() -> new Details(Rules.load(folder))).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("there is no property sl:girth here (did you mean girthMm?)");
    Files.delete(folder.resolve("details-content.ttl"));
    edit("details.ttl", "sl:detail \"hip\"", "sl:detail \"hip-new\"");
    Files.writeString(folder.resolve("details.ttl"),
        Files.readString(folder.resolve("details.ttl")).replace("detail:hip a", "detail:hip-new a"));
    assertThatThrownBy(() -> new Details(Rules.load(folder))).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("hip-new is chosen, but nothing says what it consists of");
  }

  @Test
  void slipsInFindingsHaveTheirLine() throws IOException {
    edit("findings.ttl", "{tapeSpacingM}", "{tapeSpacing}");
    assertThatThrownBy(() -> new DesignReview(Rules.load(folder), Map.of())).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("findings.ttl:").hasMessageContaining("there is no such fact (did you mean tapeSpacingM?)");
    edit("findings.ttl", "sh:severity sh:Warning", "sh:severity sh:Warnung");
    assertThatThrownBy(() -> Rules.load(folder)).isInstanceOf(BrokenRulesException.class)
        .hasMessageContaining("sh:Warnung is no term of SHACL Core (did you mean Warning?)");
  }

  /** References between shapes are followed by this program; the engine alone must say the same. */
  @Test
  void shapesTriedHereConformAsTheyDoInTheEngine() {
    long seed = System.nanoTime();
    Random random = new Random(seed);
    Choice kinds = Rules.packaged().choice("kind");
    List<String> against = List.of("face", "nothing", "wall", "penetration", "opening", "round", "air");
    double[] angles = {-20, -0.001, 0, 0.001, 0.499, 0.5, 15, 15.001, 44.999, 45, 74.999, 75, 84.999, 85, 90};
    for (int i = 0; i < 120; i++) {
      Map<String, Object> facts = new java.util.TreeMap<>();
      facts.put("against", against.get(random.nextInt(against.size())));
      for (String name : List.of("inclinationDegrees", "lowRiseDegrees", "highRiseDegrees", "foldDegrees", "obliquityDegrees",
          "minSlopeDegrees")) {
        if (random.nextInt(12) > 0) {
          facts.put(name, angles[random.nextInt(angles.length)]);
        }
      }
      assertThat(kinds.decide(facts)).as("seed %d: %s", seed, facts).isEqualTo(kinds.explain(facts).conforming());
    }
  }

  private void edit(String file, String from, String to) throws IOException {
    String text = Files.readString(SHAPES.resolve(file), StandardCharsets.UTF_8);
    assertThat(text).contains(from);
    Files.writeString(folder.resolve(file), text.replace(from, to));
  }

  private int lineOf(String text) throws IOException {
    return lineOf(text, "kinds.ttl");
  }

  private int lineOf(String text, String file) throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve(file));
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).contains(text)) {
        return i + 1;
      }
    }
    throw new AssertionError(text);
  }

  private void broken(String at, String message) throws IOException {
    int line = lineOf(at);
    assertThatThrownBy(() -> Rules.load(folder)).isInstanceOfSatisfying(BrokenRulesException.class, e -> {
      assertThat(e.getMessage()).contains(message);
      assertThat(e.line()).isEqualTo(line);
    });
  }
}
