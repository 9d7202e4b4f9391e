package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.seamledger.element.Building;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.Code;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Findings;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.ifc.entity.Model;
import org.seamledger.ifc.product.BelowRoofs;
import org.seamledger.ifc.product.Holes;
import org.seamledger.ifc.product.Materials;
import org.seamledger.ifc.product.Neighbours;
import org.seamledger.ifc.product.Properties;
import org.seamledger.ifc.product.RoofBodies;
import org.seamledger.ifc.product.Roofs;
import org.seamledger.ifc.product.Scope;
import org.seamledger.ifc.product.Shapes;
import org.seamledger.progress.Progress;
import org.seamledger.site.Footprint;
import org.seamledger.site.Mark;
import org.seamledger.site.RigidTransform;

/**
 * Exchange structures of IFC2X3, IFC4 and IFC4X3 in, a building out: what carries the roof, and what is near it. Several models are
 * one building, in one world.
 */
public final class IfcReader {

  /** Nearer than this (metres) to the world's origin, local coordinates are the world's. */
  private static final double NEAR_ORIGIN = 2000;
  /** A roof's own body and its parts' together are the same where their boxes differ by less than this (metres). */
  private static final double SAME_BOX = 0.01;

  private static final int REPEATED_SHOWN = 5;

  private final Findings findings = new Findings();
  private final List<Scope> scopes = new ArrayList<>();
  private final List<TreeSet<Long>> roofIds = new ArrayList<>();
  private Vec3 offset = Vec3.ZERO;
  private final Progress progress;

  private IfcReader(Progress progress) {
    this.progress = progress;
  }

  /**
   * Reads what a roof needs.
   *
   * @param progress receives the progress, element by element
   * @throws org.seamledger.finding.UnreadableModelException if a file is not of a supported schema, or a part of it that is needed is
   *     no valid exchange structure
   */
  public static Building read(List<IfcInput> inputs, Progress progress) {
    return new IfcReader(progress).building(inputs);
  }

  private Building building(List<IfcInput> inputs) {
    for (int i = 0; i < inputs.size(); i++) {
      scopes.add(Scope.of(new Model(inputs.get(i), i, findings)));
      reportRepeated(inputs.get(i));
    }
    Federation federation = Federation.of(scopes, inputs.stream().map(IfcInput::movement).toList(), findings);
    List<Element> roofs = roofs();
    PlanIndex<Box3> near = new PlanIndex<>(roofs.stream().map(Element::bounds).toList(), b -> b);
    List<Element> neighbours = new ArrayList<>();
    List<Neighbours> readers = new ArrayList<>();
    List<Footprint.Collector> marks = new ArrayList<>();
    ClosingFloors closing = new ClosingFloors(roofs);
    for (int i = 0; i < scopes.size(); i++) {
      marks.add(new Footprint.Collector());
      Consumer<Mark> fit = federation.isOne() ? mark -> {} : marks.get(i)::add;
      readers.add(new Neighbours(scopes.get(i), roofIds.get(i), near, fit.andThen(closing::add)));
      neighbours.addAll(readers.get(i).elements(progress.part(0.5, 1).part(i, scopes.size())));
    }
    Set<String> shaped = neighbours.stream().map(Element::globalId).collect(Collectors.toSet());
    readers.forEach(r -> r.reportShapeless(shaped));
    closing.finding().ifPresent(findings::add);
    federation.fit(marks, roofs, offset).forEach(findings::add);
    List<ModelInfo> infos = infos(inputs, federation);
    Duplicates duplicates = new Duplicates(inputs.stream().map(IfcInput::name).toList(), findings);
    GlobalIds ids = new GlobalIds(findings);
    List<Element> uniqueRoofs = ids.unique(duplicates.without(sorted(roofs)));
    List<Element> uniqueNeighbours = ids.unique(duplicates.without(sorted(neighbours)));
    List<Element> below = below(near);
    duplicates.report();
    ids.report();
    return new Building(infos, uniqueRoofs, uniqueNeighbours.stream().filter(e -> !isFlashing(e)).toList(),
        uniqueNeighbours.stream().filter(IfcReader::isFlashing).toList(), offset, findings.all(),
        Mentions.of(scopes, List.of(below, uniqueNeighbours, uniqueRoofs), findings.all()), below);
  }

  /** Doors and rooms below the roofs; of several models that hold the same one, the first speaks. */
  private List<Element> below(PlanIndex<Box3> near) {
    Map<String, Element> byId = new TreeMap<>();
    for (int i = 0; i < scopes.size(); i++) {
      BelowRoofs.of(scopes.get(i), roofIds.get(i), near, progress.part(1, 1)).forEach(e -> byId.putIfAbsent(e.globalId(), e));
    }
    return List.copyOf(byId.values());
  }

