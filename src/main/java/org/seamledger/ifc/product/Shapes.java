package org.seamledger.ifc.product;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;
import org.seamledger.ifc.placement.Placements;
import org.seamledger.ifc.solid.Draft;
import org.seamledger.ifc.solid.Items;

/** Products as lists of solids in the building's local coordinates. */
public final class Shapes {

  /** Representations that are no body, whatever their items are. */
  private static final List<String> NO_BODY = List.of("BOX", "AXIS", "FOOTPRINT", "ANNOTATION", "PROFILE", "CLEARANCE", "LIGHTING", "COG",
      "REFERENCE", "PLAN", "FOOT PRINT", "MASSPLAN", "BOUNDINGBOX");

  /** A broken element further than this (metres) from every roof is none of a roof's business. */
  private static final double FAR = 50;

  private final Model model;
  private final Placements placements;
  private final Draft.Maker maker = new Draft.Maker();
  /** From the model's own world to the building's. */
  private Transform place = Transform.IDENTITY;
  private Vec3 offset = Vec3.ZERO;

  Shapes(Model model) {
    this.model = model;
    this.placements = new Placements(model);
  }

  /** The same, in the same place; what can't be used is left out without a word. */
  Shapes quiet() {
    return on(model.quiet());
  }

  /** The same, in the same place, out of the same model for another use. */
  Shapes on(Model other) {
    Shapes shapes = new Shapes(other);
    shapes.place = place;
    shapes.offset = offset;
    return shapes;
  }

  /** Where the model stands in the building's world. */
  public void setPlace(Transform place) {
    this.place = place;
  }

  /** From a product's own coordinates to the model's own world. */
  public Transform placement(Entity product) {
    return placements.world(product.optionalReference(5));
  }

  /** From now on, local coordinates are the building's world less this. */
  public void setOffset(Vec3 offset) {
    this.offset = offset;
  }

  /** True where the product names a representation, good or bad. */
  static boolean isStated(Entity product) {
    return product.has(6);
  }

  /**
   * The product's body. What can't be used is left out with a finding.
   *
   * @return nothing where the product has no usable shape
   */
  public List<Solid> body(Entity product) {
    return body(product, box -> true, box -> {}, Bounds.WIDEST_ROOF);
  }

  /**
   * The product's body where the box round it passes a test; nothing where it doesn't.
   *
   * @param wanted is asked with a box that holds the body, and may be larger
   * @param seen hears that box, wanted or not
   */
  public List<Solid> body(Entity product, Predicate<Box3> wanted, Consumer<Box3> seen) {
    return body(product, wanted, seen, Bounds.WIDEST);
  }

  private List<Solid> body(Entity product, Predicate<Box3> wanted, Consumer<Box3> seen, double most) {
    if (!isStated(product)) {
      return List.of();
    }
    try {
      Transform placement = placements.world(product.optionalReference(5));
      for (Entity representation : representations(product)) {
        List<Draft> drafts = drafts(product, representation, placement, mayMatter(placement, wanted));
        if (!drafts.isEmpty()) {
          Box3 box = drafts.stream().map(Draft::box).reduce(Box3.EMPTY, Box3::union);
          seen.accept(box);
          return wanted.test(box) ? solids(product, drafts, most) : List.of();
        }
      }
    } catch (EntityProblem p) {
      report(product, p);
    } catch (IllegalArgumentException | ArithmeticException x) {
      report(product, EntityProblem.broken(x.getMessage()));
    }
    return List.of();
  }

  /** Representations that may hold a body, the best first. */
  private static List<Entity> representations(Entity product) {
    List<Entity> all = new ArrayList<>();
    for (Entity r : product.entity(6).entities(2)) {
      if (rank(r) < Integer.MAX_VALUE) {
        all.add(r);
      }
    }
    all.sort(Comparator.comparingInt(Shapes::rank));
    return all;
  }

  private static int rank(Entity representation) {
    String identifier = representation.text(1).toUpperCase(java.util.Locale.ROOT);
    String type = representation.text(2).toUpperCase(java.util.Locale.ROOT);
    if (!representation.keyword().equals("IFCSHAPEREPRESENTATION") || NO_BODY.contains(identifier) || NO_BODY.contains(type)) {
      return Integer.MAX_VALUE;
    }
    if (identifier.equals("BODY")) {
      return 0;
    }
    return switch (type) {
      case "SWEPTSOLID", "ADVANCEDSWEPTSOLID", "BREP", "ADVANCEDBREP", "CSG", "CLIPPING", "SOLIDMODEL", "TESSELLATION", "SECTIONEDSPINE",
          "MAPPEDREPRESENTATION" -> identifier.startsWith("BODY") ? 1 : identifier.equals("FACETATION") ? 2 : 3;
      case "SURFACEMODEL", "FACETEDSURFACE", "SURFACE", "SURFACE3D", "ADVANCEDSURFACE" -> 4;
      default -> identifier.startsWith("BODY") || identifier.isEmpty() && type.isEmpty() ? 5 : Integer.MAX_VALUE;
    };
  }

  /**
   * Whether something that is placed here is worth a finding although its box is not known: it is placed no further than a large building
   * away from what is wanted, or not placed at all.
   */
  private boolean mayMatter(Transform placement, Predicate<Box3> wanted) {
    Vec3 p = placement.apply(Vec3.ZERO);
    return p.equals(Vec3.ZERO) || wanted.test(Box3.of(List.of(place.apply(p).minus(offset))).grown(FAR));
  }

  private List<Draft> drafts(Entity product, Entity representation, Transform placement, boolean matters) {
    Transform t = Transform.translation(offset.negated()).after(place).after(worldSystem(representation)).after(placement);
    List<Draft> drafts = new ArrayList<>();
    for (Entity item : representation.members(3)) {
      if (!Items.boundsNothing(item.keyword())) {
        try {
          drafts.add(maker.draft(item, t, 0));
        } catch (EntityProblem p) {
          if (matters) {
            report(product, p);
          }
        }
      }
    }
    return drafts;
  }

  private List<Solid> solids(Entity product, List<Draft> drafts, double most) {
    List<Solid> solids = new ArrayList<>();
    for (Draft draft : drafts) {
      try {
        Solid solid = draft.solid().get();
        if (solid.bounds().isEmpty()) {
          throw EntityProblem.broken("an item of it is empty");
        }
        Bounds.require(solid.bounds(), most);
        solids.add(solid);
      } catch (EntityProblem p) {
        report(product, p);
      }
    }
    return solids;
  }

  /** The context's own placement in the world; the identity nearly always. */
  private static Transform worldSystem(Entity representation) {
    Entity context = representation.optionalEntity(0);
    for (int i = 0; context != null && context.is("IFCGEOMETRICREPRESENTATIONSUBCONTEXT") && i < 10; i++) {
      context = context.optionalEntity(6);
    }
    if (context == null || !context.is("IFCGEOMETRICREPRESENTATIONCONTEXT") || !context.has(4)) {
      return Transform.IDENTITY;
    }
    return Placements.axes(context.entity(4));
  }

  private void report(Entity product, EntityProblem p) {
    model.mention(product);
    model.findings().add(p, name(product), product.text(0));
  }

  /** An element as findings name it. */
  public static String name(Entity product) {
    ElementClass c = ElementClass.of(product.keyword());
    String name = product.text(2);
    return (c == null ? product.keyword() : c.name()) + " " + product.text(0) + (name.isBlank() ? "" : " (" + name + ")");
  }

  public static Box3 bounds(List<Solid> body) {
    return body.stream().map(Solid::bounds).reduce(Box3.EMPTY, Box3::union);
  }
}
