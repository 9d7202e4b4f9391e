package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.step.Value;

/** Thin bars along a line, so that a viewer shows where a part of a junction is: not the shape that is folded. */
final class Bodies {

  /** Shorter stretches (metres) get no bar. */
  private static final double SHORTEST = 1e-3;
  private static final double UPRIGHT = 0.999;

  private final InstanceDraft draft;
  private final double metres;

  /** @param metres one length unit of the model */
  Bodies(InstanceDraft draft, double metres) {
    this.draft = draft;
    this.metres = metres;
  }

  /**
   * How a bar looks.
   *
   * @param widthM across the line, level
   * @param heightM
   * @param liftM its middle's distance from the line, away from the roof
   * @param colour red, green and blue from 0 to 1
   */
  record Bar(double widthM, double heightM, double liftM, Colour colour) {
  }

  record Colour(String name, double red, double green, double blue) {
  }

  /** A place whose axes are the model's. */
  Value place(Vec3 at) {
    return draft.add("IfcAxis2Placement3D", "Location", point(at));
  }

  Value point(Vec3 p) {
    return draft.add("IfcCartesianPoint", "Coordinates", InstanceDraft.numbers(p.x() / metres, p.y() / metres, p.z() / metres));
  }

  private Value direction(Vec3 d) {
    return draft.shared("IfcDirection", "DirectionRatios", InstanceDraft.numbers(d.x(), d.y(), d.z()));
  }

  /** Bars along a path (metres), one a stretch; none where the path is a point. */
  List<Value> along(List<Vec3> path, Bar bar) {
    List<Value> solids = new ArrayList<>();
    for (int i = 1; i < path.size(); i++) {
      if (path.get(i).distance(path.get(i - 1)) > SHORTEST) {
        solids.add(bar(path.get(i - 1), path.get(i), bar));
      }
    }
    return solids;
  }

  private Value bar(Vec3 from, Vec3 to, Bar bar) {
    Vec3 along = to.minus(from).unit();
    Vec3 up = Math.abs(along.z()) > UPRIGHT ? new Vec3(1, 0, 0) : new Vec3(0, 0, 1);
    Vec3 side = along.cross(up).unit();
    Vec3 away = side.cross(along).unit();
    Value profile = draft.shared("IfcRectangleProfileDef", "ProfileType", InstanceDraft.word("AREA"),
        "Position",
        draft.shared("IfcAxis2Placement2D", "Location", draft.shared("IfcCartesianPoint", "Coordinates", InstanceDraft.numbers(0, 0))),
        "XDim", bar.widthM() / metres, "YDim", bar.heightM() / metres);
    Value place = draft.add("IfcAxis2Placement3D", "Location", point(from.plus(away.times(bar.liftM()))), "Axis", direction(along),
        "RefDirection", direction(side));
    Value solid = draft.add("IfcExtrudedAreaSolid", "SweptArea", profile, "Position", place, "ExtrudedDirection",
        direction(new Vec3(0, 0, 1)), "Depth", from.distance(to) / metres);
    draft.add("IfcStyledItem", "Item", solid, "Styles", InstanceDraft.list(List.of(style(bar.colour()))));
    return solid;
  }

  private Value style(Colour colour) {
    Value rgb = draft.shared("IfcColourRgb", "Red", colour.red(), "Green", colour.green(), "Blue", colour.blue());
    Value shading = draft.shared("IfcSurfaceStyleRendering", "SurfaceColour", rgb, "Transparency", 0.0, "ReflectanceMethod",
        InstanceDraft.word("NOTDEFINED"));
    Value style = draft.shared("IfcSurfaceStyle", "Name", colour.name(), "Side", InstanceDraft.word("BOTH"), "Styles",
        InstanceDraft.list(List.of(shading)));
    // IFC2X3 wants styles assigned; later schemas take them as they are.
    return draft.attributeType("IfcStyledItem", "Styles").equals("IFCPRESENTATIONSTYLEASSIGNMENT")
        ? draft.shared("IfcPresentationStyleAssignment", "Styles", InstanceDraft.list(List.of(style)))
        : style;
  }
}
