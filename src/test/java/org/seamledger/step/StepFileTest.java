package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamledger.finding.UnreadableModelException;

class StepFileTest {

  @Test
  void header() {
    Header header = Exchange.open(Exchange.of("")).header();
    assertThat(header).isEqualTo(new Header(List.of("IFC4"), "by hand", "Drawing Board 7", "2026-01-01T00:00:00"));
  }

  @Test
  void anEmptyDataSectionIsAFile() {
    StepFile file = Exchange.open(Exchange.of(""));
    assertThat(Exchange.count(file)).isZero();
    assertThat(file.keywords()).isEmpty();
    assertThat(file.find(1)).isEmpty();
    assertThat(file.idsOf("IFCWALL")).isEmpty();
    assertThat(file.keywordOf(1)).isEmpty();
  }

  @Test
  void hash() {
    // By the command sha256sum of GNU coreutils.
    StepFile file = Exchange.open("ISO-10303-21;HEADER;ENDSEC;DATA;ENDSEC;END-ISO-10303-21;");
    assertThat(file.sha256()).isEqualTo("248c8638a0fb1ce5fa82110e56928ed2f9f1daeb181a862f5feba3769ef16b97");
    assertThat(file.size()).isEqualTo(56);
  }

  @Test
  void idsInAnyOrder() {
    StepFile file = Exchange.open(Exchange.of("#5=IFCB();\n#9223372036854775807=IFCA();\n#1=IFCA();\n#3=IFCA(7);\n#0=IFCB();"));
    assertThat(Exchange.count(file)).isEqualTo(5);
    assertThat(file.idsOf("IFCA")).containsExactly(1, 3, Long.MAX_VALUE);
    assertThat(file.idsOf("IFCB")).containsExactly(0, 5);
    assertThat(file.find(3).orElseThrow().parameter(0)).isEqualTo(new Value.Whole(7));
    assertThat(file.find(4)).isEmpty();
    assertThat(file.keywordOf(Long.MAX_VALUE)).isEqualTo("IFCA");
    List<Long> seen = new ArrayList<>();
    file.forEach("IFCA", instance -> seen.add(instance.id()));
    assertThat(seen).containsExactly(Long.MAX_VALUE, 1L, 3L);
  }

  @Test
  void ofInstancesWithOneIdTheFirstCounts() {
    StepFile file = Exchange.open(Exchange.of("#2=IFCA(1);\n#1=IFCB();\n#2=IFCB(2);\n#2=IFCA(3);\n#4=IFCA();\n#1=IFCA();"));
    assertThat(Exchange.count(file)).isEqualTo(3);
    assertThat(file.repeatedIds()).containsExactly(1L, 2L);
    assertThat(file.idsOf("IFCA")).containsExactly(2, 4);
    assertThat(file.idsOf("IFCB")).containsExactly(1);
    assertThat(file.find(2).orElseThrow().parameter(0)).isEqualTo(new Value.Whole(1));
    List<Long> seen = new ArrayList<>();
    file.forEach("IFCA", instance -> seen.add(instance.id()));
    assertThat(seen).containsExactly(2L, 4L);
  }

  @Test
  void severalDataSectionsAndOthers() {
    StepFile file = Exchange.open(Exchange.HEAD + """
        ANCHOR;
        <a>=#1;<b>=';';
        ENDSEC;
        REFERENCE;
        #7=<other.ifc#x>;
        ENDSEC;
        DATA('first; (','IFC4');
        #1=IFCA(#3);
        ENDSEC;
        DATA ( ( 'second' ) ) ;
        #3=IFCA(#1);
        ENDSEC ;
        END-ISO-10303-21;
        SIGNATURE;anything ' at all
        """);
    assertThat(file.idsOf("IFCA")).containsExactly(1, 3);
    assertThat(file.find(1).orElseThrow().parameter(0)).isEqualTo(new Value.Reference(3));
  }

  @Test
  void aByteOrderMarkIsPassed() {
    assertThat(Exchange.count(Exchange.open("\u00EF\u00BB\u00BF" + Exchange.of("#1=IFCA();")))).isOne();
  }

  @Test
  void referencesWithoutTheRest() {
    StepFile file = Exchange.open(Exchange.of(
        "#1/*=(*/=/*#8*/IFCREL('#2',#3,$,/*,#4*/(#5,#6),IFCX(#7),(1.,(#9223372036854775807)),$,#10);\n#2=IFCREL();"));
    List<String> seen = new ArrayList<>();
    file.forEachReferences("IFCREL", (id, references) -> {
      StringBuilder text = new StringBuilder("#" + id);
      for (int i = 0; i < references.size(); i++) {
        text.append(' ').append(references.parameter(i)).append(":").append(references.target(i));
      }
      seen.add(text.toString());
      assertThat(references.first(3)).isEqualTo(id == 1 ? 5 : -1);
    });
    assertThat(seen).containsExactly("#1 1:3 3:5 3:6 4:7 5:9223372036854775807 7:10", "#2");
  }

  @Test
  void instancesAreJudgedWhenDecoded() {
    StepFile file = Exchange.open(Exchange.of("#1=IFCA(%);\n#2=IFCA(1);"));
    assertThat(file.find(2)).isPresent();
    assertThatThrownBy(() -> file.find(1)).isInstanceOf(UnreadableModelException.class);
    assertThatThrownBy(() -> file.forEach("IFCA", i -> {})).isInstanceOf(UnreadableModelException.class);
  }

  @Test
  void longInstancesAndLongCommentsBetween() {
    String points = "(0.,1.5),".repeat(60_000) + "(2.,3.)";
    StepFile file = Exchange.open(Exchange.of("#1=IFCLIST((" + points + "));\n/*" + "=;'".repeat(400_000) + "*/\n#2=IFCA(-1);"));
    assertThat(Exchange.count(file)).isEqualTo(2);
    assertThat(((Value.Aggregate) file.find(1).orElseThrow().parameter(0)).items()).hasSize(60_001);
    assertThat(file.find(2).orElseThrow().parameter(0)).isEqualTo(new Value.Whole(-1));
  }

  @Test
  void manyInstancesOverSeveralPagesOfTheIndex() {
    StringBuilder text = new StringBuilder();
    int n = 200_000;
    for (int i = 0; i < n; i++) {
      // Every thousandth is of a rare kind, and stretches of ten stand in reverse.
      int id = i / 10 * 10 + 9 - i % 10;
      text.append('#').append(id).append(id % 1000 == 0 ? "=IFCRARE(" : "=IFCOFTEN(").append(id).append(");\n");
    }
    StepFile file = Exchange.open(Exchange.of(text.toString()));
    assertThat(Exchange.count(file)).isEqualTo(n);
    assertThat(file.idsOf("IFCRARE")).hasSize(n / 1000).startsWith(0, 1000, 2000).isSorted();
    assertThat(file.idsOf("IFCOFTEN")).hasSize(n - n / 1000).isSorted();
    for (int id = 0; id < n; id += 777) {
      assertThat(file.find(id).orElseThrow().parameter(0)).isEqualTo(new Value.Whole(id));
    }
    assertThat(file.find(n)).isEmpty();
    assertThat(file.find(-1)).isEmpty();
  }
}
