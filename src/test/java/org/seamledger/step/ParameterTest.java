package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.seamledger.step.Exchange.parameters;
import static org.seamledger.step.Exchange.value;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Kinds of parameters, ISO 10303-21:2002 clauses 6.4 and 11. Examples from the standard from memory where nothing else is said. */
class ParameterTest {

  @ParameterizedTest
  @CsvSource({"0,0", "16,16", "+12,12", "-32,-32", "007,7", "9223372036854775807,9223372036854775807",
      "-9223372036854775808,-9223372036854775808"})
  void wholeNumbers(String text, long expected) {
    assertThat(value(text)).isEqualTo(new Value.Whole(expected));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"1.", "0.5", "-.5", ".5", "1.0E+5", "1.E-3", "-0.0000001", "1.5e3", "1E5", "123456789.123456789", "1.7976931348623157E308",
          "4.9E-324", "0.1", "2.2250738585072012E-308", "8.41E21", "9007199254740993.", "0.30000000000000004", "1.E-22", "1.E23", "1.E400"})
  void realNumbersAreTheNearestDoubles(String text) {
    // Against the platform's own conversion.
    assertThat(value(text)).isEqualTo(new Value.Real(Double.parseDouble(text)));
  }

  @Test
  void randomRealNumbersAreTheNearestDoubles() {
    long seed = 20260101;
    Random random = new Random(seed);
    for (int i = 0; i < 50_000; i++) {
      String text = randomReal(random);
      byte[] bytes = text.getBytes();
      assertThat(NumberReader.end(bytes, 0, bytes.length)).isEqualTo(bytes.length);
      Value value = NumberReader.value(bytes, 0, bytes.length);
      assertThat(value).as("seed %d, %s", seed, text).isEqualTo(new Value.Real(Double.parseDouble(text)));
    }
  }

  private static String randomReal(Random random) {
    StringBuilder text = new StringBuilder(random.nextBoolean() ? "-" : "");
    for (int n = random.nextInt(12) + 1; n > 0; n--) {
      text.append(random.nextInt(10));
    }
    text.append('.');
    for (int n = random.nextInt(12); n > 0; n--) {
      text.append(random.nextInt(10));
    }
    return random.nextBoolean() ? text.toString() : text + "E" + (random.nextInt(60) - 30);
  }

  @Test
  void numbersTooBigForTheirKindAreReal() {
    assertThat(value("9223372036854775808")).isEqualTo(new Value.Real(9223372036854775808.0));
    assertThat(value("1.E999999999999")).isEqualTo(new Value.Real(Double.POSITIVE_INFINITY));
    assertThat(value("-1.E999999999999")).isEqualTo(new Value.Real(Double.NEGATIVE_INFINITY));
  }

  @ParameterizedTest
  @CsvSource({"1.#INF,Infinity", "-1.#INF,-Infinity", "1.#QNAN0,NaN", "-1.#IND,NaN", "nan,NaN", "-nan(ind),NaN", "NaN,NaN", "inf,Infinity",
      "-inf,-Infinity", "INFINITY,Infinity"})
  void whatRuntimesPrintForNumbersThatAreNone(String text, double expected) {
    // Common practice of C runtimes, no source.
    assertThat(value(text)).isEqualTo(new Value.Real(expected));
  }

  @Test
  void otherKinds() {
    assertThat(value("$")).isEqualTo(new Value.Omitted());
    assertThat(value("*")).isEqualTo(new Value.Derived());
    assertThat(value("#12")).isEqualTo(new Value.Reference(12));
    assertThat(value("#9223372036854775807")).isEqualTo(new Value.Reference(Long.MAX_VALUE));
    assertThat(value(".AREA.")).isEqualTo(new Value.Enumeration("AREA"));
    assertThat(value(".T.")).isEqualTo(new Value.Enumeration("T"));
    assertThat(value(".NOT_DEFINED2.")).isEqualTo(new Value.Enumeration("NOT_DEFINED2"));
    assertThat(value("\"092A\"")).isEqualTo(new Value.Binary("092A"));
    assertThat(value("\"\"")).isEqualTo(new Value.Binary(""));
    assertThat(value("IFCBOOLEAN(.F.)")).isEqualTo(new Value.Typed("IFCBOOLEAN", new Value.Enumeration("F")));
    assertThat(value("IFCLABEL('a')")).isEqualTo(new Value.Typed("IFCLABEL", new Value.Text("a")));
    assertThat(value("()")).isEqualTo(new Value.Aggregate(List.of()));
    assertThat(value("((1.,2.),(#3))")).isEqualTo(new Value.Aggregate(List.of(
        new Value.Aggregate(List.of(new Value.Real(1), new Value.Real(2))),
        new Value.Aggregate(List.of(new Value.Reference(3))))));
    assertThat(value("IFCCOMPOUNDPLANEANGLEMEASURE((50,7,-3))")).isEqualTo(new Value.Typed("IFCCOMPOUNDPLANEANGLEMEASURE",
        new Value.Aggregate(List.of(new Value.Whole(50), new Value.Whole(7), new Value.Whole(-3)))));
  }

  @Test
  void lowerCaseIsRead() {
    StepFile file = Exchange.open(Exchange.of("#1=IfcWall(.t.);\n#2=ifcwall(ifclabel('x'));\n#3=IFCWALL();"));
    assertThat(file.keywords()).containsExactly("IFCWALL");
    assertThat(file.idsOf("IFCWALL")).containsExactly(1, 2, 3);
    assertThat(file.find(1).orElseThrow()).isEqualTo(new Instance(1, "IFCWALL", List.of(new Value.Enumeration("T"))));
    assertThat(file.find(2).orElseThrow().parameter(0)).isEqualTo(new Value.Typed("IFCLABEL", new Value.Text("x")));
  }

  @Test
  void parametersBehindTheLastAreOmitted() {
    Instance instance = Exchange.open(Exchange.of("#1=IFCTHING($,1);")).find(1).orElseThrow();
    assertThat(instance.parameters()).hasSize(2);
    assertThat(instance.parameter(2)).isEqualTo(new Value.Omitted());
  }

  @Test
  void entitiesOfUsersKeepTheirMark() {
    assertThat(Exchange.open(Exchange.of("#1=!OUR_THING(1);")).keywordOf(1)).isEqualTo("!OUR_THING");
  }

  @Test
  void instancesOfSeveralEntitiesAtOnce() {
    StepFile file = Exchange.open(Exchange.of("#1=(A(1,#5)/* and */\nB((#6),#7)C());\n#2=IFCX();"));
    assertThat(file.keywordOf(1)).isEqualTo(StepFile.COMPLEX);
    assertThat(file.idsOf("IFCX")).containsExactly(2);
    assertThat(file.find(1).orElseThrow().parameters()).containsExactly(
        new Value.Typed("A", new Value.Aggregate(List.of(new Value.Whole(1), new Value.Reference(5)))),
        new Value.Typed("B", new Value.Aggregate(List.of(new Value.Aggregate(List.of(new Value.Reference(6))), new Value.Reference(7)))),
        new Value.Typed("C", new Value.Aggregate(List.of())));
    file.forEachReferences(StepFile.COMPLEX, (id, references) -> {
      assertThat(references.size()).isEqualTo(3);
      assertThat(references.first(0)).isEqualTo(5);
      assertThat(references.first(1)).isEqualTo(6);
      assertThat(references.target(2)).isEqualTo(7);
    });
  }

  @Test
  void blanksCommentsAndLineEndsAnywhere() {
    List<Value> expected = parameters("#1=IFCTHING(#2,'a b',IFCREAL(1.5),(.A.,$),\"0F\");");
    assertThat(parameters("/*;'*/#1/*(*/ = /*\"*/\r\nIFCTHING\t( #2 /*;*/ ,\n'a b'\r\n, IFCREAL /* ' */ ( 1.5 ) /***/ ,"
        + "( .A. , $ ) , \"0F\" ) /**/ ;"))
        .isEqualTo(expected);
    assertThat(parameters("#1\n=\nIFCTHING\n(\n#2\n,\n'a b'\n,\nIFCREAL\n(\n1.5\n)\n,\n(\n.A.\n,\n$\n)\n,\n\"0F\"\n)\n;"))
        .isEqualTo(expected);
  }

  @Test
  void commentsDoNotNestAndStringsHoldNone() {
    assertThat(parameters("#1=IFCTHING(/* /* */ '/* no */;#2=IFCX();');")).containsExactly(new Value.Text("/* no */;#2=IFCX();"));
  }

  @Test
  void manyInstancesOnOneLine() {
    StepFile file = Exchange.open(Exchange.HEAD.replace("\n", "") + "DATA;#3=IFCA();#1=IFCB();#2=IFCA();ENDSEC;END-ISO-10303-21;");
    assertThat(file.idsOf("IFCA")).containsExactly(2, 3);
    assertThat(file.idsOf("IFCB")).containsExactly(1);
  }
}
