package org.seamledger.ids;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.ids.IdsFacet.AttributeFacet;
import org.seamledger.ids.IdsFacet.ClassificationFacet;
import org.seamledger.ids.IdsFacet.EntityFacet;
import org.seamledger.ids.IdsFacet.MaterialFacet;
import org.seamledger.ids.IdsFacet.PartOfFacet;
import org.seamledger.ids.IdsFacet.PropertyFacet;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.IfcRelease;
import org.seamledger.schema.SchemaTables;
import org.seamledger.schema.TypeDefinition;

/**
 * Whether a specification can mean something in each schema that it is written for: IDS 1.0 wants more of a valid file than its XML
 * schema can say (developer-guide.md; facet-configurations.md, "Facet validity"; DataTypes.md).
 */
final class IdsAudit {

  private final String file;
  private final Specification specification;
  private final List<IdsProblem> problems = new ArrayList<>();
  private IfcRelease release;
  private SchemaTables tables;
  /** What it applies to in the release that is looked at; every class where the specification names none. */
  private Collection<EntityDefinition> applicable;

  private IdsAudit(Specification specification, String file) {
    this.specification = specification;
    this.file = file;
  }

  /** @return what is wrong, each problem once */
  static List<IdsProblem> of(Specification specification, String file) {
    IdsAudit audit = new IdsAudit(specification, file);
    specification.requirements().forEach(audit::occurrence);
    for (IfcRelease release : specification.releases()) {
      int before = audit.problems.size();
      audit.in(release);
      if (audit.problems.size() > before) {
        break;
      }
    }
    return audit.problems;
  }

  private void problem(IdsFacet facet, String expected, String found) {
    problems.add(new IdsProblem(file, facet.at().line(), facet.at().column(), expected, found));
  }

  /** An optional facet that can't fail states nothing. */
  private void occurrence(Requirement requirement) {
    if (requirement.occurrence() != Occurrence.OPTIONAL) {
      return;
    }
    IdsFacet facet = requirement.facet();
    boolean canFail = facet instanceof AttributeFacet a && a.value().isPresent()
        || facet instanceof ClassificationFacet c && c.value().isPresent()
        || facet instanceof MaterialFacet m && m.value().isPresent()
        || facet instanceof PropertyFacet p && p.dataType().isPresent();
    if (!canFail) {
      problem(facet, facet instanceof PropertyFacet ? "a dataType for an optional property, as it could not fail without"
          : "a value for an optional facet, as it could not fail without", "none");
    }
  }

  private void in(IfcRelease of) {
    release = of;
    tables = of.tables();
    applicable = specification.entity().map(e -> EntityNames.matching(of, e.name()::matches).values()).orElse(concrete());
    specification.applicability().forEach(this::facet);
    for (Requirement requirement : specification.requirements()) {
      facet(requirement.facet());
      if (requirement.facet() instanceof EntityFacet entity && specification.entity().isPresent()) {
        overlap(entity, specification.entity().get());
      }
    }
  }

  private Collection<EntityDefinition> concrete() {
    return tables.entities().stream().filter(e -> !e.isAbstract()).toList();
  }

  private void facet(IdsFacet facet) {
    if (facet instanceof EntityFacet entity) {
      entity(entity);
    } else if (facet instanceof AttributeFacet attribute) {
      attribute(attribute);
    } else if (facet instanceof PropertyFacet property) {
      property(property);
    } else if (facet instanceof PartOfFacet partOf) {
      entity(partOf.whole());
    } else if (facet instanceof ClassificationFacet classification) {
      filled(facet, "system", Optional.of(classification.system()));
      filled(facet, "value", classification.value());
    }
  }

  private void filled(IdsFacet facet, String name, Optional<ValueConstraint> value) {
    if (value.flatMap(ValueConstraint::single).filter(String::isEmpty).isPresent()) {
      problem(facet, "a " + name + " of the classification", "an empty text");
    }
  }

  private void entity(EntityFacet facet) {
    Map<String, EntityDefinition> classes = EntityNames.matching(release, facet.name()::matches);
    Optional<String> unknown = facet.name().values().stream().filter(v -> specification.releases().stream()
        .allMatch(r -> EntityNames.matching(r, v::equals).isEmpty())).findFirst();
    if (classes.isEmpty() || unknown.isPresent()) {
      problem(facet, "a class of " + release + " that has instances, in upper case", unknown.map(StructureCheck::quote)
          .orElse(facet.name().words()));
    } else if (facet.predefinedType().isPresent()) {
      predefinedType(facet, classes);
    }
  }

