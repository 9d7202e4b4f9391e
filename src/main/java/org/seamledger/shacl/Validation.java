package org.seamledger.shacl;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.jena.shacl.Shapes;
import org.apache.jena.shacl.engine.ValidationContext;
import org.apache.jena.shacl.engine.constraint.ShAnd;
import org.apache.jena.shacl.engine.constraint.ShNode;
import org.apache.jena.shacl.parser.Shape;
import org.apache.jena.shacl.validation.ReportEntry;
import org.apache.jena.shacl.validation.VLib;
import org.seamledger.rdf.FactGraph;

/** Runs one shape on one thing. */
final class Validation {

  private final Shapes shapes;

  Validation(Shapes shapes) {
    this.shapes = shapes;
  }

  /**
   * How a thing misses a shape.
   *
   * @param words what the shape requires and the thing doesn't give, sorted
   * @param gap sum of the differences to the limits
   */
  record Misses(List<String> words, double gap) implements Comparable<Misses> {

    boolean none() {
      return words.isEmpty();
    }

    /** Fewer first, then nearer. */
    @Override
    public int compareTo(Misses o) {
      int c = Integer.compare(words.size(), o.words.size());
      return c != 0 ? c : Double.compare(gap, o.gap);
    }
  }

  Misses misses(Shape shape, FactGraph thing) {
    Map<String, Double> found = new TreeMap<>();
    collect(shape, thing, found);
    return new Misses(List.copyOf(found.keySet()), found.values().stream().mapToDouble(d -> d).sum());
  }

  /** Facts that miss the shape by themselves, sorted; what a shape requires of several together is left out. */
  Set<String> missedFacts(Shape shape, FactGraph thing) {
    Set<String> names = new TreeSet<>();
    ValidationContext context = run(shape, thing);
    if (context.hasViolation()) {
      for (ReportEntry entry : context.generateReport().getEntries()) {
        if (entry.resultPath() != null) {
          names.add(ShapeText.name(entry.resultPath()));
        } else if (entry.constraint() instanceof ShNode inner) {
          names.addAll(missedFacts(inner.getOther(), thing));
        }
      }
    }
    return names;
  }

  private ValidationContext run(Shape shape, FactGraph thing) {
    ValidationContext context = ValidationContext.create(shapes, thing.graph());
    VLib.validateShape(context, thing.graph(), shape, thing.subject());
    return context;
  }

  private void collect(Shape shape, FactGraph thing, Map<String, Double> found) {
    ValidationContext context = run(shape, thing);
    if (!context.hasViolation()) {
      return;
    }
    for (ReportEntry entry : context.generateReport().getEntries()) {
      if (entry.constraint() instanceof ShNode inner) {
        collect(inner.getOther(), thing, found);
      } else if (entry.constraint() instanceof ShAnd inner) {
        inner.getOthers().forEach(s -> collect(s, thing, found));
      } else {
        found.put(ShapeText.missed(entry, thing), ShapeText.gap(entry, thing));
      }
    }
  }
}
