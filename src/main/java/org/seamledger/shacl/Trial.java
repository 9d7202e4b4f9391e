package org.seamledger.shacl;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.apache.jena.graph.Node;
import org.apache.jena.shacl.Shapes;
import org.apache.jena.shacl.engine.ValidationContext;
import org.apache.jena.shacl.engine.constraint.ConstraintEntity;
import org.apache.jena.shacl.engine.constraint.ConstraintTerm;
import org.apache.jena.shacl.engine.constraint.ShAnd;
import org.apache.jena.shacl.engine.constraint.ShNode;
import org.apache.jena.shacl.engine.constraint.ShNot;
import org.apache.jena.shacl.engine.constraint.ShOr;
import org.apache.jena.shacl.engine.constraint.ShXone;
import org.apache.jena.shacl.parser.Constraint;
import org.apache.jena.shacl.parser.PropertyShape;
import org.apache.jena.shacl.parser.Shape;
import org.apache.jena.shacl.validation.VLib;
import org.apache.jena.sparql.path.P_Link;
import org.seamledger.rdf.FactGraph;

/**
 * One thing tried against many shapes that refer to each other. The engine writes a whole report for every reference from one shape to
 * another; asked only whether a thing conforms, that is some fifty times the work. So references ({@code sh:node}, {@code sh:not},
 * {@code sh:and}, {@code sh:or}, {@code sh:xone}) are followed here and each shape is tried once a thing; every other constraint is the
 * engine's.
 */
final class Trial {

  private final Shapes shapes;
  private final FactGraph thing;
  private final ValidationContext context;
  private final Map<Node, Boolean> tried = new HashMap<>();

  Trial(Shapes shapes, FactGraph thing) {
    this.shapes = shapes;
    this.thing = thing;
    context = ValidationContext.create(shapes, thing.graph());
  }

  boolean conforms(Shape shape) {
    Boolean known = tried.get(shape.getShapeNode());
    if (known == null) {
      known = shape.deactivated() || (shape instanceof PropertyShape p ? property(p) : node(shape));
      tried.put(shape.getShapeNode(), known);
    }
    return known;
  }

  private boolean node(Shape shape) {
    for (Constraint c : shape.getConstraints()) {
      if (!holds(shape, c)) {
        return false;
      }
    }
    for (PropertyShape p : shape.getPropertyShapes()) {
      if (!conforms(p)) {
        return false;
      }
    }
    return true;
  }

  private boolean holds(Shape shape, Constraint c) {
    if (c instanceof ShNode one) {
      return conforms(one.getOther());
    }
    if (c instanceof ShNot one) {
      return !conforms(one.getOther());
    }
    if (c instanceof ShAnd many) {
      return many.getOthers().stream().allMatch(this::conforms);
    }
    if (c instanceof ShOr many) {
      return many.getOthers().stream().anyMatch(this::conforms);
    }
    if (c instanceof ShXone many) {
      return many.getOthers().stream().filter(this::conforms).count() == 1;
    }
    ValidationContext fresh = ValidationContext.create(shapes, thing.graph());
    VLib.evalConstraint(fresh, thing.graph(), shape, thing.subject(), null, null, c);
    return !fresh.hasViolation();
  }

  private boolean property(PropertyShape shape) {
    if (!(shape.getPath() instanceof P_Link link) || !shape.getPropertyShapes().isEmpty()) {
      ValidationContext fresh = ValidationContext.create(shapes, thing.graph());
      VLib.validateShape(fresh, thing.graph(), shape, thing.subject());
      return !fresh.hasViolation();
    }
    Set<Node> values = new HashSet<>();
    thing.graph().find(thing.subject(), link.getNode(), Node.ANY).forEachRemaining(t -> values.add(t.getObject()));
    for (Constraint c : shape.getConstraints()) {
      if (!holds(shape, link, values, c)) {
        return false;
      }
    }
    return true;
  }

  private boolean holds(PropertyShape shape, P_Link path, Set<Node> values, Constraint c) {
    if (c instanceof ConstraintTerm term) {
      return values.stream().allMatch(v -> term.validate(context, v) == null);
    }
    if (c instanceof ConstraintEntity whole) {
      return whole.validate(context, values) == null;
    }
    ValidationContext fresh = ValidationContext.create(shapes, thing.graph());
    VLib.evalConstraint(fresh, thing.graph(), shape, thing.subject(), path, values, c);
    return !fresh.hasViolation();
  }
}
