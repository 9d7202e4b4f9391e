package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.List;
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

  boolean conforms(Shape shape, FactGraph thing) {
    return !run(shape, thing).hasViolation();
  }

  /** What the shape asks for and the thing doesn't give, in words, sorted; empty where it conforms. */
  List<String> misses(Shape shape, FactGraph thing) {
    List<String> words = new ArrayList<>();
    collect(shape, thing, words);
    return words.stream().distinct().sorted().toList();
  }

  private ValidationContext run(Shape shape, FactGraph thing) {
    ValidationContext context = ValidationContext.create(shapes, thing.graph());
    VLib.validateShape(context, thing.graph(), shape, thing.subject());
    return context;
  }

  private void collect(Shape shape, FactGraph thing, List<String> words) {
    ValidationContext context = run(shape, thing);
    if (!context.hasViolation()) {
      return;
    }
    for (ReportEntry entry : context.generateReport().getEntries()) {
      if (entry.constraint() instanceof ShNode inner) {
        collect(inner.getOther(), thing, words);
      } else if (entry.constraint() instanceof ShAnd inner) {
        inner.getOthers().forEach(s -> collect(s, thing, words));
      } else {
        words.add(Words.missed(entry, thing));
      }
    }
  }
}
