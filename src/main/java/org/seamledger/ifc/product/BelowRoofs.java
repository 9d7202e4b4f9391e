package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Solid;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;

/**
 * Doors of walls and rooms below a roof: they meet it nowhere, but snow slides on the ones, and water that gets in drips into the others.
 * What can't be read of them is left out without a word: the roof is whole without it.
 */
public final class BelowRoofs {

  private static final List<String> DOORS = List.of("IFCDOOR", "IFCDOORSTANDARDCASE");
  /** Place of a space's PredefinedType, which IFC2X3 calls InteriorOrExteriorSpace. */
  private static final int SPACE_TYPE = 9;

  private final Scope scope;
  private final Set<Long> roofs;
  private final Predicate<Box3> below;
  private final Shapes shapes;
  private final Model model;
  private final List<Element> found = new ArrayList<>();

  private BelowRoofs(Scope scope, Set<Long> roofs, PlanIndex<Box3> near) {
    this.scope = scope;
    this.roofs = roofs;
    this.shapes = scope.shapes().quiet();
    this.model = scope.model().quiet();
    this.below = box -> near.overlappingInPlan(box.grown(Neighbours.REACH)).stream().anyMatch(roof -> box.minZ() <= roof.maxZ());
  }

  /**
   * In no order.
   *
   * @param roofs instances that are roof elements
   * @param near boxes of all roofs, in local coordinates
   */
  public static List<Element> of(Scope scope, Set<Long> roofs, PlanIndex<Box3> near) {
    BelowRoofs all = new BelowRoofs(scope, roofs, near);
    DOORS.forEach(keyword -> {
      for (long id : scope.model().idsOf(keyword)) {
        all.door(id);
      }
    });
    for (long id : scope.model().idsOf("IFCSPACE")) {
      all.space(id);
    }
    return all.found;
  }

  /** The hole in the wall stands for the door: it is simpler than a leaf with its handle. */
  private void door(long id) {
    long opening = scope.relations().openingOf(id);
    if (!roofs.contains(scope.relations().hostOfFilling(id))) {
      add(id, opening >= 0 ? opening : id, Category.DOOR, "IfcDoor");
    }
  }

  private void space(long id) {
    add(id, id, Category.SPACE, "IfcSpace");
  }

  private void add(long id, long shape, Category category, String ifcClass) {
    try {
      Entity e = model.get(id);
      if (category == Category.SPACE && e.word(SPACE_TYPE).equals("EXTERNAL")) {
        return;
      }
      List<Solid> body = shapes.body(model.get(shape), below, box -> {});
      if (!body.isEmpty()) {
        scope.model().mention(scope.model().get(id));
        found.add(new Element(e.text(0), ifcClass, category, e.text(2), model.index(), body, List.of(), "", new TreeMap<>()));
      }
    } catch (EntityProblem p) {
      // See the head: nothing of the roof hangs on it.
    }
  }
}
