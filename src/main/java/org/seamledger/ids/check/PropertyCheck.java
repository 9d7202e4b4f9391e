package org.seamledger.ids.check;

import java.util.List;
import java.util.Map;
import org.seamledger.ids.IdsFacet.PropertyFacet;
import org.seamledger.ids.check.PropertySets.IfcProperty;

/**
 * The properties of an element that a facet names. Every set that it names has to hold one, each has to have a value, of the type that
 * the facet names, and of several values of one property one has to match.
 */
final class PropertyCheck {

  private final PropertyFacet facet;
  private final Subject subject;
  private int found;
  private int fitting;
  private String wrong = "";
  private String shown = "";

  private PropertyCheck(PropertyFacet facet, Subject subject) {
    this.facet = facet;
    this.subject = subject;
  }

  static FacetOutcome of(PropertyFacet facet, Subject subject) {
    return new PropertyCheck(facet, subject).outcome();
  }

  private FacetOutcome outcome() {
    Map<String, List<IfcProperty>> sets = subject.sets().matching(facet.propertySet());
    String name = facet.baseName().words();
    if (sets.isEmpty()) {
      return FacetOutcome.absent("has no property set " + facet.propertySet().words());
    }
    boolean everywhere = true;
    for (Map.Entry<String, List<IfcProperty>> set : sets.entrySet()) {
      List<IfcProperty> named = set.getValue().stream().filter(p -> facet.baseName().matches(p.name())).toList();
      named.forEach(p -> look(set.getKey(), p));
      if (named.isEmpty()) {
        everywhere = false;
        wrong = wrong.isEmpty() ? "has no property " + name + " in its property set '" + set.getKey() + "'" : wrong;
      }
    }
    if (found == 0) {
      return FacetOutcome.absent(wrong);
    }
    if (fitting == found && everywhere) {
      return FacetOutcome.met("has " + shown);
    }
    // Without a value asked for, a property of that name breaks a prohibition whatever it holds (IDS 1.0, specifications.md).
    boolean some = fitting > 0 || facet.value().isEmpty();
    return FacetOutcome.failed(some, wrong);
  }

  private void look(String set, IfcProperty property) {
    found++;
    String label = "the property '" + property.name() + "' in '" + set + "'";
    shown = label;
    List<PropertyValues.Typed> values = subject.sets().values(property);
    String fault = fault(label, values);
    if (fault.isEmpty()) {
      fitting++;
    } else if (wrong.isEmpty()) {
      wrong = fault;
    }
  }

  /** What is wrong with a property; empty where nothing is. */
  private String fault(String label, List<PropertyValues.Typed> values) {
    if (values.isEmpty()) {
      return "has " + label + " without a value that can be compared";
    }
    List<PropertyValues.Typed> typed = facet.dataType().map(t -> values.stream().filter(v -> v.type().equals(t)).toList()).orElse(values);
    if (typed.isEmpty()) {
      return "has " + label + " as " + values.get(0).type() + "; expected " + facet.dataType().orElse("");
    }
    if (facet.value().isEmpty() || typed.stream().anyMatch(v -> facet.value().get().matches(v.literal()))) {
      return "";
    }
    return "has " + label + " with " + typed.get(0).literal().shown() + (typed.size() > 1 ? " …" : "") + "; expected "
        + facet.value().get().words();
  }
}
