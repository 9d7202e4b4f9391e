package org.seamledger.ids.check;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.seamledger.ids.IdsFacet;
import org.seamledger.ids.IdsFacet.AttributeFacet;
import org.seamledger.ids.IdsFacet.ClassificationFacet;
import org.seamledger.ids.IdsFacet.EntityFacet;
import org.seamledger.ids.IdsFacet.MaterialFacet;
import org.seamledger.ids.IdsFacet.PartOfFacet;
import org.seamledger.ids.IdsFacet.PropertyFacet;
import org.seamledger.ids.ValueConstraint;
import org.seamledger.ids.check.ModelRelations.Link;

/** What an element says to a facet, by kind of facet. */
final class FacetCheck {

  private static final int MOST_SHOWN = 5;

  private FacetCheck() {
  }

  static FacetOutcome of(IdsFacet facet, Subject subject) {
    if (facet instanceof EntityFacet entity) {
      return entity(entity, subject);
    }
    if (facet instanceof AttributeFacet attribute) {
      return AttributeCheck.of(attribute, subject);
    }
    if (facet instanceof PropertyFacet property) {
      return PropertyCheck.of(property, subject);
    }
    if (facet instanceof ClassificationFacet classification) {
      return classification(classification, subject);
    }
    return facet instanceof MaterialFacet material ? material(material, subject) : partOf((PartOfFacet) facet, subject);
  }

  private static FacetOutcome entity(EntityFacet facet, Subject subject) {
    if (subject.classNames().stream().noneMatch(facet.name()::matches)) {
      return FacetOutcome.failed(false, "is " + subject.ifcClass() + ", not " + facet.name().words());
    }
    if (facet.predefinedType().isEmpty()) {
      return FacetOutcome.met("is " + subject.ifcClass());
    }
    ValueConstraint wanted = facet.predefinedType().get();
    List<String> types = subject.predefinedTypes();
    if (types.stream().anyMatch(wanted::matches)) {
      return FacetOutcome.met("is " + subject.ifcClass() + " of the predefined type " + types.get(0));
    }
    return FacetOutcome.failed(false, types.isEmpty() ? "has no predefined type; expected " + wanted.words()
        : "has the predefined type " + types.get(0) + "; expected " + wanted.words());
  }

  private static FacetOutcome classification(ClassificationFacet facet, Subject subject) {
    List<ClassificationEntry> entries = subject.classifications();
    List<ClassificationEntry> inSystem = entries.stream().filter(e -> !e.system().isEmpty() && facet.system().matches(e.system())).toList();
    if (inSystem.isEmpty()) {
      return FacetOutcome.absent("is not classified by a system " + facet.system().words() + (entries.isEmpty() ? "" : "; its systems are "
          + shown(entries.stream().map(ClassificationEntry::system).distinct().toList())));
    }
    if (facet.value().isEmpty()) {
      return FacetOutcome.met("is classified by " + shown(inSystem.stream().map(ClassificationEntry::system).distinct().toList()));
    }
    List<String> codes = inSystem.stream().flatMap(e -> e.codes().stream()).distinct().toList();
    Optional<String> fits = codes.stream().filter(facet.value().get()::matches).findFirst();
    return fits.map(code -> FacetOutcome.met("is classified as '" + code + "'")).orElseGet(() -> FacetOutcome.failed(false,
        (codes.isEmpty() ? "has no code in its classification" : "is classified as " + shown(codes)) + "; expected "
            + facet.value().get().words()));
  }

  private static FacetOutcome material(MaterialFacet facet, Subject subject) {
    Optional<Set<String>> names = subject.materials();
    if (names.isEmpty()) {
      return FacetOutcome.absent("has no material");
    }
    if (facet.value().isEmpty()) {
      return FacetOutcome.met("has the material " + shown(names.get()));
    }
    Optional<String> fits = names.get().stream().filter(facet.value().get()::matches).findFirst();
    return fits.map(name -> FacetOutcome.met("has the material '" + name + "'")).orElseGet(() -> FacetOutcome.failed(false,
        (names.get().isEmpty() ? "has a material without a name" : "has the material " + shown(names.get())) + "; expected "
            + facet.value().get().words()));
  }

  /** All wholes, and theirs, by the relations that are asked for. */
  private static FacetOutcome partOf(PartOfFacet facet, Subject subject) {
    List<Link> links = ModelRelations.wholes(facet.relation().orElse(""));
    String by = facet.relation().map(r -> " by " + r).orElse("");
    Set<Long> seen = new HashSet<>(Set.of(subject.id()));
    Deque<Long> open = new ArrayDeque<>(seen);
    boolean any = false;
    while (!open.isEmpty()) {
      long part = open.poll();
      for (Link link : links) {
        for (long id : subject.model().relations().of(link, part)) {
          if (seen.add(id) && subject.model().find(id).isPresent()) {
            any = true;
            open.add(id);
            Subject whole = new Subject(subject.model(), subject.model().find(id).get());
            if (entity(facet.whole(), whole).isMet()) {
              return FacetOutcome.met("is part of " + whole.ifcClass() + " " + whole.globalId() + by);
            }
          }
        }
      }
    }
    String expected = facet.whole().name().words() + facet.whole().predefinedType().map(p -> " of the predefined type " + p.words())
        .orElse("");
    return any ? FacetOutcome.failed(false, "is part of nothing that is " + expected + by) : FacetOutcome.absent("is part of nothing" + by
        + "; expected " + expected);
  }

  static String shown(Collection<String> words) {
    return words.stream().limit(MOST_SHOWN).map(w -> "'" + w + "'").collect(Collectors.joining(", ")) + (words.size() > MOST_SHOWN ? " …"
        : "");
  }
}
