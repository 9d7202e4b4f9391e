package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.samples.Form.Placing;

/**
 * Every closed form through the whole program: written as IFC text, read, measured, classified. Sources: the formula beside each expected
 * line of the house.
 *
 * <p>Each house is written in a few forms that a printed seed chooses, so that over all houses every representation meets every schema,
 * unit, make and place; {@code -Dseamledger.forms=N} says how many. {@code -Dseamledger.allForms=true} runs the full product of
 * representations, schemas, units and places for every house instead.
 */
@Tag("slow")
class ClosedFormsTest {

  private static final long SEED = Long.getLong("seamledger.seed", 20_260_101);
  private static final boolean ALL = Boolean.getBoolean("seamledger.allForms");
  private static final int FORMS = Integer.getInteger("seamledger.forms", 6);
  private static final double TOLERANCE = 1e-3;

  static List<ClosedForms.Case> cases() {
    return ClosedForms.all();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void kindsAndLengthsInEveryForm(ClosedForms.Case c) {
    House house = c.house().get();
    List<String> failures = new ArrayList<>();
    for (Form form : ALL ? product() : sample(c.name().hashCode() ^ SEED)) {
      List<String> differences = check(house, form);
      if (!differences.isEmpty()) {
        failures.add(form + "\n      " + String.join("\n      ", differences));
      }
    }
    assertThat(failures).as(() -> c.name() + ", seed " + SEED + ":\n  " + String.join("\n  ", failures)).isEmpty();
  }

  private static List<String> check(House house, Form form) {
    try {
      return Comparison.differences(house.expectedByKind(), Comparison.byKind(Pipeline.lines(house, form)), TOLERANCE);
    } catch (RuntimeException e) {
      java.io.StringWriter trace = new java.io.StringWriter();
      e.printStackTrace(new java.io.PrintWriter(trace));
      return List.of(trace.toString());
    }
  }

  /** One form a representation, up to the number that is asked for. */
  private static Set<Form> sample(long seed) {
    Random random = new Random(seed);
    List<Form.Shape> shapes = shuffled(Form.Shape.values(), random);
    List<Form.Schema> schemas = shuffled(Form.Schema.values(), random);
    List<Form.Unit> units = shuffled(Form.Unit.values(), random);
    List<Form.Make> makes = shuffled(Form.Make.values(), random);
    List<Placing> placings = shuffled(Placing.values(), random);
    Set<Form> forms = new LinkedHashSet<>();
    for (int i = 0; i < Math.min(FORMS, shapes.size()); i++) {
      Form.Shape shape = shapes.get(i);
      Form.Schema schema = schemas.get(i % 3);
      Form form = Form.PLAIN.as(shape.isIn(schema) ? schema : Form.Schema.IFC4).by(shape).in(units.get(i % 4)).made(makes.get(i / 3 % 4))
          .shuffled(random.nextInt(3)).cut(i % 5 == 0 ? RoofPlane.Cut.SQUARE : RoofPlane.Cut.PLUMB);
      if (i % 2 == 1) {
        form = far(form, placings.get(i / 2 % 3));
      }
      if (i % 3 == 1) {
        form = form.turned(random.nextInt(360));
      }
      forms.add(i % 4 == 3 ? form.mirroredLeftRight() : form);
    }
    return forms;
  }

  private static <T> List<T> shuffled(T[] values, Random random) {
    List<T> list = new ArrayList<>(List.of(values));
    Collections.shuffle(list, random);
    return list;
  }

  private static Form far(Form form, Placing placing) {
    return form.at(placing, 450_000.25, 5_200_000.75, 312.5);
  }

  private static List<Form> product() {
    List<Form> forms = new ArrayList<>();
    for (Form.Schema schema : Form.Schema.values()) {
      for (Form.Shape shape : Form.Shape.values()) {
        for (Form.Unit unit : Form.Unit.values()) {
          Form form = Form.PLAIN.as(schema).by(shape).in(unit);
          if (shape.isIn(schema)) {
            forms.add(form);
            forms.add(far(form, Placing.values()[forms.size() / 2 % 3]).made(Form.Make.values()[forms.size() / 2 % 4]));
          }
        }
      }
    }
    return forms;
  }
}
