package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.seamledger.step.Exchange.value;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Strings, ISO 10303-21:2002 clause 6.4.3 with its tables of control directives; the standard's own examples where marked. */
class TextTest {

  private static String text(String inside) {
    return ((Value.Text) value("'" + inside + "'")).value();
  }

  private static String textOfBytes(byte[] inside) {
    return text(new String(inside, StandardCharsets.ISO_8859_1));
  }

  @Test
  void plain() {
    assertThat(text("")).isEmpty();
    assertThat(text("CAT")).isEqualTo("CAT");
    assertThat(text(" ")).isEqualTo(" ");
  }

  @Test
  void apostropheAndBackslash() {
    // Standard's examples: 'Don''t' and ''''.
    assertThat(text("Don''t")).isEqualTo("Don't");
    assertThat(text("''")).isEqualTo("'");
    assertThat(text("''''")).isEqualTo("''");
    assertThat(text("C:\\\\models\\\\S\\\\roof.ifc")).isEqualTo("C:\\models\\S\\roof.ifc");
  }

  @Test
  void characters128PlacesOn() {
    // \S\D is Ä in ISO 8859-1 (44 hexadecimal + 80), \S\' the paragraph sign, its apostrophe not doubled.
    assertThat(text("\\S\\Drger")).isEqualTo("Ärger");
    assertThat(text("\\S\\' 34")).isEqualTo("§ 34");
    assertThat(text("\\S\\'")).isEqualTo("§");
    assertThat(text("\\S\\'''")).isEqualTo("§'");
    assertThat(text("a\\\\S\\\\")).isEqualTo("a\\S\\");
  }

  @Test
  void otherPages() {
    // \PE\ chooses ISO 8859-5 (Cyrillic), whose D1 is small be; the choice ends with the string.
    assertThat(text("\\PE\\\\S\\Q")).isEqualTo("\u0431");
    assertThat(text("\\PB\\\\S\\1")).isEqualTo("\u0105");
    assertThat(text("\\S\\Q")).isEqualTo("\u00D1");
  }

  @Test
  void hexadecimalCharacters() {
    assertThat(text("see \\X\\A7 4.1")).isEqualTo("see § 4.1"); // standard's example
    assertThat(text("\\X2\\00C400D6\\X0\\ and \\X2\\03C0\\X0\\")).isEqualTo("ÄÖ and π");
    assertThat(text("\\X4\\0001F3E0\\X0\\")).isEqualTo("🏠");
    assertThat(text("\\X2\\D83CDFE0\\X0\\")).isEqualTo("🏠");
    assertThat(text("\\X2\\00c4\\X0\\''")).isEqualTo("Ä'");
  }

  @Test
  void rawBytes() {
    assertThat(textOfBytes("Dachfläche 屋根 🏠".getBytes(StandardCharsets.UTF_8))).isEqualTo("Dachfläche 屋根 🏠");
    assertThat(textOfBytes("Dachfläche".getBytes(StandardCharsets.ISO_8859_1))).isEqualTo("Dachfläche");
  }

  @Test
  void lineEndsOnlyWrap() {
    assertThat(text("a long\r\n name")).isEqualTo("a long name");
  }

  @Test
  void escapesThatAreNoneStay() {
    assertThat(text("C:\\temp\\x")).isEqualTo("C:\\temp\\x");
    assertThat(text("\\X2\\00C\\X0\\")).isEqualTo("\\X2\\00C\\X0\\");
    assertThat(text("\\X2\\00C4")).isEqualTo("\\X2\\00C4");
    assertThat(text("\\X4\\00110000\\X0\\")).isEqualTo("\\X4\\00110000\\X0\\");
    assertThat(text("\\X\\G1")).isEqualTo("\\X\\G1");
    assertThat(text("\\")).isEqualTo("\\");
  }

  @Test
  void instancesBehindOddStringsAreFound() {
    StepFile file = Exchange.open(Exchange.of(
        "#1=IFCX('\\S\\'','it''s; #9=IFCNO();','''','',' /* ');\n#2=IFCX('*/');\n#3=IFCY('\\S\\' and \\\\S\\\\','\\X\\27;');"));
    assertThat(file.idsOf("IFCX")).containsExactly(1, 2);
    assertThat(file.idsOf("IFCY")).containsExactly(3);
    assertThat(Exchange.count(file)).isEqualTo(3);
    assertThat(file.find(1).orElseThrow().parameters()).containsExactly(new Value.Text("§"), new Value.Text("it's; #9=IFCNO();"),
        new Value.Text("'"), new Value.Text(""), new Value.Text(" /* "));
  }
}
