package org.seamledger.ifc.product;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.finding.Finding;
import org.seamledger.ifc.Drawing;

/** Which elements are flashings and gutters; words of the trade from memory. */
class FlashingsTest {

  @ParameterizedTest
  @CsvSource({"Ridge cap 0.6 mm, FLASHING", "ridgecap-12, FLASHING", "RIDGE-CAP, FLASHING", "Step flashing (left), FLASHING",
      "Firstblech:Typ 2, FLASHING",
      "Traufblech, FLASHING", "Überhangstreifen, FLASHING", "solin, FLASHING", "Faîtière, FLASHING", "scossalina, FLASHING",
      "nockplåt, FLASHING",
      "Coping 300, FLASHING", "eaves gutter, GUTTER", "Dachrinne DN 100, GUTTER", "gouttière, GUTTER", "gutter flashing, FLASHING",
      "rynna 125, GUTTER",
      "коньковая планка, FLASHING", "棟包み, FLASHING"})
  void namesThatSayIt(String name, Category category) {
    assertThat(FlashingWords.in(FlashingWords.words(name))).contains(category);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "Basic Roof:Generic", "Sparren-9", "Firstpfette", "cap", "flashing light", "Fallrohr an Dachrinne",
      "gutter guard", "window flashing", "concrete apron", "beam shoe", "Ortgangsparren", "ridge beam"})
  void namesThatDoNot(String name) {
    assertThat(FlashingWords.in(FlashingWords.words(name))).isEmpty();
  }

  private static Drawing withRoof() {
    Drawing d = Drawing.ifc4();
    d.roof(d.extruded(d.rectangle(4, 3), 0.2));
    return d;
  }

  private static String small(Drawing d, String text) {
    return d.add(text, d.id(), d.placement("$", d.at(0, 0, 0.2)), d.shape("SweptSolid", d.extruded(d.rectangle(4, 0.1), 0.05)));
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      IFCCOVERING('%s',$,'ridge cap','','',%s,%s,$,.NOTDEFINED.)             | FLASHING
      IFCCOVERING('%s',$,'C1','','drip edge',%s,%s,$,.USERDEFINED.)          | FLASHING
      IFCCOVERING('%s',$,'C1','','',%s,%s,$,.COPING.)                        | FLASHING
      IFCBUILDINGELEMENTPROXY('%s',$,'Firstblech','','',%s,%s,$,.NOTDEFINED.) | FLASHING
      IFCPLATE('%s',$,'apron','','',%s,%s,$,.SHEET.)                         | FLASHING
      IFCMEMBER('%s',$,'gable trim','','',%s,%s,$,.MEMBER.)                  | FLASHING
      IFCDISCRETEACCESSORY('%s',$,'kickout','','',%s,%s,$,.NOTDEFINED.)      | FLASHING
      IFCPIPESEGMENT('%s',$,'P','','',%s,%s,$,.GUTTER.)                      | GUTTER
      """)
  void isKeptApartFromWhatPiercesARoof(String text, Category category) {
    Drawing d = withRoof();
    small(d, text);
    Building b = d.read();
    assertThat(b.flashings()).extracting(Element::category).containsExactly(category);
    assertThat(b.neighbours()).isEmpty();
    assertThat(b.roofs()).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      IFCPIPESEGMENT('%s',$,'pipe with flashing','','',%s,%s,$,.RIGIDSEGMENT.)  | SERVICE
      IFCBUILDINGELEMENTPROXY('%s',$,'hatch','','',%s,%s,$,.NOTDEFINED.)       | PENETRATION
      """)
  void otherThingsStayWhatTheyAre(String text, Category category) {
    Drawing d = withRoof();
    small(d, text);
    Building b = d.read();
    assertThat(b.flashings()).isEmpty();
    assertThat(b.neighbours()).extracting(Element::category).containsExactly(category);
  }

  @Test
  void aDiscreteAccessoryThatIsNoFlashingIsLeftOut() {
    Drawing d = withRoof();
    small(d, "IFCDISCRETEACCESSORY('%s',$,'beam shoe','','',%s,%s,$,.SHOE.)");
    assertThat(d.read().neighbours()).isEmpty();
  }

  @Test
  void aFlashingInsideARoofIsNoRoof() {
    Drawing d = Drawing.ifc4();
    String placement = d.placement("$", d.at(0, 0, 0));
    String slab = d.product("IFCSLAB", placement, d.shape("SweptSolid", d.extruded(d.rectangle(4, 3), 0.2)), ",$,.ROOF.");
    String cap = small(d, "IFCCOVERING('%s',$,'ridge cap','','',%s,%s,$,.NOTDEFINED.)");
    String roof = d.product("IFCROOF", placement, "$", ",$,.NOTDEFINED.");
    d.add("IFCRELAGGREGATES('%s',$,$,$,%s,(%s,%s))", d.id(), roof, slab, cap);
    Building b = d.read();
    assertThat(b.roofs()).extracting(Element::ifcClass).containsExactly("IfcSlab");
    assertThat(b.flashings()).hasSize(1);
  }

  @Test
  void theTypesNameCounts() {
    Drawing d = withRoof();
    String proxy = small(d, "IFCBUILDINGELEMENTPROXY('%s',$,'P-17','','',%s,%s,$,.NOTDEFINED.)");
    String type = d.add("IFCBUILDINGELEMENTPROXYTYPE('%s',$,'Headwall flashing 300',$,$,$,$,$,$,.NOTDEFINED.)", d.id());
    d.add("IFCRELDEFINESBYTYPE('%s',$,$,$,(%s),%s)", d.id(), proxy, type);
    assertThat(d.read().flashings()).hasSize(1);
  }

  @Test
  void instancesThatRepeatAnIdAreReported() {
    Drawing d = withRoof();
    String text = d.text().replaceFirst("#2=", "#1=");
    assertThat(Drawing.read(text).findings()).extracting(Finding::code).contains("model/repeated-instance-id");
  }

  /** Words are letters and marks as Unicode has them, in lower case and without accents. */
  @ParameterizedTest
  @ValueSource(
      strings = {"", " ", "12", "Ridge-Cap:3000 mm", "a", "A1b2", "  Gutter ", "Dachrinne_ø150", "Gouttière", "FAÎTIÈRE 3", "~", "\u007F",
          "x\u00A0y", "Рифленый отлив 2", "屋脊盖1", "e\u0301t\u00e9", "İstanbul", "ǅ1", "a\tb\nc", "İ", "ﬁ rst"})
  void wordsAreLetters(String name) {
    assertThat(FlashingWords.words(name))
        .isEqualTo(" " + RoofWords.plain(name).replaceAll("[^\\p{L}\\p{M}]+", " ").strip() + " ");
  }
}
