package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.jena.graph.Node;
import org.apache.jena.shacl.engine.constraint.ConstraintOp1;
import org.apache.jena.shacl.engine.constraint.ConstraintOpN;
import org.apache.jena.shacl.engine.constraint.HasValueConstraint;
import org.apache.jena.shacl.engine.constraint.InConstraint;
import org.apache.jena.shacl.engine.constraint.LessThanConstraint;
import org.apache.jena.shacl.engine.constraint.LessThanOrEqualsConstraint;
import org.apache.jena.shacl.engine.constraint.MaxCount;
import org.apache.jena.shacl.engine.constraint.MinCount;
import org.apache.jena.shacl.engine.constraint.ShNot;
import org.apache.jena.shacl.engine.constraint.ShOr;
import org.apache.jena.shacl.engine.constraint.ShXone;
import org.apache.jena.shacl.engine.constraint.ValueMaxExclusiveConstraint;
import org.apache.jena.shacl.engine.constraint.ValueMaxInclusiveConstraint;
import org.apache.jena.shacl.engine.constraint.ValueMinExclusiveConstraint;
import org.apache.jena.shacl.engine.constraint.ValueMinInclusiveConstraint;
import org.apache.jena.shacl.engine.constraint.ValueRangeConstraint;
import org.apache.jena.shacl.parser.Constraint;
import org.apache.jena.shacl.parser.PropertyShape;
import org.apache.jena.shacl.parser.Shape;

/** What a shape requires as short words: negations led inwards, what is said twice said once, brackets only where they decide. */
sealed interface ShapeClause {

  /** How a fact is held: against a value, against a value that it must not have, or only whether it is there. */
  enum Sort {
    VALUE, OTHER_VALUE, PRESENT, ABSENT
  }

  /** Of one fact; its words stand behind the fact's name. */
  record Fact(String name, Sort sort, String words) implements ShapeClause {
    @Override
    public String text() {
      return (name + " " + words).strip();
    }
  }

  /** All of several, or one of several. */
  record Group(boolean isAll, List<ShapeClause> parts) implements ShapeClause {
    @Override
    public String text() {
      return parts.stream().map(p -> p instanceof Group ? "(" + p.text() + ")" : p.text())
          .collect(Collectors.joining(isAll ? " and " : " or "));
    }
  }

  String text();

  /** @param not whether the shape must not be met */
  static ShapeClause of(Shape shape, boolean not) {
    String path = shape instanceof PropertyShape p ? ShapeText.name(p.getPath()) : "";
    return group(!not, Stream.concat(shape.getConstraints().stream().map(c -> of(path, c, not)),
        shape.getPropertyShapes().stream().map(p -> of(p, not))));
  }

  static ShapeClause of(String path, Constraint c, boolean not) {
    if (c instanceof ShNot inner) {
      return of(inner.getOther(), !not);
    }
    if (c instanceof ConstraintOp1 inner) {
      return of(inner.getOther(), not);
    }
    if (c instanceof ShXone xone) {
      return new Fact("", Sort.VALUE, (not ? "none or several of " : "exactly one of ")
          + xone.getOthers().stream().map(s -> "(" + of(s, false).text() + ")").collect(Collectors.joining(", ")));
    }
    if (c instanceof ConstraintOpN inner) {
      return group(inner instanceof ShOr == not, inner.getOthers().stream().map(s -> of(s, not)));
    }
    return fact(path, c, not);
  }

  private static Fact fact(String path, Constraint c, boolean not) {
    if (c instanceof ValueRangeConstraint range) {
      return new Fact(path, Sort.VALUE, comparison(range, not) + " " + ShapeText.show(range.getNodeValue().asNode()));
    }
    if (c instanceof HasValueConstraint has) {
      return oneOf(path, List.of(has.getValue()), not);
    }
    if (c instanceof InConstraint in) {
      return oneOf(path, in.getValues(), not);
    }
    if (c instanceof MinCount min && min.getMinCount() == 1) {
      return there(path, !not);
    }
    if (c instanceof MaxCount max && max.getMaxCount() == 0) {
      return there(path, not);
    }
    if (c instanceof LessThanConstraint less) {
      return new Fact(path, Sort.VALUE, (not ? "at least " : "less than ") + RuleCheck.local(less.getValue()));
    }
    if (c instanceof LessThanOrEqualsConstraint less) {
      return new Fact(path, Sort.VALUE, (not ? "more than " : "at most ") + RuleCheck.local(less.getValue()));
    }
    return new Fact(path, Sort.VALUE, (not ? "not " : "") + c);
  }

  private static Fact there(String path, boolean isThere) {
    return new Fact(path, isThere ? Sort.PRESENT : Sort.ABSENT, isThere ? "present" : "absent");
  }

  private static Fact oneOf(String path, List<Node> values, boolean not) {
    String words = values.stream().map(ShapeText::show).collect(Collectors.joining(", "));
    return not ? new Fact(path, Sort.OTHER_VALUE, (values.size() > 1 ? "none of " : "not ") + words)
        : new Fact(path, Sort.VALUE, (values.size() > 1 ? "one of " : "") + words);
  }

  private static String comparison(ValueRangeConstraint c, boolean not) {
    if (c instanceof ValueMinInclusiveConstraint) {
      return not ? "below" : "at least";
    }
    if (c instanceof ValueMaxInclusiveConstraint) {
      return not ? "above" : "at most";
    }
    if (c instanceof ValueMinExclusiveConstraint) {
      return not ? "at most" : "above";
    }
    if (c instanceof ValueMaxExclusiveConstraint) {
      return not ? "at least" : "below";
    }
    throw new IllegalStateException(c.getClass().getName());
  }

  /** A group within one of its own sort is one with it; one of a single part is that part. Single facts come first, the kind before all. */
  private static ShapeClause group(boolean isAll, Stream<ShapeClause> parts) {
    List<ShapeClause> flat = new ArrayList<>(
        parts.flatMap(p -> p instanceof Group g && g.isAll == isAll ? g.parts.stream() : Stream.of(p)).distinct().toList());
    flat = isAll ? withoutPresence(flat) : whereKnown(flat);
    flat.sort(Comparator.comparingInt(p -> p instanceof Fact f ? f.name.equals("kind") ? 0 : 1 : 2));
    return flat.size() == 1 ? flat.get(0) : new Group(isAll, List.copyOf(flat));
  }

  private static boolean has(List<ShapeClause> parts, String name, Sort... sorts) {
    return parts.stream().anyMatch(p -> p instanceof Fact f && f.name.equals(name) && List.of(sorts).contains(f.sort));
  }

  /** A fact that has a value is there. */
  private static List<ShapeClause> withoutPresence(List<ShapeClause> parts) {
    return new ArrayList<>(parts.stream()
        .filter(p -> !(p instanceof Fact f && f.sort == Sort.PRESENT && has(parts, f.name, Sort.VALUE))).toList());
  }

  /** A fact that is not there has no value that it must not have; one that may be missing is asked for its value where it is known. */
  private static List<ShapeClause> whereKnown(List<ShapeClause> parts) {
    List<ShapeClause> kept = new ArrayList<>();
    for (ShapeClause p : parts) {
      if (!(p instanceof Fact f) || f.name.isEmpty()) {
        kept.add(p);
      } else if (f.sort == Sort.VALUE && has(parts, f.name, Sort.ABSENT)) {
        kept.add(new Fact(f.name, Sort.VALUE, f.words + " where known"));
      } else if (f.sort != Sort.ABSENT || !has(parts, f.name, Sort.VALUE, Sort.OTHER_VALUE)) {
        kept.add(p);
      }
    }
    return kept;
  }
}
