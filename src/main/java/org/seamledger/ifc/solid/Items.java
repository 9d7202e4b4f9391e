package org.seamledger.ifc.solid;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.PolygonOutline;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Transform;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.placement.Placements;

/**
 * Representation items as solids. Each kind has its own class; this one sends an item there by its keyword.
 *
 * <p>Every function takes the item and the map from the item's coordinates (metres) to the building's, and applies the map to points
 * before any mesh is made, so that coordinates far from the origin lose nothing.
 */
public final class Items {

  /** Items nested deeper than this (mapped items, second operands) are taken for a circle. */
  static final int DEEPEST = 300;

  private Items() {
  }

  /**
   * The solid of one item.
   *
   * @throws EntityProblem if it is broken or not supported
   */
  static Solid solid(Entity item, Transform t, int depth) {
    if (depth > DEEPEST) {
      throw EntityProblem.broken(item + ": items are nested too deeply, or contain themselves");
    }
    return guarded(item, () -> dispatch(item, t, depth));
  }

  /** Geometry refuses what is no geometry; here that becomes a problem of the item. */
  static Solid guarded(Entity item, java.util.function.Supplier<Solid> making) {
    try {
      return making.get();
    } catch (IllegalArgumentException | ArithmeticException x) {
      throw EntityProblem.broken(item + ": " + x.getMessage());
    }
  }

  private static Solid dispatch(Entity item, Transform t, int depth) {
    return switch (item.keyword()) {
      case "IFCEXTRUDEDAREASOLID", "IFCEXTRUDEDAREASOLIDTAPERED" -> Sweeps.extruded(item, t);
      case "IFCREVOLVEDAREASOLID", "IFCREVOLVEDAREASOLIDTAPERED" -> Sweeps.revolved(item, t);
      case "IFCSWEPTDISKSOLID", "IFCSWEPTDISKSOLIDPOLYGONAL" -> Sweeps.disk(item, t);
      case "IFCFIXEDREFERENCESWEPTAREASOLID" -> Sweeps.fixedReference(item, t);
      case "IFCSURFACECURVESWEPTAREASOLID" -> Sweeps.onSurface(item, t);
      case "IFCFACETEDBREP", "IFCFACETEDBREPWITHVOIDS", "IFCADVANCEDBREP", "IFCADVANCEDBREPWITHVOIDS" -> Breps.brep(item, t);
      case "IFCSHELLBASEDSURFACEMODEL", "IFCFACEBASEDSURFACEMODEL" -> Breps.surfaceModel(item, t);
      case "IFCCLOSEDSHELL", "IFCOPENSHELL", "IFCCONNECTEDFACESET" -> Breps.shell(item, t);
      case "IFCPOLYGONALFACESET" -> FaceSets.polygonal(item, t);
      case "IFCTRIANGULATEDFACESET", "IFCTRIANGULATEDIRREGULARNETWORK" -> FaceSets.triangulated(item, t);
      case "IFCBLOCK", "IFCRECTANGULARPYRAMID", "IFCRIGHTCIRCULARCONE", "IFCRIGHTCIRCULARCYLINDER", "IFCSPHERE" ->
          Primitives.solid(item, t);
      case "IFCCSGSOLID" -> solid(item.entity(0), t, depth + 1);
      case "IFCBOOLEANRESULT", "IFCBOOLEANCLIPPINGRESULT" -> Booleans.result(item, t, depth);
      case "IFCHALFSPACESOLID", "IFCPOLYGONALBOUNDEDHALFSPACE", "IFCBOXEDHALFSPACE" ->
          throw EntityProblem.broken(item + ": a half-space has no shape of its own");
      case "IFCMAPPEDITEM" -> mapped(item, t, depth);
      default -> throw EntityProblem.unsupported(item + ": geometry of this kind is not supported");
    };
  }

  /** Items that are lines, points or text: they bound no body, and nothing is missing without them. */
  public static boolean boundsNothing(String keyword) {
    return switch (keyword) {
      case "IFCGEOMETRICSET", "IFCGEOMETRICCURVESET", "IFCBOUNDINGBOX", "IFCPOLYLINE", "IFCINDEXEDPOLYCURVE", "IFCTRIMMEDCURVE",
          "IFCCOMPOSITECURVE", "IFCLINE", "IFCCIRCLE", "IFCELLIPSE", "IFCCARTESIANPOINT", "IFCPOINT", "IFCTEXTLITERAL",
          "IFCTEXTLITERALWITHEXTENT", "IFCANNOTATIONFILLAREA", "IFCSTYLEDITEM", "IFCLIGHTSOURCE", "IFCBSPLINECURVEWITHKNOTS",
          "IFCCARTESIANPOINTLIST3D", "IFCEDGECURVE", "IFCEDGE", "IFCVERTEXPOINT" -> true;
      default -> false;
    };
  }

  /**
   * IfcMappedItem: the map's origin first places the mapped items ("The MappingOrigin defines the coordinate system in which the
   * MappedRepresentation is defined", IfcRepresentationMap), then the target operator acts on them. Items that can't be used are a problem
   * of the whole, as a part of a shape would be silently missing otherwise.
   */
  private static Solid mapped(Entity item, Transform t, int depth) {
    Transform inner = mapping(item, t);
    List<Solid> parts = new ArrayList<>();
    for (Entity part : item.entity(0).entity(1).members(3)) {
      if (!boundsNothing(part.keyword())) {
        parts.add(solid(part, inner, depth + 1));
      }
    }
    if (parts.isEmpty()) {
      throw EntityProblem.broken(item + ": the mapped representation holds no body");
    }
    return union(parts);
  }

  /** From the coordinates of a mapped item's representation to the building's. */
  static Transform mapping(Entity item, Transform t) {
    return t.after(Placements.operator(item.entity(1))).after(Placements.axes(item.entity(0).entity(0)));
  }

  static Solid union(List<Solid> parts) {
    return parts.size() == 1 ? parts.get(0) : new Solid.Union(parts);
  }

  /** One mesh an outline; outlines of a composite profile may overlap, so their bodies are a union. */
  static Solid each(List<PolygonOutline> outlines, java.util.function.Function<PolygonOutline, Mesh> body) {
    List<Solid> parts = new ArrayList<>();
    for (PolygonOutline outline : outlines) {
      parts.add(body.apply(outline));
    }
    return union(parts);
  }
}
