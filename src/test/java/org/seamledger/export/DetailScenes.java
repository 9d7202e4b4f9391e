package org.seamledger.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.FixedLines;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.KindBook;
import org.seamledger.detail.KindedJunction;
import org.seamledger.detail.Kinds;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.element.ModelInfo;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.Quantities;
import org.seamledger.quantity.RoofLayout;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;
import org.seamledger.roof.SurfaceLimits;
import org.seamledger.sequence.JobSequence;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Surroundings;
import org.seamledger.takeoff.Takeoff;

/** A roof of one junction for a detail: a line of 5 m along X, faces beside it that rise or fall as the kind asks for. */
final class DetailScenes {

  static final String ID = "Jscene01";

  static final KindBook KINDS = KindBook.read(Rules.packaged());

  private DetailScenes() {
  }

  static Takeoff of(Detail detail, RoofSystem system) {
    return of(detail, system, "Wall <script>alert('1 & 2')</script>", "a \"model\" <b>.ifc");
  }

  static Takeoff of(Detail all, RoofSystem system, String name, String file) {
    Detail detail = all.askedBy(Map.of("backUpPlates", system.fasteners().backUpPlates()));
    String kind = kind(detail.id());
    List<RoofFace> faces = faces(kind, detail.id());
    double incline = List.of("hip", "valley", "rake", "sidewall", "skew-wall", "curb-side").contains(kind) ? 0.3 : 0;
    Junction junction = new Junction(ID, List.of(new Vec3(0, 0, 0), new Vec3(5, 0, 5 * incline)), faces.stream().map(RoofFace::id).toList(),
        List.of("0roof"), facts(kind));
    List<DetailedJunction> junctions = List
        .of(new DetailedJunction(new KindedJunction(junction, KINDS.kind(kind), new Explanation(List.of(kind), "", List.of())), detail));
    TreeMap<String, ElementLabel> elements = new TreeMap<>();
    elements.put("0roof", new ElementLabel("0roof", "IfcSlab", name, 0, ""));
    RoofLayout layout = RoofLayout.of(faces, system, Progress.NONE);
    return new Takeoff("1", "0", List.of(new ModelInfo(file, "00", "IFC4", "metre", "", 1)), Vec3.ZERO, Tolerance.DEFAULT,
        SurfaceLimits.DEFAULT, elements, faces, junctions, List.of(),
        Quantities.of(faces, junctions, List.of(), layout, system, new FixedLines(Rules.packaged()), Progress.NONE), List.of(),
        new TreeMap<>(),
        KINDS.all(), new TreeMap<>(),
        new TreeMap<>(), List.of(), List.of(), List.of(), DrainageTrace.NONE, JobSequence.NONE, Surroundings.NONE);
  }

  static String kind(String detail) {
    return detail.equals("none-level-face") ? "flat-edge"
        : detail.equals("step-joint") || detail.equals("end-lap") ? detail
        : Kinds.ALL.stream().filter(detail::startsWith).max((a, b) -> Integer.compare(a.length(), b.length())).orElseThrow();
  }

  private static Facts facts(String kind) {
    Facts.Builder facts = Facts.builder().word("against", kind.contains("wall") ? "wall" : "nothing");
    if (kind.startsWith("curb")) {
      facts.number("upstandM", 0.6).number("widthAcrossFallM", 0.9).word("neighbourClass", "IfcChimney");
    }
    return kind.equals("pipe") ? facts.number("diameterM", 0.11).build() : facts.build();
  }

  /** Rise of the faces across the line per unit, the one at +y first, and along it. */
  private static List<RoofFace> faces(String kind, String detail) {
    return switch (kind) {
      case "ridge" -> List.of(face("F1", 1, -0.5, 0), face("F2", -1, -0.35, 0));
      case "hip" -> List.of(face("F1", 1, -0.3, 0.3), face("F2", -1, -0.3, 0.3));
      case "valley" -> detail.contains("low") ? List.of(face("F1", 1, 0.2, 0.1), face("F2", -1, 0.2, 0.1))
          : List.of(face("F1", 1, 0.3, 0.3), face("F2", -1, 0.3, 0.3));
      case "level-valley" -> List.of(face("F1", 1, 0.25, 0), face("F2", -1, 0.4, 0));
      case "transition-convex" -> List.of(face("F1", 1, 0.3, 0), face("F2", -1, -0.8, 0));
      case "transition-concave" -> List.of(face("F1", 1, 0.9, 0), face("F2", -1, -0.3, 0));
      case "eave", "low-wall", "curb-upslope" -> List.of(face("F1", 1, detail.contains("low-slope") ? 0.1 : 0.4, 0));
      case "high-edge", "headwall", "curb-downslope" -> List.of(face("F1", 1, -0.4, 0));
      case "rake" -> List.of(face("F1", 1, detail.endsWith("low") ? 0.25 : detail.endsWith("high") ? -0.25 : 0, 0.3));
      case "skew-wall" -> List.of(face("F1", 1, detail.contains("low") ? 0.25 : -0.25, 0.3));
      case "sidewall", "curb-side" -> List.of(face("F1", 1, 0, 0.3));
      case "pipe", "step-joint", "end-lap" -> List.of(face("F1", 1, 0.4, 0));
      default -> List.of(face("F1", 1, 0, 0));
    };
  }

  private static RoofFace face(String id, int side, double across, double along) {
    Plane plane = Plane.through(Vec3.ZERO, new Vec3(-along, -side * across, 1));
    List<Vec2> ring = new ArrayList<>();
    for (double[] c : new double[][] {{0, 0}, {5, 0}, {5, 4.0 * side}, {0, 4.0 * side}}) {
      Vec3 p = new Vec3(c[0], c[1], plane.elevation(c[0], c[1]));
      ring.add(new Vec2(plane.u(p), plane.v(p)));
    }
    return new RoofFace(id, new Facet(plane, Region.polygon(ring)), List.of("0roof"));
  }
}
