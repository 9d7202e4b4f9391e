package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.geometry.Vec3;

/** What the generator writes is well-formed by itself, before any reader sees it. */
@Tag("slow")
class IfcWriterTest {

  private static final Pattern LINE = Pattern.compile("#(\\d+)=([A-Z0-9]+)\\(.*\\);");
  private static final Pattern REFERENCE = Pattern.compile("#(\\d+)");

  static List<Form> forms() {
    List<Form> forms = new ArrayList<>();
    for (Form.Schema schema : Form.Schema.values()) {
      for (Form.Shape shape : Form.Shape.values()) {
        if (shape.isIn(schema)) {
          forms.add(Form.PLAIN.as(schema).by(shape));
        }
      }
    }
    return forms;
  }

  @ParameterizedTest
  @MethodSource("forms")
  void everyReferenceHasItsInstance(Form form) {
    for (ClosedForms.Case c : ClosedForms.all()) {
      String[] lines = IfcWriter.text(c.house().get(), form).split("DATA;\n")[1].split("\n");
      Map<String, String> instances = new HashMap<>();
      List<String> references = new ArrayList<>();
      for (String line : lines) {
        Matcher m = LINE.matcher(line);
        if (!m.matches()) {
          assertThat(line).isIn("ENDSEC;", "END-ISO-10303-21;");
          continue;
        }
        assertThat(instances.put(m.group(1), m.group(2))).isNull();
        Matcher r = REFERENCE.matcher(line.substring(line.indexOf('=')));
        while (r.find()) {
          references.add(r.group(1));
        }
      }
      assertThat(instances.keySet()).as(c.name()).containsAll(references);
      assertThat(instances.values()).contains("IFCPROJECT", "IFCUNITASSIGNMENT", "IFCSLAB", "IFCROOF");
    }
  }

  @Test
  void globalIdsAreUniqueInAFile() {
    for (ClosedForms.Case c : ClosedForms.all()) {
      Matcher m = Pattern.compile("\\('([0-3][0-9A-Za-z_$]{21})',").matcher(IfcWriter.text(c.house().get(), Form.PLAIN));
      List<String> ids = new ArrayList<>();
      while (m.find()) {
        ids.add(m.group(1));
      }
      assertThat(ids).as(c.name()).hasSizeGreaterThan(8).doesNotHaveDuplicates();
    }
  }

  @Test
  void sameHouseAndFormGiveTheSameBytes() {
    Form form = Form.PLAIN.shuffled(7).turned(31).mirroredLeftRight();
    House once = JoinedRoofs.ell(14, 11, 6, Pitch.pitch(35));
    House again = JoinedRoofs.ell(14, 11, 6, Pitch.pitch(35));
    assertThat(IfcWriter.text(once, form)).isEqualTo(IfcWriter.text(again, form));
  }

  @Test
  void shellsAreClosedAndTurnOutward() {
    for (ClosedForms.Case c : ClosedForms.all()) {
      for (RoofPlane r : c.house().get().roofs()) {
        Extrusion body = r.body(RoofPlane.Cut.SQUARE);
        Shell shell = body.shell();
        Map<List<Integer>, Integer> edges = new HashMap<>();
        double volume = 0;
        for (Shell.Face f : shell.faces()) {
          List<List<Integer>> loops = new ArrayList<>(f.inner());
          loops.add(f.outer());
          for (List<Integer> loop : loops) {
            for (int i = 0; i < loop.size(); i++) {
              edges.merge(List.of(loop.get(i), loop.get((i + 1) % loop.size())), 1, Integer::sum);
            }
            volume += cone(shell.points(), loop);
          }
        }
        edges.forEach((e, n) -> assertThat(n == 1 && edges.get(List.of(e.get(1), e.get(0))) == 1).isTrue());
        double area = area(r.outline()) - r.holes().stream().mapToDouble(IfcWriterTest::area).sum();
        assertThat(volume).as(c.name() + " " + r.name()).isCloseTo(area * r.slope().pitch().rafter() * r.depth(), within(1e-9));
      }
    }
  }

  /** Volume of the cone from the origin on a loop's fan. */
  private static double cone(List<Vec3> points, List<Integer> loop) {
    double sum = 0;
    Vec3 a = points.get(loop.get(0));
    for (int i = 1; i + 1 < loop.size(); i++) {
      sum += a.dot(points.get(loop.get(i)).cross(points.get(loop.get(i + 1)))) / 6;
    }
    return sum;
  }

  private static double area(List<org.seamledger.geometry.Vec2> ring) {
    double sum = 0;
    for (int i = 0; i < ring.size(); i++) {
      sum += ring.get(i).cross(ring.get((i + 1) % ring.size())) / 2;
    }
    return Math.abs(sum);
  }

  @Test
  void realsAndTextsAreWrittenAsThePartAsks() {
    assertThat(StepText.real(12, 9)).isEqualTo("12.");
    assertThat(StepText.real(-0.00000000001, 9)).isEqualTo("0.");
    assertThat(StepText.real(0.125, 9)).isEqualTo("0.125");
    assertThat(StepText.real(5200000.000001, 6)).isEqualTo("5200000.000001");
    assertThat(StepText.text("Keeper's")).isEqualTo("'Keeper''s'");
    assertThat(StepText.text("a\u00e9b")).isEqualTo("'a\\X2\\00E9\\X0\\b'");
  }

  /** Circle; and the ellipse 2:1, 9.688448220547675 (complete elliptic integral tables, from memory). */
  @Test
  void ellipsePerimeters() {
    assertThat(Ellipse.perimeter(1, 1)).isCloseTo(2 * Math.PI, within(1e-14));
    assertThat(Ellipse.perimeter(1, 2)).isCloseTo(9.688448220547675, within(1e-12));
    double sum = 0;
    int n = 100_000;
    for (int i = 0; i < n; i++) {
      double a = 2 * Math.PI * (i + 0.5) / n;
      sum += Math.hypot(3 * Math.sin(a), 5 * Math.cos(a)) * 2 * Math.PI / n;
    }
    assertThat(Ellipse.perimeter(3, 5)).isCloseTo(sum, within(1e-9));
  }
}
