package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Severity;
import org.seamledger.geometry.Transform;
import org.seamledger.junction.Junction;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.roof.ElementCoverage;
import org.seamledger.roof.RoofFace;
import org.seamledger.step.Value;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/** Everything that a takeoff adds to one of its models. */
final class TakeoffAnswers {

  private final Takeoff takeoff;
  private final int model;
  private final HostModel host;
  private final InstanceDraft draft;
  private final Optional<Value> history;
  private final PropertyDraft properties;
  private final Transform toModel;
  private final SortedMap<String, SortedSet<String>> codes;
  private final SortedMap<String, Long> instances;
  private final List<Value> assemblies = new ArrayList<>();
  private final Map<String, List<Value>> byKind = new LinkedHashMap<>();
  private final Map<String, List<Value>> byNode = new LinkedHashMap<>();
  private final Map<String, List<Value>> byDetail = new LinkedHashMap<>();

  TakeoffAnswers(Takeoff takeoff, int model, HostModel host, InstanceDraft draft) {
    this.takeoff = takeoff;
    this.model = model;
    this.host = host;
    this.draft = draft;
    this.history = host.ownerHistory().or(this::newHistory);
    this.properties = new PropertyDraft(draft, host, history);
    this.toModel = takeoff.models().get(model).world().inverse().after(Transform.translation(takeoff.offset()));
    this.codes = takeoff.codesByJunction();
    this.instances = host.instances(roofElements());
  }

  void add() {
    takeoff.coverage().stream().filter(c -> instances.containsKey(c.globalId())).forEach(this::roofElement);
    AssemblyDraft assembly = new AssemblyDraft(draft, host, properties, history, toModel);
    Map<String, Integer> modelByLine = new HashMap<>();
    for (DetailedJunction j : takeoff.lines()) {
      modelByLine.put(j.junction().junction().id(), modelOf(j.junction().junction()));
      if (modelByLine.get(j.junction().junction().id()) == model) {
        junction(j, assembly);
      }
    }
    for (KindedNode node : takeoff.nodes()) {
      if (modelByLine.getOrDefault(node.node().junctions().get(0), 0) == model) {
        node(node, assembly);
      }
    }
    host.container(Set.copyOf(instances.values())).ifPresent(this::contain);
    if (!byNode.isEmpty()) {
      classify("NodeKinds", byNode, id -> takeoff.nodeKinds().stream().filter(k -> k.id().equals(id)).findFirst().map(k -> k.label())
          .orElse(id));
    }
    if (!byKind.isEmpty()) {
      classify("JunctionKinds", byKind,
          id -> takeoff.lines().stream().map(j -> j.junction().type()).filter(k -> k.id().equals(id)).findFirst()
              .map(Kind::label).orElse(id));
      classify("Details", byDetail, id -> takeoff.detailTitles().getOrDefault(id, id));
    }
  }

  /** An owner history of our own, where the schema requires one and the model has none. */
  private Optional<Value> newHistory() {
    if (!host.needsOwnerHistory()) {
      return Optional.empty();
    }
    Value organization = draft.add("IfcOrganization", "Name", "seamledger");
    Value person = draft.add("IfcPerson", "FamilyName", "not stated");
    Value user = draft.add("IfcPersonAndOrganization", "ThePerson", person, "TheOrganization", organization);
    Value application = draft.add("IfcApplication", "ApplicationDeveloper", organization, "Version", takeoff.version(),
        "ApplicationFullName", "seamledger", "ApplicationIdentifier", "seamledger");
    return Optional.of(draft.add("IfcOwnerHistory", "OwningUser", user, "OwningApplication", application, "ChangeAction",
        InstanceDraft.word("ADDED"), "CreationDate", 0));
  }

  private Map<String, String> roofElements() {
    Map<String, String> classes = new HashMap<>();
    Set<String> roofs = takeoff.coverage().stream().map(ElementCoverage::globalId).collect(Collectors.toSet());
    takeoff.elements().values().stream().filter(e -> e.model() == model && roofs.contains(e.globalId()))
        .forEach(e -> classes.put(e.globalId(), e.ifcClass()));
    return classes;
  }

