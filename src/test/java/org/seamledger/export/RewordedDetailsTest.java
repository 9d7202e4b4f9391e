package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Details;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Seal;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Rules;

/** An office may call parts and places what it likes: drawings find them by their ids. */
class RewordedDetailsTest {

  private static final Path CONTENT = Path.of("shapes", "details-content.ttl");

  @TempDir
  private Path folder;

  /** Every letter of every label is another one, every label as long as before: nothing but words may differ. */
  @Test
  void otherLabelsLeaveEveryDrawingAsItIs() throws IOException {
    String text = Files.readString(CONTENT);
    int body = text.indexOf("@prefix detail:");
    Matcher labels = Pattern.compile("(sl:part|sl:place) \"([^\"]*)\"").matcher(text.substring(body));
    String reworded = text.substring(0, body) + labels.replaceAll(m -> m.group(1) + " \"" + turned(m.group(2)) + "\"");
    SortedMap<String, Detail> before = new Details(Rules.packaged()).book();
    SortedMap<String, Detail> after = book(reworded);
    assertThat(after).hasSameSizeAs(before);
    before.forEach((id, detail) -> {
      String one = SectionDrawing.svg(DetailScenes.of(detail, RoofSystem.DEFAULT), DetailScenes.ID, SheetSetup.DEFAULT);
      String other = SectionDrawing.svg(DetailScenes.of(after.get(id), RoofSystem.DEFAULT), DetailScenes.ID, SheetSetup.DEFAULT);
      assertThat(withoutWords(other)).as(id).isEqualTo(withoutWords(one));
      counted(after.get(id)).forEach(part -> assertThat(other).contains(part));
    });
  }

  /** Parts of which there is at least a piece: no other is drawn. */
  private static List<String> counted(Detail detail) {
    return DetailScenes.of(detail, RoofSystem.DEFAULT).quantities().byJunction().get(DetailScenes.ID).metal().stream()
        .filter(m -> m.pieces() > 0).map(MetalLine::part).toList();
  }

  /** ROT13. */
  private static String turned(String label) {
    StringBuilder turned = new StringBuilder();
    label.chars().forEach(c -> turned
        .append((char) (c >= 'a' && c <= 'z' ? 'a' + (c - 'a' + 13) % 26 : c >= 'A' && c <= 'Z' ? 'A' + (c - 'A' + 13) % 26 : c)));
    return turned.toString();
  }

  private static String withoutWords(String svg) {
    return svg.replaceAll(">[^<]*<", "><").replaceAll("data-words=\"[^\"]*\"", "");
  }

  /** A detail as files had it before there were ids: drawn by its words, as then. */
  @Test
  void aFileWithoutIdsIsDrawnByItsWords() throws IOException {
    String text = Files.readString(CONTENT);
    int from = text.indexOf("detail:hip ");
    int to = text.indexOf("\n\n", from);
    Detail old = book(text.substring(0, from) + """
        detail:hip sl:title "Hip" ;
          sl:metal (
            [ sl:part "closure" ; sl:on "each-face" ; sl:run "per-piece" ; sl:girthMm 90 ]
            [ sl:part "hip cap" ; sl:on "line" ; sl:run "continuous" ] ) ;
          sl:seals (
            [ sl:form "tape" ; sl:role "primary" ; sl:exposure "concealed" ; sl:place "under the closure's foot" ;
              sl:on "each-face" ; sl:run "continuous" ]
            [ sl:form "in-seam" ; sl:role "secondary" ; sl:exposure "concealed" ; sl:place "in the cap's laps" ; sl:lines 2 ; sl:on "line" ;
              sl:run "per-lap" ; sl:of "hip cap" ] ) ;
          sl:fastenings (
            [ sl:place "closure foot" ; sl:on "each-face" ; sl:run "per-piece" ; sl:spacing "fasteners.spacing" ; sl:throughTape true ]
            [ sl:place "cap edge" ; sl:on "each-face" ; sl:run "continuous" ; sl:spacing "fasteners.spacing" ; sl:throughTape true ] ) ;
          sl:waterPath "The cap laps over closures." ; sl:metalFirst true ; sl:source "common practice" .
        """ + text.substring(to)).get("hip");
    assertThat(old.metal()).extracting(MetalPart::id).containsExactly("closure", "cap");
    assertThat(old.seals()).extracting(Seal::id).containsExactly("closure-foot", "laps");
    assertThat(old.seals().get(1).part()).isEqualTo("cap");
    assertThat(SectionDrawing.svg(DetailScenes.of(old, RoofSystem.DEFAULT), DetailScenes.ID, SheetSetup.DEFAULT))
        .doesNotContain("not drawn");
  }

  @Test
  void twoPartsOfOneIdAreRefusedWithTheLine() throws IOException {
    String text = Files.readString(CONTENT).replace("[ sl:part \"gable trim\" ; sl:id \"trim\"", "[ sl:part \"gable trim\" ; sl:id \"z\"");
    assertThatThrownBy(() -> book(text)).isInstanceOfSatisfying(BrokenRulesException.class, e -> {
      assertThat(e).hasMessageContaining("rake has two parts with sl:id \"z\"");
      assertThat(e.line()).isGreaterThan(0);
      assertThat(e.file()).isNotEmpty();
    });
  }

  private SortedMap<String, Detail> book(String content) throws IOException {
    Files.writeString(folder.resolve("details-content.ttl"), content);
    return new Details(Rules.load(folder)).book();
  }
}
