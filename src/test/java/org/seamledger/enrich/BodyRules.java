package org.seamledger.enrich;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.seamledger.schema.AttributeDefinition;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.IfcRelease;
import org.seamledger.schema.SchemaTables;
import org.seamledger.step.Instance;
import org.seamledger.step.StepFile;
import org.seamledger.step.Value;

/**
 * Some of the rules by which the standard's own body validates models: PJS003 (GlobalIds), PSE002 (names of property sets), OJT001 (words
 * of users) and SPS007 (places in the building), written from their texts; {@link StandardRules} has those that go by tables.
 */
final class BodyRules {

  private static final Pattern GLOBAL_ID = Pattern.compile("[0-3][0-9A-Za-z_$]{21}");
  private static final Set<String> LOOSE = Set.of("IFCGRID", "IFCANNOTATION");
  private static final Pattern PSET = Pattern.compile("^[Pp][Ss][Ee][Tt]");

  private final StepFile file;
  private final SchemaTables tables;
  private final Set<String> violations = new TreeSet<>();

  private BodyRules(StepFile file) {
    this.file = file;
    this.tables = IfcRelease.of(file.header().schemas()).orElseThrow().tables();
  }

  /** What a model breaks: rule and instance, such as {@code SPS007 #12}. */
  static Set<String> violations(StepFile file) {
    BodyRules rules = new BodyRules(file);
    rules.globalIds();
    rules.propertySets();
    rules.predefinedTypes();
    rules.containment();
    return rules.violations;
  }

  /** What it breaks of the rules that go by the body's tables, which lie in a folder. */
  static Set<String> violations(StepFile file, Path tables) {
    BodyRules rules = new BodyRules(file);
    new StandardRules(rules, StandardSets.of(tables, IfcRelease.of(file.header().schemas()).orElseThrow())).check();
    return rules.violations;
  }

  boolean isA(String keyword, String supertype) {
    return tables.isA(keyword, supertype);
  }

  Optional<Instance> find(long id) {
    return file.find(id);
  }

  List<Instance> all(String supertype) {
    List<Instance> found = new ArrayList<>();
    for (String keyword : file.keywords()) {
      if (tables.isA(keyword, supertype)) {
        file.forEach(keyword, found::add);
      }
    }
    return found;
  }

  Value attribute(Instance instance, String name) {
    int at = tables.entity(instance.keyword()).map(e -> e.indexOf(name)).orElse(-1);
    return at < 0 ? new Value.Omitted() : instance.parameter(at);
  }

  void broken(String rule, Instance instance) {
    violations.add(rule + " #" + instance.id());
  }

  private void globalIds() {
    for (Instance i : all("IFCROOT")) {
      if (!(i.parameter(0) instanceof Value.Text t) || !GLOBAL_ID.matcher(t.value()).matches()) {
        broken("PJS003", i);
      }
    }
  }

  private void propertySets() {
    for (Instance i : all("IFCPROPERTYSET")) {
      if (i.parameter(2) instanceof Value.Text t && !t.value().startsWith("Pset_") && PSET.matcher(t.value()).find()) {
        broken("PSE002", i);
      }
    }
  }

  private void predefinedTypes() {
    if (file.header().schemas().stream().anyMatch(s -> s.startsWith("IFC2X3"))) {
      return;
    }
    Set<Long> typed = ends("IFCRELDEFINESBYTYPE", "RelatedObjects");
    for (Instance i : all("IFCOBJECT")) {
      if (!typed.contains(i.id()) && attribute(i, "PredefinedType").equals(new Value.Enumeration("USERDEFINED"))
          && !(attribute(i, "ObjectType") instanceof Value.Text t && !t.value().isEmpty())) {
        broken("OJT001", i);
      }
    }
  }

  private void containment() {
    Set<Long> contained = ends("IFCRELCONTAINEDINSPATIALSTRUCTURE", "RelatedElements");
    Set<Long> nested = ends("IFCRELNESTS", "RelatedObjects");
    Map<Long, Long> wholes = new HashMap<>();
    for (Instance rel : all("IFCRELDECOMPOSES")) {
      if (attribute(rel, "RelatingObject") instanceof Value.Reference whole) {
        references(attribute(rel, "RelatedObjects")).forEach(part -> wholes.put(part, whole.id()));
      }
    }
    for (Instance i : all("IFCPRODUCT")) {
      boolean element = tables.isA(i.keyword(), "IFCELEMENT");
      boolean isPart = wholes.containsKey(i.id());
      boolean ofElement = isPart && tables.isA(file.keywordOf(wholes.get(i.id())), "IFCELEMENT");
      boolean missing = LOOSE.contains(i.keyword()) && !nested.contains(i.id()) && !contained.contains(i.id())
          || element && !isPart && !tables.isA(i.keyword(), "IFCFEATUREELEMENT") && !contained.contains(i.id());
      boolean twice = element && ofElement && contained.contains(i.id());
      // The rule's text is stricter, but a passing file of the body has a building contained in its site.
      boolean wrong =
          !element && !tables.isA(i.keyword(), "IFCSPATIALSTRUCTUREELEMENT") && !LOOSE.contains(i.keyword()) && contained.contains(i.id());
      if (missing || twice || wrong) {
        broken("SPS007", i);
      }
    }
  }

  private Set<Long> ends(String relation, String attribute) {
    Set<Long> ends = new HashSet<>();
    all(relation).forEach(r -> ends.addAll(references(attribute(r, attribute))));
    return ends;
  }

  static List<Long> references(Value value) {
    List<Long> ids = new ArrayList<>();
    if (value instanceof Value.Aggregate a) {
      a.items().forEach(i -> ids.addAll(references(i)));
    } else if (value instanceof Value.Reference r) {
      ids.add(r.id());
    }
    return ids;
  }

  /** Instances that have another number of attributes than their schema says, or are of no class that it has. */
  static Set<String> misfits(StepFile file) {
    SchemaTables tables = IfcRelease.of(file.header().schemas()).orElseThrow().tables();
    Set<String> misfits = new TreeSet<>();
    for (String keyword : file.keywords()) {
      List<AttributeDefinition> attributes = tables.entity(keyword).map(EntityDefinition::attributes).orElse(List.of());
      file.forEach(keyword, i -> {
        if (i.parameters().size() != attributes.size()) {
          misfits.add(keyword + " #" + i.id());
        }
      });
    }
    return misfits;
  }
}