  private void reportRepeated(IfcInput input) {
    List<Long> repeated = input.file().repeatedIds();
    if (!repeated.isEmpty()) {
      String some = repeated.stream().limit(REPEATED_SHOWN).map(id -> "#" + id).collect(Collectors.joining(", "));
      findings.add(Code.REPEATED_ID, input.name() + " has several instances with one id, where each id may stand once: " + some
          + (repeated.size() > REPEATED_SHOWN ? " and " + (repeated.size() - REPEATED_SHOWN) + " more" : ""));
    }
  }

  private static boolean isFlashing(Element e) {
    return e.category() == Category.FLASHING || e.category() == Category.GUTTER;
  }

  private static List<Element> sorted(List<Element> elements) {
    return elements.stream().sorted(Comparator.comparing(Element::globalId).thenComparing(Element::model)
        .thenComparing(Element::ifcClass).thenComparing(Element::name)).toList();
  }

  private List<Element> roofs() {
    scopes.forEach(s -> roofIds.add(Roofs.typed(s)));
    List<Element> roofs = built();
    if (roofs.isEmpty()) {
      boolean typed = roofIds.stream().anyMatch(ids -> !ids.isEmpty());
      for (int i = 0; i < scopes.size(); i++) {
        roofIds.get(i).addAll(Roofs.named(scopes.get(i)));
      }
      roofs = built();
      if (!roofs.isEmpty()) {
        findings.add(Code.ROOF_BY_NAME, (typed ? "The elements typed as roofs have no shape" : "No element is typed as a roof")
            + "; " + roofs.size() + " whose names say roof were taken.",
            roofs.stream().map(Element::globalId).sorted().toArray(String[]::new));
      }
    }
    if (roofs.isEmpty()) {
      findings.add(Code.NO_ROOF, "No roof with a shape was found.");
    }
    reportShapeless(roofs);
    return roofs;
  }

