package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.finding.UnreadableModelException;

/** Errors name line, column, what was expected and what was found. Places counted by hand. */
class ErrorPlaceTest {

  private static UnreadableModelException opening(String text) {
    UnreadableModelException e = catchThrowableOfType(UnreadableModelException.class, () -> Exchange.open(text));
    assertThat(e).as(text).isNotNull();
    assertThat(e.getMessage()).doesNotContain("\n").doesNotContain("\r");
    return e;
  }

  private static UnreadableModelException decoding(String instances) {
    StepFile file = Exchange.open(Exchange.of(instances));
    return catchThrowableOfType(UnreadableModelException.class, () -> file.find(1));
  }

  private static void at(UnreadableModelException e, int instanceLine, int column, String rest) {
    assertThat(e).hasMessage("shed.ifc:" + (Exchange.FIRST_LINE - 1 + instanceLine) + ":" + column + ": " + rest);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "''|no text at all",
      "' '|no text at all",
      "hello world|hello world",
      "'<?xml version=\"1.0\"?>'|XML (ifcXML is not supported)",
      "'\u0089HDF'|byte 0x89",
      "ISO-10303-28;|ISO-10303-28;"})
  void whatIsNoStepFile(String text, String found) {
    UnreadableModelException e = opening(text);
    assertThat(e.getMessage()).startsWith("shed.ifc:1:")
        .endsWith(": expected a STEP file, which starts with ISO-10303-21;, found " + found);
  }

  @Test
  void textThatEnds() {
    String whole = Exchange.of("#1=IFCA('x',(1.,2.));\n#2=IFCB(#1);");
    for (int n = 0; n < whole.indexOf("END-ISO-10303-21;") + "END-ISO-10303-21;".length(); n++) {
      UnreadableModelException e = opening(whole.substring(0, n));
      assertThat(e.getMessage()).as("cut at %d", n).matches("shed\\.ifc:\\d+:\\d+: expected .+, found .+");
      if (!whole.substring(n - Math.min(n, 1), n + 1).matches("[A-Z0-9-]+")) {
        assertThat(e.getMessage()).as("cut at %d", n).matches(".*(the end of the file|no text at all)");
      }
    }
  }

  @Test
  void theEndInTheMiddleOfAnInstance() {
    String head = Exchange.HEAD + "DATA;\n";
    at(opening(head + "#1=IFCA(1.,"), 1, 12, "expected a parameter, found the end of the file");
    at(opening(head + "#1=IFCA('abc"), 1, 13, "expected ' at the end of the text, found the end of the file");
    at(opening(head + "#1=IFCA(1.)"), 1, 12, "expected ; at the end of #1, found the end of the file");
    at(opening(head + "#1=IFCA(1.);\n#2=IFC"), 2, 7, "expected ( after the entity's name, found the end of the file");
    at(opening(head + "#1=IFCA(1.);\n"), 2, 1, "expected an instance (#) or ENDSEC;, found the end of the file");
    at(opening(head + "#1=IFCA(1.);\nENDSEC;\n"), 3, 1, "expected DATA; or END-ISO-10303-21;, found the end of the file");
  }

  @Test
  void commentsThatNeverEnd() {
    at(opening(Exchange.of("#1=IFCA();\n  /* and on\n#2=IFCB();")), 2, 3,
        "expected */ at the end of this comment, found the end of the file");
    at(opening(Exchange.of("#1=IFCA(/* and on\n);")), 1, 9, "expected */ at the end of this comment, found the end of the file");
    at(opening(Exchange.of("#1=IFCA(); *//* and on\n#2=IFCB();")), 1, 14,
        "expected */ at the end of this comment, found the end of the file");
  }

  @Test
  void commentsThatNeverBegan() {
    at(opening(Exchange.of("#1=IFCA(); */\n#2=IFCB();")), 1, 12,
        "expected an instance (#) or ENDSEC;, found */ without a comment before it");
  }

  @Test
  void missingSemicolon() {
    at(opening(Exchange.of("#1=IFCA(1.)\n#2=IFCB();")), 2, 1, "expected ; at the end of #1, found #2=IFCB();");
    at(opening(Exchange.of("#1=IFCA(1.\n#2=IFCB();")), 2, 1, "expected , or ), found #2=IFCB();");
  }

  @Test
  void missingApostrophe() {
    at(opening(Exchange.of("#1=IFCA('abc);\n#2=IFCB('def');")), 2, 10, "expected , or ), found def');");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1=IFCA();", "IFCA();", "END;", "@1=5;", "&SCOPE"})
  void whatIsNoInstance(String text) {
    at(opening(Exchange.of(text)), 1, 1, "expected an instance (#) or ENDSEC;, found " + text);
  }

  @Test
  void brokenInstances() {
    at(opening(Exchange.of("#=IFCA();")), 1, 2, "expected an instance's number, found =IFCA();");
    at(opening(Exchange.of("#9223372036854775808=IFCA();")), 1, 2,
        "expected an instance's number of at most 9223372036854775807, found 9223372036854775808=IFCA...");
    at(opening(Exchange.of("#1 IFCA();")), 1, 4, "expected = after #1, found IFCA();");
    at(opening(Exchange.of("#1=;")), 1, 4, "expected an entity's name, found ;");
    at(opening(Exchange.of("#1=5();")), 1, 4, "expected an entity's name, found 5();");
    at(opening(Exchange.of("#1=IFCA;")), 1, 8, "expected ( after the entity's name, found ;");
    at(opening(Exchange.of("#1=IFC%A();")), 1, 7, "expected ( after the entity's name, found %A();");
    at(opening(Exchange.of("#1=IFCA(1/2);")), 1, 10, "expected , or ), found /2);");
    at(opening(Exchange.of("#1=IFCA()x;")), 1, 10, "expected ; at the end of #1, found x;");
  }

  @Test
  void placesCountCarriageReturns() {
    at(opening(Exchange.of("#1=IFCA();\r\n#2=IFCB();\r#3=%")), 3, 4, "expected an entity's name, found %");
  }

  @Test
  void brokenParameters() {
    at(decoding("#1=IFCA(();"), 1, 11, "expected , or ), found ;");
    at(decoding("#1=IFCA(1..2);"), 1, 11, "expected , or ), found .2);");
    at(decoding("#1=IFCA(,);"), 1, 9, "expected a parameter, found ,);");
    at(decoding("#1=IFCA(1,);"), 1, 11, "expected a parameter, found );");
    at(decoding("#1=IFCA(#);"), 1, 10, "expected an instance's number, found );");
    at(decoding("#1=IFCA(.AREA);"), 1, 14, "expected an enumeration value and ., found );");
    at(decoding("#1=IFCA(\"0G\");"), 1, 11, "expected hexadecimal digits and \", found G\");");
    at(decoding("#1=IFCA(1.E);"), 1, 9, "expected a number, found 1.E);");
    at(decoding("#1=IFCA(-);"), 1, 9, "expected a number, found -);");
    at(decoding("#1=IFCA(IFCX(1,2));"), 1, 9, "expected one parameter in IFCX, found IFCX(1,2));");
    at(decoding("#2=IFCA();\n#1=IFCA((1\n  ,?));"), 3, 4, "expected a parameter, found ?));");
  }

  @Test
  void nestingHasALimit() {
    int most = ParameterReader.DEEPEST;
    assertThat(Exchange.value("(".repeat(most) + ")".repeat(most))).isInstanceOf(Value.Aggregate.class);
    at(decoding("#1=IFCA(" + "(".repeat(most + 1) + ")".repeat(most + 1) + ");"), 1, 9 + most,
        "expected at most 100 parentheses inside each other, found more");
    at(decoding("#1=IFCA(" + "(".repeat(1_000_000) + ");"), 1, 9 + most, "expected at most 100 parentheses inside each other, found more");
    at(decoding("#1=IFCA(" + "X(".repeat(1_000_000) + ");"), 1, 10 + 2 * most,
        "expected at most 100 parentheses inside each other, found more");
  }

  @Test
  void brokenHeader() {
    assertThat(opening("ISO-10303-21;\nDATA;\n")).hasMessage("shed.ifc:2:1: expected HEADER;, found DATA;");
    assertThat(opening("ISO-10303-21;\nHEADER;\nFILE_SCHEMA;")).hasMessage("shed.ifc:3:12: expected ( after FILE_SCHEMA, found ;");
    assertThat(opening("ISO-10303-21;\nHEADER;\n#1=IFCA();"))
        .hasMessage("shed.ifc:3:1: expected an entity of the header, or ENDSEC;, found #1=IFCA();");
    assertThat(opening(Exchange.of("").replace("(('IFC4'))", "((IFC4))")))
        .hasMessage("shed.ifc:5:18: expected (, found ));");
    assertThat(opening(Exchange.HEAD + "END-ISO-10303-21;")).hasMessage("shed.ifc:7:1: expected DATA;, found END-ISO-10303-21");
    assertThat(opening(Exchange.HEAD + "DATE;")).hasMessage("shed.ifc:7:1: expected DATA;, found DATE;");
  }
}
