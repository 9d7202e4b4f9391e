package org.seamledger.ids;

import java.util.List;
import java.util.Optional;
import org.seamledger.schema.IfcRelease;

/**
 * Which elements it applies to, and what is required of them.
 *
 * @param identifier for machines, as the document states it; may be empty
 * @param occurrence whether a model has to, may or mustn't hold such elements
 * @param releases the schemas that it was written for; by the body's cases no model is let off for having another
 */
public record Specification(String name, String identifier, String description, String instructions, List<IfcRelease> releases,
    Occurrence occurrence,
    List<IdsFacet> applicability, List<Requirement> requirements) {

  public Specification {
    releases = List.copyOf(releases);
    applicability = List.copyOf(applicability);
    requirements = List.copyOf(requirements);
  }

  /** The classes that it applies to, where it names them. */
  public Optional<IdsFacet.EntityFacet> entity() {
    return applicability.stream().filter(IdsFacet.EntityFacet.class::isInstance).map(IdsFacet.EntityFacet.class::cast).findFirst();
  }
}
