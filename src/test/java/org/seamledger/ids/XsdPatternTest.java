package org.seamledger.ids;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.regex.PatternSyntaxException;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.SAXException;

/** Patterns mean what they mean in XML Schema: the JDK's own validator of XML Schema is the judge. */
@Tag("slow")
class XsdPatternTest {

  private static final String[] TEXTS = {"", "a", "b", "ab", "abc", "A", "é", "ß", "Ω", "7", "٣", "42", "DT01", "DT0", "ADT01", "x-y",
      "x_y", "^a", "a$", "^a$",
      ".", "-", "a-b", "e", "i", "\t", " ", "a b", "Don't", "[", "]", "\\", "a&&b", "&", "😀", "1.5", "€", "+", "_", ":", "(a)", "{2}",
      "aa", "aaa", "|",
      "中", "IFCWALLTYPE", "WT01", "EF_25_10_25", "a\nb", "\r"};

  @ParameterizedTest
  @ValueSource(strings = {"DT01", "DT.", "DT.*", ".*DT.*", "DT[0-9]", "DT[0-9]{2}", "\\w+", "\\W", "\\d+", "\\D", "\\s", "\\S+",
      "\\i\\c*", "\\I", "\\C", "^a$",
      "a|b", "(a|b)+", "[a-z-[aeiou]]", "[^a-z]", "[^a-z-[A-Z]]", "[\\d-[7]]", "[a\\-b]", "[-a]", "[a-]", "[\\w\\s]+", "\\p{L}",
      "\\p{Lu}+", "\\P{Lu}",
      "\\p{IsBasicLatin}+", "\\P{IsBasicLatin}", "[\\p{L}\\p{Nd}]+", "a&&b", "[a&&b]+", "[^\\s]+", "[^\\W]+", "\\.", "\\^a\\$?", "a{2}",
      "a{2,}", "a{0,1}",
      "IFC.*TYPE", "(WT[0-9]{2})?", "\\(a\\)", "\\{2\\}", "[+*?.()|]", "EF_25_10.*", "[A-Z]{2}[0-9]{2}", "", "a||b", "[😀-😂]", "[\\^a]+",
      "[a^]+", "'", "#a", "a #"})
  void matchesWhatTheValidatorMatches(String pattern) throws Exception {
    if (pattern.contains("\\$")) {
      // Not an escape of XML Schema: both refuse it.
      assertThatThrownBy(() -> XsdPattern.compile(pattern)).isInstanceOf(PatternSyntaxException.class);
      return;
    }
    Schema schema = schema(pattern);
    for (String text : TEXTS) {
      // Which characters names may have, the editions of XML 1.0 don't agree on; the validator goes by the fourth, we by the fifth.
      if (pattern.matches(".*\\\\[iIcC].*") && "٣😀€".contains(text) && !text.isEmpty()) {
        continue;
      }
      boolean matches = XsdPattern.compile(pattern).matcher(text).matches();
      assertThat(matches).as("%s on '%s'", pattern, text).isEqualTo(accepts(schema, text));
    }
  }

  @ParameterizedTest
  @CsvSource(delimiter = ' ', value = {"a** 3", "a+? 3", "(?:a) 2", "(a 3", "a) 2", "[a 3", "[] 2", "[z-a] 2", "\\1 2", "\\b 2",
      "\\Q 2", "*a 1", "a{x} 2", "\\p{Greek} 3",
      "\\p{IsNowhere} 3", "a{2}{3} 5", "[a[b]] 3"})
  void refusesWhatIsNoneWithItsPlace(String pattern, int character) {
    assertThatThrownBy(() -> XsdPattern.compile(pattern)).isInstanceOfSatisfying(PatternSyntaxException.class,
        e -> assertThat(e.getIndex() + 1).as(pattern).isEqualTo(character));
  }

  /** Nested repetitions over a text that doesn't match in the end: 2 to the 40th ways. */
  @Test
  void givesUpOnAPatternThatWouldTakeForEver() {
    assertThat(new ValueConstraint.XmlPattern("(a+)+b", XsdPattern.compile("(a+)+b")).matches("a".repeat(40) + "c")).isFalse();
  }

  private static Schema schema(String pattern) throws SAXException {
    String escaped = pattern.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    return SchemaFactory.newDefaultInstance().newSchema(source("<xs:schema xmlns:xs='http://www.w3.org/2001/XMLSchema'>"
        + "<xs:element name='t'><xs:simpleType><xs:restriction base='xs:string'><xs:pattern value=\"" + escaped
        + "\"/></xs:restriction></xs:simpleType></xs:element></xs:schema>"));
  }

  private static StreamSource source(String text) {
    return new StreamSource(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static boolean accepts(Schema schema, String text) throws Exception {
    StringBuilder escaped = new StringBuilder();
    text.codePoints().forEach(c -> escaped.append("&#").append(c).append(';'));
    try {
      schema.newValidator().validate(source("<t>" + escaped + "</t>"));
      return true;
    } catch (SAXException e) {
      return false;
    }
  }
}