  private void predefinedType(EntityFacet facet, Map<String, EntityDefinition> classes) {
    Set<String> words = new TreeSet<>();
    classes.forEach((name, entity) -> {
      words.addAll(words(entity));
      if (!name.equals(entity.keyword())) {
        tables.entity(name + "TYPE").ifPresent(type -> words.addAll(words(type)));
      }
    });
    ValueConstraint wanted = facet.predefinedType().orElseThrow();
    if (words.isEmpty()) {
      problem(facet, "no predefinedType, as the class has none in " + release, wanted.words());
    } else if (!words.contains("USERDEFINED") && words.stream().noneMatch(wanted::matches)) {
      problem(facet, "a predefinedType among " + String.join(", ", words), wanted.words());
    }
  }

  private List<String> words(EntityDefinition entity) {
    int place = entity.indexOf("PredefinedType");
    return place < 0 ? List.of() : tables.type(entity.attributes().get(place).type()).map(TypeDefinition::items).orElse(List.of());
  }

  /** A required class that no applicable element is of can't be met. */
  private void overlap(EntityFacet required, EntityFacet applies) {
    Set<String> names = new HashSet<>(EntityNames.matching(release, required.name()::matches).keySet());
    boolean known = !names.isEmpty();
    names.retainAll(EntityNames.matching(release, applies.name()::matches).keySet());
    if (known && names.isEmpty()) {
      problem(required, "a class that the specification applies to: " + applies.name().words(), required.name().words());
    }
  }

  private void attribute(AttributeFacet facet) {
    List<AttributeDefinition> matching = applicable.stream().flatMap(e -> e.attributes().stream())
        .filter(a -> !a.derived() && facet.name().matches(a.name())).distinct().toList();
    if (matching.isEmpty()) {
      if (!applicable.isEmpty()) {
        problem(facet, "an attribute that a file states of " + specification.entity().map(e -> e.name().words()).orElse("a class") + " in "
            + release, facet.name().words());
      }
    } else if (facet.value().isPresent()) {
      Set<XsdBase> bases = matching.stream().filter(a -> !a.aggregate()).flatMap(a -> base(a).stream()).collect(Collectors.toSet());
      if (bases.isEmpty()) {
        problem(facet, "no value, as this attribute holds a list, another object or a choice of types", facet.value().get().words());
      } else {
        value(facet, facet.value().get(), bases);
      }
    }
  }

  /** DataTypes.md has no base for a choice of types, so that none can be compared with. */
  private Optional<XsdBase> base(AttributeDefinition attribute) {
    return tables.type(attribute.type()).map(XsdBase::of).orElseGet(() -> XsdBase.simple(attribute.type()));
  }

  private void property(PropertyFacet facet) {
    if (facet.dataType().isEmpty()) {
      if (facet.value().isPresent()) {
        problem(facet, "a dataType with the value of the property", "none");
      }
      return;
    }
    String name = facet.dataType().get();
    Optional<TypeDefinition> type = tables.type(name).filter(t -> !t.isSelect());
    if (type.isEmpty()) {
      problem(facet, "a type of values of " + release + " as dataType", StructureCheck.quote(name));
    } else if (facet.value().isPresent()) {
      Optional<XsdBase> base = XsdBase.of(type.get());
      base.ifPresentOrElse(b -> value(facet, facet.value().get(), Set.of(b)),
          () -> problem(facet, "no value, as none can be stated for " + name, facet.value().get().words()));
    }
  }

  /** DataTypes.md: the base of a restriction is that of the type, and a simple value has its form. */
  private void value(IdsFacet facet, ValueConstraint value, Set<XsdBase> bases) {
    String allowed = bases.stream().sorted().map(XsdBase::toString).collect(Collectors.joining(" or "));
    if (value.base().isPresent()) {
      if (!bases.contains(value.base().get())) {
        problem(facet, "a restriction of " + allowed, "one of " + value.base().get());
      }
    } else {
      String text = value.single().orElse("");
      if (bases.stream().noneMatch(b -> b.accepts(text))) {
        problem(facet, "a value of " + allowed, StructureCheck.quote(text));
      }
    }
  }
}
