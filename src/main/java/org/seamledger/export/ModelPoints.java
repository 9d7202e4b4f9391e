package org.seamledger.export;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.export.report.TextPage;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/**
 * Points of {@code shapes/ids/roof-model.ids} that a model misses, as far as a finding says that the result is worse for it. What has no
 * finding made nothing worse; {@code check} says of every point whether the model meets it, in a second pass over the model that takes as
 * long as an analysis, and is not made here.
 */
final class ModelPoints {

  static final String FILE = "roof-model.ids";
  private static final String INDENT = "  ";

  /** A specification, by its identifier and name in the file, and which findings come from missing it. */
  enum Point {
    ROOF("roof-01", "The roof is an IfcRoof", (f, t) -> isUntyped(f) || f.code().equals(Code.NO_ROOF.id()) && !isTyped(t)),
    GLOBAL_ID("roof-02", "Roofs and slabs have a valid GlobalId", (f, t) -> f.code().equals(Code.BAD_GLOBAL_ID.id()) && isRoof(f)),
    SHAPE("roof-04", "Roof slabs have a shape", (f, t) -> f.code().equals(Code.ROOF_WITHOUT_SHAPE.id()) && isAll(f, t, "IfcSlab")),
    TYPED("roof-05", "Slabs that are named as a roof are typed as one", (f, t) -> isUntyped(f) && isAll(f, t, "IfcSlab")),
    UNIT("roof-13", "There is a unit of length", (f, t) -> f.code().equals(Code.NO_UNIT.id()));

    private interface Condition {
      boolean comesFrom(Finding finding, Takeoff takeoff);
    }

    private final String identifier;
    private final String title;
    private final Condition condition;

    Point(String identifier, String title, Condition condition) {
      this.identifier = identifier;
      this.title = title;
      this.condition = condition;
    }

    String identifier() {
      return identifier;
    }

    String title() {
      return title;
    }

    private Predicate<Finding> in(Takeoff takeoff) {
      return f -> condition.comesFrom(f, takeoff);
    }

    private static boolean isUntyped(Finding f) {
      return f.code().equals(Code.ROOF_BY_NAME.id()) && f.message().startsWith("No element is typed");
    }

    private static boolean isTyped(Takeoff takeoff) {
      return takeoff.findings().stream().anyMatch(f -> f.code().equals(Code.ROOF_WITHOUT_SHAPE.id()));
    }

    private static boolean isRoof(Finding f) {
      return f.message().contains(" roof elements ");
    }

    private static boolean isAll(Finding f, Takeoff takeoff, String ifcClass) {
      return !f.elements().isEmpty()
          && f.elements().stream().map(takeoff.elements()::get).filter(e -> e != null).map(ElementLabel::ifcClass)
              .allMatch(ifcClass::equals);
    }
  }

  private ModelPoints() {
  }

  /** The points missed with the findings that come from them, in the file's order. */
  static Map<Point, List<Finding>> missed(Takeoff takeoff) {
    Map<Point, List<Finding>> missed = new LinkedHashMap<>();
    for (Point p : Point.values()) {
      List<Finding> findings = takeoff.findings().stream().filter(p.in(takeoff)).toList();
      if (!findings.isEmpty()) {
        missed.put(p, findings);
      }
    }
    return missed;
  }

  private static List<String> codes(List<Finding> findings) {
    return new ArrayList<>(new TreeSet<>(findings.stream().map(Finding::code).toList()));
  }

  static void write(Takeoff takeoff, TextPage page) {
    Map<Point, List<Finding>> missed = missed(takeoff);
    if (missed.isEmpty()) {
      return;
    }
    page.title("What the model lacks");
    missed.forEach((p, findings) -> page.paragraph(INDENT, INDENT + INDENT, p.identifier() + " " + p.title() + ": not met, hence "
        + String.join(", ", codes(findings))));
    page.paragraph(INDENT, INDENT, "The points are those of shapes/ids/" + FILE + "; check --ids says of each whether the model meets it.");
  }

  static void write(Takeoff takeoff, JsonOutput json) throws IOException {
    json.objects("modelRequirements", missed(takeoff).entrySet(), missed -> {
      json.word("ids", FILE);
      json.word("identifier", missed.getKey().identifier());
      json.word("name", missed.getKey().title());
      json.words("findings", codes(missed.getValue()));
    });
  }
}
