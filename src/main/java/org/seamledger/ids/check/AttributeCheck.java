package org.seamledger.ids.check;

import java.util.Optional;
import org.seamledger.ids.IdsFacet.AttributeFacet;
import org.seamledger.ids.IfcLiteral;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.step.Value;

/**
 * The attributes of an element that a facet names. One has to be filled, and where the facet has a value, all that are filled have to
 * match it (IDS 1.0, facet-configurations.md, "Attribute"). Nothing, an empty text, an empty list and an unknown truth are not filled.
 */
final class AttributeCheck {

  private final AttributeFacet facet;
  private final Subject subject;
  private boolean stated;
  private int filled;
  private int fitting;
  private String wrong = "";
  private String shown = "";

  private AttributeCheck(AttributeFacet facet, Subject subject) {
    this.facet = facet;
    this.subject = subject;
  }

  static FacetOutcome of(AttributeFacet facet, Subject subject) {
    AttributeCheck check = new AttributeCheck(facet, subject);
    int place = 0;
    for (AttributeDefinition attribute : subject.model().attributes(subject.instance())) {
      Value value = subject.instance().parameter(place++);
      if (!attribute.derived() && facet.name().matches(attribute.name())) {
        check.look(attribute, value);
      }
    }
    return check.outcome();
  }

  private void look(AttributeDefinition attribute, Value value) {
    if (ModelAccess.isOmitted(value)) {
      return;
    }
    stated = true;
    Optional<IfcLiteral> literal = subject.model().literal(value, attribute.type());
    boolean object = value instanceof Value.Reference || value instanceof Value.Binary
        || value instanceof Value.Aggregate list && !list.items().isEmpty();
    if (literal.isEmpty() && !object) {
      return;
    }
    filled++;
    shown = attribute.name() + literal.map(l -> " " + l.shown()).orElse("");
    if (facet.value().isEmpty() || literal.filter(facet.value().get()::matches).isPresent()) {
      fitting++;
    } else if (wrong.isEmpty()) {
      wrong = "has " + attribute.name() + " " + literal.map(IfcLiteral::shown).orElse("that is no single value") + "; expected "
          + facet.value().get().words();
    }
  }

  private FacetOutcome outcome() {
    String name = facet.name().single().orElse("a filled attribute " + facet.name().words());
    if (!stated) {
      return FacetOutcome.absent("has no " + name + facet.value().map(v -> "; expected " + v.words()).orElse(""));
    }
    if (filled == 0) {
      return FacetOutcome.failed(false, "has no " + name + " but an empty or unknown one");
    }
    return fitting == filled ? FacetOutcome.met("has " + shown) : FacetOutcome.failed(fitting > 0, wrong);
  }
}
