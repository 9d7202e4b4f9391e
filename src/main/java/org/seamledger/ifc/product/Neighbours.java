package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.finding.Code;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PlanIndex;
import org.seamledger.geometry.Solid;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;
import org.seamledger.progress.Progress;
import org.seamledger.progress.SharedWork;
import org.seamledger.site.Mark;

/** Elements near a roof that it may end at or that may stand in it. */
public final class Neighbours {

  /** How far from a roof's box, in metres, an element can still meet it. */
  static final double REACH = 0.6;

  private final Scope scope;
  private final Model model;
  private final Set<Long> roofs;
  private final PlanIndex<Box3> near;
  private final Consumer<Mark> seen;

  /**
   * @param near boxes of all roofs, in local coordinates
   * @param seen hears where every element is, near or not
   */
  public Neighbours(Scope scope, Set<Long> roofs, PlanIndex<Box3> near, Consumer<Mark> seen) {
    this.scope = scope;
    this.model = scope.model();
    this.roofs = roofs;
    this.near = near;
    this.seen = seen;
  }

  /** All of them, read on several threads, in the order of their classes and ids. */
  public List<Element> elements(Progress progress) {
    List<Element> elements = new ArrayList<>();
    SharedWork.each(Ids.of(ElementClass.all(), c -> model.idsOf(c.keyword())), progress, scope::fork, this::found, found -> {
      elements.addAll(found.elements());
      found.marks().forEach(seen);
      model.mentionAll(found.mentioned());
    });
    return elements;
  }

  /** What a thread found in a stretch of instances. */
  private record Found(List<Element> elements, List<Mark> marks, Map<String, Long> mentioned) {
  }

  private Found found(Scope own, Ids<ElementClass> some, Progress progress) {
    List<Element> elements = new ArrayList<>();
    List<Mark> marks = new ArrayList<>();
    Neighbours here = new Neighbours(own, roofs, near, marks::add);
    for (int i = some.from(); i < some.to(); i++) {
      progress.at((i - some.from()) / (double) (some.to() - some.from()));
      if (!roofs.contains(some.ids()[i])) {
        here.addIfNear(some.type(), some.ids()[i], elements);
      }
    }
    return new Found(elements, marks, own.model().takeMentioned());
  }

  private void addIfNear(ElementClass c, long id, List<Element> elements) {
    try {
      Category category = scope.flashings().category(c, id).orElseGet(() -> category(c, id));
      if (category == null) {
        return;
      }
      Entity product = model.get(id);
      if (!Shapes.isStated(product)) {
        return;
      }
      // What hangs from a roof is lower than all of it.
      double below = category == Category.FLASHING || category == Category.GUTTER ? REACH : 0;
      List<Solid> body = scope.shapes().body(product, b -> isNear(b, below), box -> {
        if (!box.isEmpty() && box.isBounded()) {
          seen.accept(new Mark(product.text(0), c.name(), c.isService(), box));
        }
      });
      if (isNear(Shapes.bounds(body), below)) {
        model.mention(product);
        elements.add(new Element(product.text(0), c.name(), category, product.text(2), model.index(), body, openings(id),
            scope.whole(id), new java.util.TreeMap<>()));
      }
    } catch (EntityProblem p) {
      model.findings().add(p, c.name() + " #" + id);
    }
  }

  /** Overlapping a roof's box in plan, at most so far below its lowest point, no higher than just above its highest. */
  private boolean isNear(Box3 box, double below) {
    return near.overlappingInPlan(box.grown(REACH)).stream()
        .anyMatch(roof -> box.maxZ() >= roof.minZ() - below && box.minZ() <= roof.maxZ() + REACH);
  }

  /** What the element is to a roof, or null where it is nothing. */
  private Category category(ElementClass c, long id) {
    return switch (c.role()) {
      case ROOF, ACCESSORY -> null;
      case WALL -> Category.WALL;
      case OPENING_FILLER -> fillsWall(id) ? null : Category.PENETRATION;
      case COVERING -> isLining(id) ? null : Category.PENETRATION;
      case SLAB, PROXY, ASSEMBLY -> Category.PENETRATION;
      case PLATE, PART, PENETRATION -> inWall(id) ? Category.WALL : Category.PENETRATION;
      case SERVICE -> inWall(id) ? Category.WALL : Category.SERVICE;
    };
  }

  /** Coverings under or inside the roof, which never stand in it; not so the insulation of a pipe, which goes through with it. */
  private boolean isLining(long id) {
    return switch (Roofs.predefinedType(model, id)) {
      case "CEILING", "FLOORING", "SKIRTINGBOARD", "MEMBRANE" -> true;
      case "INSULATION", "SLEEVING", "WRAPPING" -> !isOfService(id);
      default -> false;
    };
  }

  private boolean isOfService(long id) {
    List<Long> owners = new ArrayList<>(scope.relations().ancestors(id));
    owners.add(scope.relations().coveredBy(id));
    return owners.stream().map(scope::classOf).anyMatch(c -> c != null && c.isService());
  }

  private boolean inWall(long id) {
    return scope.relations().ancestors(id).stream()
        .anyMatch(up -> scope.classOf(up) != null && scope.classOf(up).role() == ElementClass.Role.WALL);
  }

  /** Windows and doors of walls belong to the wall; those of a roof, and those that fill nothing, stand by themselves. */
  private boolean fillsWall(long id) {
    long host = scope.relations().hostOfFilling(id);
    return host >= 0 && !roofs.contains(host);
  }

  /** Unfilled openings only: what fills an opening of a wall closes the wall again. */
  private List<Opening> openings(long id) {
    return Holes.unfilled(scope, id);
  }

  /** Chimneys that have no shape, nor parts, nor a namesake with one. */
  public void reportShapeless(Set<String> shaped) {
    for (long id : model.idsOf("IFCCHIMNEY")) {
      Entity chimney = model.get(id);
      if (!Shapes.isStated(chimney) && scope.relations().parts(id).isEmpty() && !shaped.contains(chimney.text(0))) {
        model.mention(chimney);
        model.findings().add(Code.NEIGHBOUR_WITHOUT_SHAPE, Shapes.name(chimney) + " has no shape.", chimney.text(0));
      }
    }
  }
}
