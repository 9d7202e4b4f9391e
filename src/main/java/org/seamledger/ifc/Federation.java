package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Findings;
import org.seamledger.ifc.placement.MapConversions;
import org.seamledger.ifc.placement.Placements;
import org.seamledger.ifc.product.Scope;
import org.seamledger.ifc.product.Shapes;
import org.seamledger.site.Footprint;
import org.seamledger.site.MapConversion;
import org.seamledger.site.MapGroups;
import org.seamledger.site.Mark;
import org.seamledger.site.ModelAlignment;
import org.seamledger.site.RigidTransform;

/**
 * Several models in one world: that of the first. A model alone stays where it is.
 *
 * <p>Each is placed by the best that it states. Models that state a conversion to one map meet through it: they keep their places to each
 * other, and all of them lie as the first of them lies by its own coordinates, which for the first model of all is the world. A model that
 * states none, or is alone in its map, lies by its own coordinates. A movement that the caller requires brings its model from its own
 * coordinates to the world in place of all that, and moves no other model.
 */
final class Federation {

  /** Largest surfaces of a roof element that are kept to compare roofs. */
  private static final int SURFACES = 4;

  private final List<Scope> scopes;
  private final Findings findings;
  private final List<Optional<MapConversion>> maps = new ArrayList<>();
  private final List<Transform> places = new ArrayList<>();

  private Federation(List<Scope> scopes, Findings findings) {
    this.scopes = scopes;
    this.findings = findings;
  }

  /** Gives every model its place. */
  static Federation of(List<Scope> scopes, List<Optional<RigidTransform>> asked, Findings findings) {
    Federation federation = new Federation(scopes, findings);
    if (scopes.size() > 1) {
      scopes.forEach(s -> federation.maps.add(MapConversions.of(s.model())));
    }
    List<Integer> anchors = MapGroups.anchors(federation.maps);
    federation.reportMaps(anchors, IntStream.range(0, asked.size())
        .filter(i -> asked.get(i).isPresent()).boxed().collect(Collectors.toSet()));
    for (int i = 0; i < scopes.size(); i++) {
      federation.place(i, asked.get(i), anchors.isEmpty() ? i : anchors.get(i));
    }
    return federation;
  }

  private void reportMaps(List<Integer> anchors, Set<Integer> asked) {
    new MapGroups(scopes.stream().map(s -> s.model().name()).toList(), maps, anchors, asked).findings().forEach(findings::add);
  }

  /** @param anchor the model whose own coordinates those that share its map take; itself for one that comes through no map */
  private void place(int i, Optional<RigidTransform> asked, int anchor) {
    Transform place = Transform.IDENTITY;
    String how = "";
    if (asked.isPresent()) {
      place = asked.get().transform();
      how = scopes.get(0).model().name() + " as asked for";
    } else if (anchor != i) {
      place = maps.get(i).get().into(maps.get(anchor).get());
      how = scopes.get(anchor).model().name() + " through the map that both state";
    }
    places.add(place);
    scopes.get(i).shapes().setPlace(place);
    if (!place.equals(Transform.IDENTITY)) {
      findings.add(Code.MODEL_PLACED,
          scopes.get(i).model().name() + " was brought to " + how + ": " + RigidTransform.of(place).words() + ".");
    }
  }

  /** From a model's own coordinates to those of the first one, metres. */
  Transform place(int model) {
    return places.get(model);
  }

  boolean isOne() {
    return scopes.size() == 1;
  }

  // ---- whether they fit

  /**
   * Findings about models that don't lie where they should.
   *
   * @param marks of the neighbours of each model
   * @param roofs of all models, in local coordinates
   */
  List<Finding> fit(List<Footprint.Collector> marks, List<Element> roofs, Vec3 offset) {
    if (isOne()) {
      return List.of();
    }
    List<Footprint> silhouettes = new ArrayList<>();
    for (int i = 0; i < scopes.size(); i++) {
      int model = i;
      silhouettes.add(silhouette(scopes.get(i), i, marks.get(i), roofs.stream().filter(r -> r.model() == model).toList(), offset));
    }
    return ModelAlignment.findings(silhouettes, offset);
  }

  private Footprint silhouette(Scope scope, int i, Footprint.Collector marks, List<Element> roofs, Vec3 offset) {
    List<Footprint.Slope> slopes = new ArrayList<>();
    for (Element roof : roofs) {
      marks.add(new Mark(roof.globalId(), roof.ifcClass(), false, roof.bounds()));
      slopes.addAll(slopes(roof));
      for (Opening o : roof.openings()) {
        Box3 box = Shapes.bounds(o.body());
        if (!o.isFilled() && !box.isEmpty() && box.isBounded()) {
          marks.add(new Mark(o.globalId(), Mark.HOLE, false, box));
        }
      }
    }
    Transform placed = Transform.translation(offset.negated()).after(places.get(i));
    return new Footprint(scope.model().name(), marks.marks(), slopes, storeys(scope, placed), anchors(scope, placed), north(scope, placed),
        maps.get(i), placed);
  }

  private static List<Footprint.Slope> slopes(Element roof) {
    List<Solid.Surface> up = new ArrayList<>();
    roof.body().forEach(s -> s.eachSurface(f -> {
      if (f.area() > 0 && f.plane().normal().z() > 0.05) {
        up.add(f);
      }
    }));
    return up.stream().sorted(java.util.Comparator.comparingDouble((Solid.Surface s) -> -s.area())).limit(SURFACES)
        .map(s -> new Footprint.Slope(s.plane().normal(), s.at(), roof.bounds())).toList();
  }

  private static Map<String, Double> storeys(Scope scope, Transform placed) {
    Map<String, Double> storeys = new TreeMap<>();
    for (long id : scope.model().idsOf("IFCBUILDINGSTOREY")) {
      try {
        Entity storey = scope.model().get(id);
        String name = storey.text(2).trim().toLowerCase(java.util.Locale.ROOT);
        if (!name.isEmpty()) {
          storeys.putIfAbsent(name, placed.apply(scope.shapes().placement(storey).apply(Vec3.ZERO)).z());
        }
      } catch (EntityProblem p) {
        // A storey without a place states nothing about heights.
      }
    }
    return storeys;
  }

  /** Where the one site, the one building and the one grid are; several of a kind can't be told apart. */
  private static Map<String, Transform> anchors(Scope scope, Transform placed) {
    Map<String, Transform> anchors = new TreeMap<>();
    Map.of("sites", "IFCSITE", "buildings", "IFCBUILDING", "grids", "IFCGRID").forEach((what, keyword) -> {
      long[] ids = scope.model().idsOf(keyword);
      try {
        if (ids.length == 1 && scope.model().get(ids[0]).has(5)) {
          anchors.put(what, placed.after(scope.shapes().placement(scope.model().get(ids[0]))));
        }
      } catch (EntityProblem p) {
        // As for storeys.
      }
    });
    return anchors;
  }

  private static Optional<Vec3> north(Scope scope, Transform placed) {
    for (long id : scope.model().idsOf("IFCGEOMETRICREPRESENTATIONCONTEXT")) {
      try {
        Entity context = scope.model().get(id);
        if (context.text(1).equalsIgnoreCase("Model") && context.has(5)) {
          Vec3 d = Placements.direction(context.entity(5));
          return d.planLength() < 1e-6 ? Optional.empty() : Optional.of(placed.applyDirection(new Vec3(d.x(), d.y(), 0)).unit());
        }
      } catch (EntityProblem p) {
        // As for storeys.
      }
    }
    return Optional.empty();
  }
}
