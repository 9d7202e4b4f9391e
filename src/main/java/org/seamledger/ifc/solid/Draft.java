package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Skin;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.curve.Curves;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;

/**
 * An item of which it is known where it is before its body is made: most elements of a model are nowhere near a roof.
 *
 * @param box holds the body; not always the smallest
 * @param solid makes the body, or throws a {@link EntityProblem}
 */
public record Draft(Box3 box, Supplier<Solid> solid) {

  /** Makes drafts; remembers where mapped representations are. */
  public static final class Maker {

    private final Map<Long, Box3> maps = new HashMap<>();

    /** @throws EntityProblem if the item is broken or not supported; what shows only in the body, {@link Draft#solid} throws */
    public Draft draft(Entity item, Transform t, int depth) {
      if (depth > Items.DEEPEST) {
        throw EntityProblem.broken(item + ": items are nested too deeply, or contain themselves");
      }
      try {
        return switch (item.keyword()) {
          case "IFCEXTRUDEDAREASOLID" -> extruded(item, t);
          case "IFCFACETEDBREP", "IFCFACETEDBREPWITHVOIDS", "IFCADVANCEDBREP", "IFCADVANCEDBREPWITHVOIDS" -> Breps.draft(item, t);
          case "IFCPOLYGONALFACESET", "IFCTRIANGULATEDFACESET", "IFCTRIANGULATEDIRREGULARNETWORK" -> faceSet(item, t);
          case "IFCBOOLEANRESULT", "IFCBOOLEANCLIPPINGRESULT" -> clipped(item, t, depth);
          case "IFCMAPPEDITEM" -> mapped(item, t, depth);
          default -> {
            Solid solid = Items.solid(item, t, depth);
            yield new Draft(solid.bounds(), () -> solid);
          }
        };
      } catch (IllegalArgumentException | ArithmeticException x) {
        throw EntityProblem.broken(item + ": " + x.getMessage());
      }
    }

    private static Draft extruded(Entity item, Transform t) {
      Sweeps.Prism prism = Sweeps.prism(item, t);
      Box3 box = Box3.EMPTY;
      for (PolygonOutline outline : prism.base()) {
        for (Vec3 p : Skin.placed(outline, prism.place()).get(0)) {
          box = box.with(p).with(p.plus(prism.along()));
        }
      }
      return new Draft(box, () -> Items.guarded(item, prism::solid));
    }

    private static Draft faceSet(Entity item, Transform t) {
      List<Vec3> points = Curves.pointList(item.entity(0)).stream().map(t::apply).toList();
      return new Draft(Box3.of(points), () -> Items.solid(item, t, 0));
    }

    /** A difference lies where its first operand lies; other results are made at once. */
    private Draft clipped(Entity item, Transform t, int depth) {
      Entity first = Booleans.body(item);
      if (first == null) {
        Solid solid = Items.solid(item, t, depth);
        return new Draft(solid.bounds(), () -> solid);
      }
      return new Draft(draft(first, t, depth + 1).box(), () -> Items.solid(item, t, depth));
    }

    private Draft mapped(Entity item, Transform t, int depth) {
      Entity map = item.entity(0);
      Box3 local = maps.get(map.id());
      if (local == null) {
        local = Box3.EMPTY;
        for (Entity part : parts(map)) {
          local = local.union(draft(part, Transform.IDENTITY, depth + 1).box());
        }
        maps.put(map.id(), local);
      }
      return new Draft(moved(local, Items.mapping(item, t)), () -> Items.solid(item, t, depth));
    }

    private static List<Entity> parts(Entity map) {
      List<Entity> parts = new ArrayList<>();
      for (Entity part : map.entity(1).members(3)) {
        if (!Items.boundsNothing(part.keyword())) {
          parts.add(part);
        }
      }
      return parts;
    }

    private static Box3 moved(Box3 b, Transform t) {
      if (b.isEmpty() || !b.isBounded()) {
        return b;
      }
      Box3 box = Box3.EMPTY;
      for (int k = 0; k < 8; k++) {
        box = box.with(t.apply(new Vec3((k & 1) == 0 ? b.minX() : b.maxX(), (k & 2) == 0 ? b.minY() : b.maxY(),
            (k & 4) == 0 ? b.minZ() : b.maxZ())));
      }
      return box;
    }
  }
}
