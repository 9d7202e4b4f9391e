package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** First bytes as the formats' own specifications have them; {@code \xNN} is a byte. */
class ForeignFormatTest {

  private static byte[] bytes(String text) {
    StringBuilder bytes = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      if (text.startsWith("\\x", i)) {
        bytes.append((char) Integer.parseInt(text.substring(i + 2, i + 4), 16));
        i += 3;
      } else if (text.startsWith("\\n", i)) {
        bytes.append('\n');
        i += 1;
      } else {
        bytes.append(text.charAt(i));
      }
    }
    return bytes.toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', quoteCharacter = '~', textBlock = """
      %PDF-1.7                                                     | a PDF document
      \\x89PNG\\x0D\\x0A\\x1A\\x0A                                     | a picture (PNG)
      \\xFF\\xD8\\xFF\\xE0                                             | a picture (JPEG)
      \\xD0\\xCF\\x11\\xE0\\xA1\\xB1\\x1A\\xE1                             | a compound binary file
      AC1032\\x00                                                   | a CAD drawing (DWG)
      ~  0\\nSECTION\\n  2\\nHEADER~                                  | a CAD drawing (DXF)
      glTF\\x02\\x00\\x00\\x00                                         | a scene of triangles (binary glTF)
      {"asset": {"version": "2.0"}}                                | a scene of triangles (glTF)
      <!DOCTYPE html><html>                                        | a web page
      ~\\n\\n<HTML lang="en">~                                       | a web page
      \\xEF\\xBB\\xBF<?xml version="1.0"?>\\n<ifcXML xmlns="http://x">  | ifcXML
      <?xml version="1.0"?>\\n<ex:iso_10303_28 version="2.0">       | ifcXML
      <ids xmlns="http://standards.buildingsmart.org/IDS">         | an IDS file
      <?xml version="1.0"?><gpx>                                   | XML
      {"contract" : 1, "program" : {}}                             | a result of this program
      [{"a": 1}]                                                   | JSON
      Rar!\\x1A\\x07\\x01\\x00                                         | an archive (RAR)
      SQLite format 3\\x00                                          | an SQLite database
      \\xFF\\xFEI\\x00S\\x00O\\x00                                      | text in UTF-16
      solid roof\\n  facet normal 0 0 1                             | a mesh of triangles (STL)
      # made by hand\\nv 0 0 0                                      | a mesh of triangles (OBJ)
      """)
  void isNamedForWhatItIsWithWhatToDo(String first, String words) {
    assertThat(ForeignFormat.of(bytes(first))).as(first).hasValueSatisfying(f -> assertThat(f.found()).startsWith(words).contains("("));
  }

  @Test
  void stepTextAndWhatNobodyKnowsIsNoneOfThem() {
    for (String text : new String[] {"ISO-10303-21;\nHEADER;", "\u00EF\u00BB\u00BF  iso-10303-21;", "hello", "",
        "/* {\"asset\": */ISO-10303-21;",
        "#1=IFCWALL($);", "A model of a house"}) {
      assertThat(ForeignFormat.of(bytes(text))).as(text).isEmpty();
    }
  }
}
