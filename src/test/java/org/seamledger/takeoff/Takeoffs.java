package org.seamledger.takeoff;

import java.util.List;
import java.util.TreeMap;
import org.seamledger.detail.Advice;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.FixedLines;
import org.seamledger.detail.HoldPoint;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindBook;
import org.seamledger.detail.KindedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.On;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Severity;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
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
import org.seamledger.source.ModelSource;

/** A small takeoff written by hand: the ridge, one eave and one rake of a boat house, 10 m long, 6:12 over a run of 4 m. */
public final class Takeoffs {

  private static final Vec3 FAR = new Vec3(450_000, 5_100_000, 12.5);

  private static final Detail RIDGE = new Detail("ridge-by-hand", "Ridge with a cap",
      List.of(new MetalPart("ridge cap", On.LINE, Run.CONTINUOUS, 0.3)),
      List.of(new Seal(Seal.Form.TAPE, Seal.Role.PRIMARY, Seal.Exposure.CONCEALED, "under the cap", 2, On.EACH_FACE, Run.CONTINUOUS, 0, "",
          "")),
      List.of(new Fastening("cap edge", 1, On.EACH_FACE, Run.CONTINUOUS, "fasteners.spacing", true)),
      List.of(new HoldPoint("the cap is set", "tape without a gap")), "the cap laps over both faces", true, "common practice");

  private static final KindBook KINDS = KindBook.read(Rules.packaged());

  private Takeoffs() {
  }

  public static Takeoff boatHouse() {
    return boatHouse("Roof of the boat house");
  }

  /** The same with another name for the roof. */
  public static Takeoff boatHouse(String roofName) {
    TreeMap<String, ElementLabel> elements = new TreeMap<>();
    elements.put("0roof", new ElementLabel("0roof", "IfcSlab", roofName, 0, "Loft"));
    List<RoofFace> faces = List.of(face("F1", -1), face("F2", 1));
    RoofLayout layout = RoofLayout.of(faces, RoofSystem.DEFAULT, Progress.NONE);
    TreeMap<String, Advice> advice = new TreeMap<>();
    advice.put("design/by-hand", new Advice("water may stand", "look at it"));
    return new Takeoff("1.2.3", "abc123", List.of(new ModelInfo("boat-house.ifc", "00ff", "IFC4", "millimetre", "Pencil 1", 1234)), FAR,
        Tolerance.DEFAULT, SurfaceLimits.DEFAULT, elements, faces, junctions(), List.of(),
        Quantities.of(faces, junctions(), List.of(), layout, RoofSystem.DEFAULT, new FixedLines(Rules.packaged()), Progress.NONE),
        findings(), advice,
        KINDS.all(), new TreeMap<>(),
        new TreeMap<>(), List.of(), List.of(), List.of(), DrainageTrace.NONE, JobSequence.NONE, Surroundings.NONE);
  }

  /** The same with findings accepted. */
  public static Takeoff boatHouse(String roofName, List<AcceptedFinding> accepted) {
    return boatHouse(roofName).withAccepted(accepted);
  }

  /** Falls towards -Y or +Y from a ridge along X at y = 0, z = 2. */
  private static RoofFace face(String id, int side) {
    Plane plane = Plane.through(new Vec3(0, 0, 2), new Vec3(0, side * 0.5, 1));
    Vec3 corner = new Vec3(0, side * 4, 0);
    double u = plane.u(corner);
    double v = plane.v(corner);
    double along = plane.u(new Vec3(10, side * 4, 0)) - u;
    Region area = Region.rectangle(Math.min(u, u + along), v, Math.max(u, u + along), v + Math.sqrt(20));
    return new RoofFace(id, new Facet(plane, area), List.of("0roof"));
  }

  private static List<DetailedJunction> junctions() {
    Junction ridge = new Junction("ridge1", List.of(new Vec3(0, 0, 2), new Vec3(10, 0, 2)), List.of("F1", "F2"), List.of("0roof"),
        Facts.builder().count("faceCount", 2).number("foldDegrees", 53.13010235).number("inclinationDegrees", 0).build());
    Junction eave = new Junction("eave1", List.of(new Vec3(0, -4, 0), new Vec3(10, -4, 0)), List.of("F1"), List.of("0roof"),
        Facts.builder().count("faceCount", 1).word("against", "nothing").build());
    Junction rake = new Junction("rake1", List.of(new Vec3(0, -4, 0), new Vec3(0, 0, 2)), List.of("F1"), List.of("0roof", "0wall"),
        Facts.builder().count("faceCount", 1).flag("oblique", true).number("obliquityDegrees", 12.25).build());
    Explanation none = new Explanation(List.of(), "rake", List.of("obliquityDegrees is 12.25 and must be at most 5"));
    return List.of(new DetailedJunction(kinded(ridge, "ridge"), RIDGE), new DetailedJunction(kinded(eave, "eave"), Detail.NONE),
        new DetailedJunction(new KindedJunction(rake, Kind.UNCLASSIFIED, none), Detail.NONE));
  }

  private static KindedJunction kinded(Junction junction, String kind) {
    return new KindedJunction(junction, KINDS.kind(kind), new Explanation(List.of(kind), "", List.of()));
  }

  private static List<Finding> findings() {
    return List.of(Finding.of(Code.BAD_GLOBAL_ID, "0roof is no valid GlobalId", "0roof"),
        Finding.of(Code.UNCLASSIFIED, "no shape claims this line", "0roof").at("rake1"),
        new Finding("design/by-hand", Severity.INFO, "the eave is level", "eave1", List.of()));
  }

  /** Inputs with models moved, named as they name themselves. */
  public static Inputs placed(Inputs inputs, List<String> words) {
    return inputs.withPlaces(words, inputs.models().stream().map(ModelSource::name).toList());
  }
}
