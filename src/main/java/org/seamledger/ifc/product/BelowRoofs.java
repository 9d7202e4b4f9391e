package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
import org.seamledger.progress.Progress;
import org.seamledger.progress.SharedWork;

/**
 * Doors of walls and rooms below a roof: they meet it nowhere, but snow slides on the ones, and water that gets in drips into the others.
 * What can't be read of them is left out without a word: the roof is whole without it.
 */
public final class BelowRoofs {

  private static final String SPACE = "IFCSPACE";
  private static final List<String> DOORS_AND_SPACES = List.of("IFCDOOR", "IFCDOORSTANDARDCASE", SPACE);
  /** Place of a space's PredefinedType, which IFC2X3 calls InteriorOrExteriorSpace. */
  private static final int SPACE_TYPE = 9;

  private final Scope scope;
  private final Set<Long> roofs;
  private final Predicate<Box3> below;
  private final Shapes shapes;
  private final Model model;

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
  public static List<Element> of(Scope scope, Set<Long> roofs, PlanIndex<Box3> near, Progress progress) {
    List<Element> found = new ArrayList<>();
    SharedWork.each(Ids.of(DOORS_AND_SPACES, scope.model()::idsOf), progress, () -> new BelowRoofs(scope.fork(), roofs, near),
        BelowRoofs::found, some -> {
          found.addAll(some.elements());
          scope.model().mentionAll(some.mentioned());
        });
    return found;
  }

  /** What a thread found in a stretch of instances. */
  private record Found(List<Element> elements, Map<String, Long> mentioned) {
  }

  private Found found(Ids<String> some, Progress progress) {
    List<Element> elements = new ArrayList<>();
    for (int i = some.from(); i < some.to(); i++) {
      progress.at((i - some.from()) / (double) (some.to() - some.from()));
      if (some.type().equals(SPACE)) {
        space(some.ids()[i], elements);
      } else {
        door(some.ids()[i], elements);
      }
    }
    return new Found(elements, scope.model().takeMentioned());
  }

  /** The hole in the wall stands for the door: it is simpler than a leaf with its handle. */
  private void door(long id, List<Element> found) {
    long opening = scope.relations().openingOf(id);
    if (!roofs.contains(scope.relations().hostOfFilling(id))) {
      add(id, opening >= 0 ? opening : id, Category.DOOR, "IfcDoor", found);
    }
  }

  private void space(long id, List<Element> found) {
    add(id, id, Category.SPACE, "IfcSpace", found);
  }

  private void add(long id, long shape, Category category, String ifcClass, List<Element> found) {
    try {
      Entity e = model.get(id);
      if (category == Category.SPACE && e.word(SPACE_TYPE).equals("EXTERNAL")) {
        return;
      }
      List<Solid> body = shapes.body(model.get(shape), below, box -> {});
      if (!body.isEmpty()) {
        scope.model().mention(e);
        found.add(new Element(e.text(0), ifcClass, category, e.text(2), model.index(), body, List.of(), "", new TreeMap<>()));
      }
    } catch (EntityProblem p) {
      // See the head: nothing of the roof hangs on it.
    }
  }
}