  /** The roof elements with their bodies; moved near the origin where the world's is far away. */
  private List<Element> built() {
    List<Map<Long, List<Solid>>> bodies = bodies();
    Box3 box = Box3.EMPTY;
    for (Map<Long, List<Solid>> map : bodies) {
      for (List<Solid> body : map.values()) {
        box = box.union(Shapes.bounds(body));
      }
    }
    if (!box.isEmpty() && box.isBounded() && box.centre().length() > NEAR_ORIGIN) {
      Vec3 c = box.centre();
      offset = new Vec3(Math.rint(c.x()), Math.rint(c.y()), Math.rint(c.z()));
      scopes.forEach(s -> s.shapes().setOffset(offset));
      bodies = bodies();
    }
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < scopes.size(); i++) {
      elements.addAll(elements(scopes.get(i), withoutRepeated(scopes.get(i), bodies.get(i))));
    }
    return elements;
  }

  private List<Map<Long, List<Solid>>> bodies() {
    List<Map<Long, List<Solid>>> bodies = new ArrayList<>();
    for (int i = 0; i < scopes.size(); i++) {
      bodies.add(RoofBodies.of(scopes.get(i), roofIds.get(i), progress.part(0, 0.5).part(i, scopes.size())));
    }
    return bodies;
  }

  /** Without bodies of wholes that repeat what their parts are. */
  private static Map<Long, List<Solid>> withoutRepeated(Scope scope, Map<Long, List<Solid>> bodies) {
    Map<Long, Box3> parts = new HashMap<>();
    for (long id : bodies.keySet()) {
      for (long up : scope.relations().ancestors(id)) {
        parts.merge(up, Shapes.bounds(bodies.get(id)), Box3::union);
      }
    }
    Map<Long, List<Solid>> kept = new TreeMap<>(bodies);
    parts.forEach((whole, box) -> {
      if (kept.containsKey(whole) && alike(Shapes.bounds(kept.get(whole)), box)) {
        kept.remove(whole);
      }
    });
    return kept;
  }

  private static boolean alike(Box3 a, Box3 b) {
    return Math.abs(a.minX() - b.minX()) < SAME_BOX && Math.abs(a.minY() - b.minY()) < SAME_BOX
        && Math.abs(a.minZ() - b.minZ()) < SAME_BOX && Math.abs(a.maxX() - b.maxX()) < SAME_BOX
        && Math.abs(a.maxY() - b.maxY()) < SAME_BOX && Math.abs(a.maxZ() - b.maxZ()) < SAME_BOX;
  }

  private static List<Element> elements(Scope scope, Map<Long, List<Solid>> bodies) {
    Set<Long> described = new HashSet<>(bodies.keySet());
    bodies.keySet().forEach(id -> described.addAll(scope.relations().ancestors(id)));
    described.removeIf(id -> scope.classOf(id) == null);
    Map<Long, SortedMap<String, String>> properties = Properties.of(scope.model(), described);
    Materials.of(scope.model(), described).forEach((id, names) -> properties.get(id).put(Element.MATERIALS, names));
    List<Element> elements = new ArrayList<>();
    bodies.forEach((id, body) -> {
      Entity e = scope.model().get(id);
      scope.model().mention(e);
      elements.add(new Element(e.text(0), scope.classOf(id).name(), Category.ROOF, e.text(2), scope.model().index(), body,
          Holes.of(scope, id, bodies::containsKey), scope.whole(id), withWhole(scope, id, properties)));
    });
    return elements;
  }

  /** The element's own properties, and its wholes' as {@code Whole.Set.Name}. */
  private static SortedMap<String, String> withWhole(Scope scope, long id, Map<Long, SortedMap<String, String>> properties) {
    SortedMap<String, String> all = new TreeMap<>(properties.get(id));
    for (long up : scope.relations().ancestors(id)) {
      properties.getOrDefault(up, new TreeMap<>()).forEach((k, v) -> all.putIfAbsent("Whole." + k, v));
    }
    return all;
  }

  /** Roof elements that neither have a body nor parts with one, in any of the models. */
  private void reportShapeless(List<Element> roofs) {
    Set<String> shaped = new HashSet<>();
    roofs.forEach(r -> shaped.addAll(List.of(r.globalId(), r.whole())));
    for (int i = 0; i < scopes.size(); i++) {
      Scope scope = scopes.get(i);
      Set<Long> withBody = new HashSet<>();
      for (long id : roofIds.get(i)) {
        if (shaped.contains(scope.model().get(id).text(0))) {
          withBody.add(id);
          withBody.addAll(scope.relations().ancestors(id));
        }
      }
      for (long id : roofIds.get(i)) {
        Entity e = scope.model().get(id);
        if (!withBody.contains(id)) {
          scope.model().mention(e);
          String parts = shapedParts(scope, id);
          findings.add(parts.isEmpty() ? Code.ROOF_WITHOUT_SHAPE : Code.ROOF_IN_PARTS, Shapes.name(e)
              + (parts.isEmpty() ? " has no shape that can be used."
                  : " has its shape in parts that carry no roof surface: " + parts + "."),
              e.text(0));
        }
      }
    }
  }

  /** Classes of the parts of an element, at any depth, that state a shape; the empty string where none does. */
  private static String shapedParts(Scope scope, long whole) {
    Set<String> classes = new java.util.TreeSet<>();
    Set<Long> seen = new HashSet<>(Set.of(whole));
    List<Long> open = new ArrayList<>(scope.relations().parts(whole));
    while (!open.isEmpty()) {
      long id = open.remove(open.size() - 1);
      if (seen.add(id)) {
        shapedClass(scope, id).ifPresent(classes::add);
        open.addAll(scope.relations().parts(id));
      }
    }
    return String.join(", ", classes);
  }

  private static Optional<String> shapedClass(Scope scope, long id) {
    try {
      Entity part = scope.model().get(id);
      return !part.has(6) ? Optional.empty() : Optional.of(scope.classOf(id) == null ? part.keyword() : scope.classOf(id).name());
    } catch (EntityProblem p) {
      // A part that the file does not hold has no shape; that it is missing is said where it is looked for.
      return Optional.empty();
    }
  }

  private List<ModelInfo> infos(List<IfcInput> inputs, Federation federation) {
    List<ModelInfo> infos = new ArrayList<>();
    for (int i = 0; i < inputs.size(); i++) {
      Model model = scopes.get(i).model();
      infos.add(new ModelInfo(inputs.get(i).bareName(), model.file().sha256(), model.schema().name(), model.units().lengthName(),
          application(model), model.file().size(), inputs.get(i).movement().map(RigidTransform::argument),
          model.file().header().timeStamp().strip(), projectId(model), federation.place(i)));
    }
    return infos;
  }

  private static String projectId(Model model) {
    try {
      for (long id : model.idsOf("IFCPROJECT")) {
        return model.get(id).text(0);
      }
    } catch (EntityProblem p) {
      // Which project it is changes nothing in the roof.
    }
    return "";
  }

  /** Full name and version of the program that wrote the project, or else of the first one named, or else the header's word. */
  private static String application(Model model) {
    try {
      for (long id : model.idsOf("IFCPROJECT")) {
        Entity history = model.get(id).optionalEntity(1);
        Entity application = history == null ? null : history.optionalEntity(1);
        if (application != null) {
          return (application.text(2) + " " + application.text(1)).trim();
        }
      }
      for (long id : model.idsOf("IFCAPPLICATION")) {
        return (model.get(id).text(2) + " " + model.get(id).text(1)).trim();
      }
    } catch (EntityProblem p) {
      // Who wrote a model changes nothing in it.
    }
    return model.file().header().originatingSystem().trim();
  }
}
