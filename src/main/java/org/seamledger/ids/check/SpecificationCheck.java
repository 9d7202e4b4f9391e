package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.seamledger.ids.IdsFacet;
import org.seamledger.ids.IdsFacet.AttributeFacet;
import org.seamledger.ids.IdsFacet.EntityFacet;
import org.seamledger.ids.EntityNames;
import org.seamledger.ids.Occurrence;
import org.seamledger.ids.Requirement;
import org.seamledger.ids.Specification;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.IfcRelease;

/** Collects what elements say to one specification. */
final class SpecificationCheck {

  private static final List<String> DESCRIBED = List.of("IFCOBJECTDEFINITION", "IFCPROPERTYDEFINITION", "IFCMATERIALDEFINITION",
      "IFCMATERIAL",
      "IFCPROFILEDEF");

  private final Specification specification;
  private final List<FailedElement> failed = new ArrayList<>();
  private long applicable;

  SpecificationCheck(Specification specification) {
    this.specification = specification;
  }

  /** Whether instances of a class can be among those that it applies to, as far as the class alone tells. */
  boolean mayApplyTo(String keyword, IfcRelease release) {
    EntityDefinition entity = release.tables().entity(keyword).orElse(null);
    for (IdsFacet facet : specification.applicability()) {
      if (facet instanceof EntityFacet named) {
        return named.name().matches(keyword) || release == IfcRelease.IFC2X3 && entity != null && isMappedTo(named, entity);
      }
    }
    if (entity == null) {
      return false;
    }
    if (specification.applicability().stream().allMatch(AttributeFacet.class::isInstance)) {
      return entity.attributes().stream().anyMatch(a -> ((AttributeFacet) specification.applicability().get(0)).name().matches(a.name()));
    }
    return DESCRIBED.stream().anyMatch(entity::isA);
  }

  /** Whether the type of an occurrence may give it a name that is asked for. */
  private static boolean isMappedTo(EntityFacet facet, EntityDefinition entity) {
    return entity.isA("IFCELEMENT") && EntityNames.matching(IfcRelease.IFC2X3, facet.name()::matches).keySet().stream()
        .anyMatch(name -> IfcRelease.IFC2X3.tables().entity(name.toUpperCase(Locale.ROOT)).isEmpty());
  }

  void look(Subject subject, String model) {
    for (IdsFacet facet : specification.applicability()) {
      if (!FacetCheck.of(facet, subject).isMet()) {
        return;
      }
    }
    applicable++;
    if (specification.occurrence() == Occurrence.PROHIBITED) {
      fail(subject, model, "no such element may be in the model");
      return;
    }
    List<String> reasons = new ArrayList<>();
    for (Requirement requirement : specification.requirements()) {
      FacetOutcome outcome = FacetCheck.of(requirement.facet(), subject);
      if (!outcome.passes(requirement.occurrence())) {
        reasons.add(outcome.why(requirement.occurrence()));
      }
    }
    if (!reasons.isEmpty()) {
      fail(subject, model, String.join("; ", reasons));
    }
  }

  private void fail(Subject subject, String model, String reason) {
    failed.add(new FailedElement(model, subject.id(), subject.globalId(), subject.ifcClass(), subject.name(), reason));
  }

  SpecificationResult result() {
    boolean missing = applicable == 0 && specification.occurrence() == Occurrence.REQUIRED;
    return new SpecificationResult(specification, failed.isEmpty() && !missing, applicable,
        missing ? "at least one element has to be there that it applies to" : "", failed);
  }
}
