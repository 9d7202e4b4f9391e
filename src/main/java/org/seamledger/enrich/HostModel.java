package org.seamledger.enrich;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Findings;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.ifc.entity.Model;
import org.seamledger.schema.IfcRelease;
import org.seamledger.schema.SchemaTables;
import org.seamledger.step.StepFile;
import org.seamledger.step.Value;

/** A model as what is added to it needs it: its schema, units, owner, representation context, and where its elements stand. */
final class HostModel {

  private static final int GLOBAL_ID = 0;

  private final StepFile file;
  private final OwnRecords own;
  private final Model model;
  private final IfcRelease release;
  private final Map<String, Optional<Value>> stated = new HashMap<>();

  /**
   * @param own what an earlier run added, which counts as gone
   * @throws UnreadableModelException where there are no tables of the model's schema
   */
  HostModel(StepFile file, String name, OwnRecords own) {
    this.file = file;
    this.own = own;
    this.release = IfcRelease.of(file.header().schemas())
        .orElseThrow(() -> new UnreadableModelException(name, 0, 0, "a model of IFC2X3, IFC4 or IFC4X3 to write answers into",
            String.join(", ", file.header().schemas())));
    this.model = new Model(new IfcInput(file, name), 0, new Findings());
  }

  SchemaTables tables() {
    return release.tables();
  }

  /** Whether every rooted instance has to say who owns it: later schemas made that optional. */
  boolean needsOwnerHistory() {
    return release == IfcRelease.IFC2X3;
  }

  /** One length unit of the model in metres. */
  double metres() {
    return model.units().metres();
  }

  double squareMetres() {
    return model.units().squareMetres();
  }

  double cubicMetres() {
    return model.units().cubicMetres();
  }

  double radians() {
    return model.units().radians();
  }

  /** GlobalId of the project, or the empty string: what ids are made from. */
  String project() {
    return projects().findFirst().map(e -> e.text(GLOBAL_ID)).orElse("");
  }

  private Stream<Entity> projects() {
    return Arrays.stream(file.idsOf("IFCPROJECT")).mapToObj(model::get);
  }

  /** The owner history of the project, or else the first one that there is. */
  Optional<Value> ownerHistory() {
    long own = projects().mapToLong(p -> p.optionalReference(1)).filter(id -> id >= 0).findFirst().orElse(-1);
    return own >= 0 && file.keywordOf(own).equals("IFCOWNERHISTORY") ? Optional.of(new Value.Reference(own)) : first("IFCOWNERHISTORY");
  }

  /** The unit of a sort, such as {@code AREAUNIT}, that the project states, where it does. */
  Optional<Value> unit(String sort) {
    return stated.computeIfAbsent(sort, this::findUnit);
  }

  private Optional<Value> findUnit(String sort) {
    for (Entity project : projects().toList()) {
      try {
        Entity units = project.optionalEntity(8);
        for (Entity unit : units == null ? List.<Entity>of() : units.entities(0)) {
          if (unit.word(1).equals(sort)) {
            return Optional.of(new Value.Reference(unit.id()));
          }
        }
      } catch (EntityProblem p) {
        // Units that can't be read state nothing; what is added then states its own.
      }
    }
    return Optional.empty();
  }

  /** The context of bodies: the sub-context made for them, or else the one of the model in space. */
  Optional<Value> bodyContext() {
    for (long id : idsOf("IFCGEOMETRICREPRESENTATIONSUBCONTEXT")) {
      if (model.get(id).text(0).equalsIgnoreCase("Body")) {
        return Optional.of(new Value.Reference(id));
      }
    }
    for (long id : idsOf("IFCGEOMETRICREPRESENTATIONCONTEXT")) {
      if (model.get(id).text(1).equalsIgnoreCase("Model")) {
        return Optional.of(new Value.Reference(id));
      }
    }
    return first("IFCGEOMETRICREPRESENTATIONCONTEXT");
  }

  private Optional<Value> first(String keyword) {
    long[] ids = idsOf(keyword);
    return ids.length == 0 ? Optional.empty() : Optional.of(new Value.Reference(ids[0]));
  }

  private long[] idsOf(String keyword) {
    return Arrays.stream(file.idsOf(keyword)).filter(id -> !own.isGone(id)).toArray();
  }

  /** Instances of elements by their GlobalIds; no entry for what the model doesn't hold. */
  SortedMap<String, Long> instances(Map<String, String> classByGlobalId) {
    SortedMap<String, Long> found = new TreeMap<>();
    for (String name : new TreeSet<>(classByGlobalId.values())) {
      file.forEach(name.toUpperCase(Locale.ROOT), instance -> {
        if (instance.parameter(GLOBAL_ID) instanceof Value.Text id && name.equals(classByGlobalId.get(id.value()))) {
          found.putIfAbsent(id.value(), instance.id());
        }
      });
    }
    return found;
  }

  /**
   * The part of the building that holds most of these elements, themselves or as parts of others; else the building, else the site.
   *
   * @param elements instances
   */
  Optional<Value> container(Set<Long> elements) {
    Map<Long, Long> wholes = wholes();
    Set<Long> wanted = new HashSet<>(elements);
    for (long id : elements) {
      Long up = wholes.get(id);
      for (int i = 0; up != null && i < 100 && wanted.add(up); i++) {
        up = wholes.get(up);
      }
    }
    Map<Long, Integer> votes = new TreeMap<>();
    file.forEachReferences("IFCRELCONTAINEDINSPATIALSTRUCTURE", (id, r) -> {
      for (int i = 0; r.first(5) >= 0 && i < r.size(); i++) {
        if (r.parameter(i) == 4 && wanted.contains(r.target(i))) {
          votes.merge(r.first(5), 1, Integer::sum);
        }
      }
    });
    Optional<Long> most = votes.entrySet().stream()
        .filter(e -> tables().entity(file.keywordOf(e.getKey())).isPresent())
        .max(Map.Entry.<Long, Integer>comparingByValue().thenComparing(Map.Entry.<Long, Integer>comparingByKey().reversed()))
        .map(Map.Entry::getKey);
    return most.<Value>map(Value.Reference::new).or(() -> first("IFCBUILDINGSTOREY")).or(() -> first("IFCBUILDING"))
        .or(() -> first("IFCSITE"));
  }

  private Map<Long, Long> wholes() {
    Map<Long, Long> wholes = new HashMap<>();
    file.forEachReferences("IFCRELAGGREGATES", (id, r) -> {
      for (int i = 0; i < r.size(); i++) {
        if (r.parameter(i) == 5) {
          wholes.putIfAbsent(r.target(i), r.first(4));
        }
      }
    });
    return wholes;
  }
}