  /** The model of the first roof element that a line belongs to. */
  private int modelOf(Junction junction) {
    return junction.elements().stream().map(takeoff.elements()::get).filter(e -> e != null).mapToInt(ElementLabel::model).findFirst()
        .orElse(0);
  }

  private void node(KindedNode node, AssemblyDraft assembly) {
    Value added = assembly.node(node, takeoff.quantities().byJunction().get(node.id()),
        List.copyOf(codes.getOrDefault(node.id(), new TreeSet<>())));
    assemblies.add(added);
    byNode.computeIfAbsent(node.kind().id(), k -> new ArrayList<>()).add(added);
  }

  private void roofElement(ElementCoverage coverage) {
    String id = coverage.globalId();
    List<RoofFace> faces = takeoff.faces().stream().filter(f -> f.elements().contains(id)).toList();
    List<DetailedJunction> lines = takeoff.detailed().stream().filter(j -> j.junction().junction().elements().contains(id)).toList();
    PropertyDraft.Content content = properties.content().labels("Faces", faces.stream().map(RoofFace::id).toList())
        .areaProperty("UpwardArea", coverage.upwardM2()).areaProperty("AreaInFaces", coverage.inFacesM2());
    if (faces.size() == 1) {
      content.angle("Slope", faces.get(0).slopeDegrees());
    }
    content.number("Junctions", lines.size()).number("Violations", findings(id, lines, Severity.VIOLATION))
        .number("Warnings", findings(id, lines, Severity.WARNING));
    properties.properties(new Value.Reference(instances.get(id)), "Roof", content, "roof", id);
  }

  private int findings(String element, List<DetailedJunction> lines, Severity severity) {
    Set<String> ids = lines.stream().map(j -> j.junction().junction().id()).collect(Collectors.toSet());
    return (int) takeoff.findings().stream().filter(f -> f.severity() == severity && f.acceptance().isEmpty())
        .filter((Finding f) -> f.elements().contains(element) || ids.contains(f.junction())).count();
  }

  private void junction(DetailedJunction j, AssemblyDraft assembly) {
    Junction line = j.junction().junction();
    JunctionQuantities counted = takeoff.quantities().byJunction().get(line.id());
    Value added = assembly.junction(j, Optional.ofNullable(counted), List.copyOf(codes.getOrDefault(line.id(), new TreeSet<>())));
    assemblies.add(added);
    byKind.computeIfAbsent(j.junction().kind(), k -> new ArrayList<>()).add(added);
    byDetail.computeIfAbsent(j.detail().id(), k -> new ArrayList<>()).add(added);
  }

  private void contain(Value structure) {
    if (!assemblies.isEmpty()) {
      draft.add("IfcRelContainedInSpatialStructure", "GlobalId", properties.id("contains"), "OwnerHistory", history.orElse(null),
          "Name", "Roof junctions and nodes", "RelatedElements", InstanceDraft.list(assemblies), "RelatingStructure", structure);
    }
  }

  private void classify(String name, Map<String, List<Value>> groups, java.util.function.UnaryOperator<String> label) {
    Value system = draft.add("IfcClassification", "Source", "seamledger", "Edition", takeoff.version(), "Name",
        OwnRecords.NAME_PREFIX + name);
    for (String id : new TreeSet<>(groups.keySet())) {
      // The attribute was renamed between the schemas.
      Value reference = draft.add("IfcClassificationReference", "Identification", id, "ItemReference", id, "Name", label.apply(id),
          "ReferencedSource", system);
      draft.add("IfcRelAssociatesClassification", "GlobalId", properties.id("classification", name, id), "OwnerHistory",
          history.orElse(null), "RelatedObjects", InstanceDraft.list(groups.get(id)), "RelatingClassification", reference);
    }
  }
}
