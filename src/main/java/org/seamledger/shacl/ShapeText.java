package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.jena.graph.Node;
import org.apache.jena.shacl.engine.constraint.ConstraintOp1;
import org.apache.jena.shacl.engine.constraint.ConstraintOpN;
import org.apache.jena.shacl.engine.constraint.ConstraintPairwise;
import org.apache.jena.shacl.engine.constraint.ValueRangeConstraint;
import org.apache.jena.shacl.parser.Constraint;
import org.apache.jena.shacl.parser.PropertyShape;
import org.apache.jena.shacl.parser.Shape;
import org.apache.jena.shacl.validation.ReportEntry;
import org.apache.jena.sparql.path.P_Link;
import org.apache.jena.sparql.path.Path;
import org.seamledger.rdf.FactGraph;
import org.seamledger.rdf.Vocabulary;

/** Puts into words what a shape requires, and what a thing gave instead. */
final class ShapeText {

  private ShapeText() {
  }

  /** The facts that shapes look at, themselves or through the shapes that they refer to. */
  static Set<String> facts(Collection<Shape> shapes) {
    Set<String> names = new TreeSet<>();
    Set<Node> done = new HashSet<>();
    shapes.forEach(s -> collect(s, names, done));
    return names;
  }

  private static void collect(Shape shape, Set<String> names, Set<Node> done) {
    if (!done.add(shape.getShapeNode())) {
      return;
    }
    if (shape instanceof PropertyShape p) {
      names.add(name(p.getPath()));
    }
    shape.getPropertyShapes().forEach(p -> collect(p, names, done));
    for (Constraint c : shape.getConstraints()) {
      if (c instanceof ConstraintOp1 one) {
        collect(one.getOther(), names, done);
      } else if (c instanceof ConstraintOpN many) {
        many.getOthers().forEach(s -> collect(s, names, done));
      } else if (c instanceof ConstraintPairwise pair) {
        names.add(RuleCheck.local(pair.getValue()));
      }
    }
  }

  /** The numbers that shapes hold facts against, themselves or through the shapes that they refer to, by the fact's name; each sorted. */
  static SortedMap<String, SortedSet<Double>> limits(Collection<Shape> shapes) {
    SortedMap<String, SortedSet<Double>> limits = new TreeMap<>();
    Set<Node> done = new HashSet<>();
    shapes.forEach(s -> collectLimits(s, limits, done));
    return limits;
  }

  private static void collectLimits(Shape shape, SortedMap<String, SortedSet<Double>> limits, Set<Node> done) {
    if (!done.add(shape.getShapeNode())) {
      return;
    }
    shape.getPropertyShapes().forEach(p -> collectLimits(p, limits, done));
    for (Constraint c : shape.getConstraints()) {
      if (c instanceof ConstraintOp1 one) {
        collectLimits(one.getOther(), limits, done);
      } else if (c instanceof ConstraintOpN many) {
        many.getOthers().forEach(s -> collectLimits(s, limits, done));
      } else if (shape instanceof PropertyShape p && c instanceof ValueRangeConstraint range
          && range.getNodeValue().asNode().getLiteralValue() instanceof Number limit) {
        limits.computeIfAbsent(name(p.getPath()), n -> new TreeSet<>()).add(limit.doubleValue());
      }
    }
  }

  /** One result of a validation: what was asked, and what was found. */
  static String missed(ReportEntry entry, FactGraph thing) {
    Constraint c = entry.constraint();
    if (entry.resultPath() != null) {
      String name = name(entry.resultPath());
      return "needs " + ShapeClause.of(name, c, false).text() + "; " + found(name, thing);
    }
    Set<Node> done = new HashSet<>();
    Set<String> names = new TreeSet<>();
    if (c instanceof ConstraintOp1 one) {
      collect(one.getOther(), names, done);
    } else if (c instanceof ConstraintOpN many) {
      many.getOthers().forEach(s -> collect(s, names, done));
    }
    return "needs " + ShapeClause.of("", c, false).text()
        + names.stream().map(n -> "; " + found(n, thing)).collect(Collectors.joining());
  }

  /**
   * How far a result is from conforming: the difference to the limit where one number misses one limit, 0 where the number is missing,
   * 1000 for anything else, such as another word, and more where the word says what the thing is.
   */
  static double gap(ReportEntry entry, FactGraph thing) {
    Constraint c = entry.constraint();
    String name = entry.resultPath() == null ? "" : name(entry.resultPath());
    while (name.isEmpty() && c instanceof ConstraintOp1 one && one.getOther().getPropertyShapes().size() == 1) {
      PropertyShape p = one.getOther().getPropertyShapes().iterator().next();
      if (p.getConstraints().size() != 1) {
        break;
      }
      c = p.getConstraints().iterator().next();
      name = name(p.getPath());
    }
    Object limit = c instanceof ValueRangeConstraint range ? range.getNodeValue().asNode().getLiteralValue() : null;
    Object value = thing.value(name);
    if (value == null) {
      return 0;
    }
    if (limit instanceof Number l && value instanceof Number v) {
      return Math.abs(v.doubleValue() - l.doubleValue());
    }
    return name.equals("kind") || name.equals("against") ? 10_000 : 1000;
  }

  private static String found(String name, FactGraph thing) {
    List<String> values = new ArrayList<>();
    thing.graph().find(thing.subject(), Vocabulary.term(name), Node.ANY).forEachRemaining(t -> values.add(show(t.getObject())));
    return name + " is " + (values.isEmpty() ? "not measured" : String.join(" and ", new TreeSet<>(values)));
  }

  /** All that a shape requires, in words. */
  static String required(Shape shape) {
    return ShapeClause.of(shape, false).text();
  }

  static String name(Path path) {
    return path instanceof P_Link link ? RuleCheck.local(link.getNode()) : path.toString();
  }

  /** A value for people: whole numbers without a fraction, no exponents. */
  static String show(Node n) {
    if (n.isLiteral() && n.getLiteralValue() instanceof Number number) {
      return new java.math.BigDecimal(number.toString()).stripTrailingZeros().toPlainString();
    }
    return n.isLiteral() ? n.getLiteralLexicalForm() : RuleCheck.local(n);
  }
}
