package org.seamledger.takeoff;

import java.util.List;
import java.util.TreeMap;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.KindedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/** A small takeoff written by hand: the ridge, one eave and one rake of a boat house, 10 m long, 6:12 over a run of 4 m. */
public final class Takeoffs {

  public static final Vec3 FAR = new Vec3(450_000, 5_100_000, 12.5);

  private Takeoffs() {
  }

  public static Takeoff boatHouse() {
    return boatHouse("Roof of the boat house");
  }

  /** The same with another name for the roof. */
  public static Takeoff boatHouse(String roofName) {
    TreeMap<String, ElementLabel> elements = new TreeMap<>();
    elements.put("0roof", new ElementLabel("0roof", "IfcSlab", roofName, 0));
    return new Takeoff("1.2.3", "abc123", List.of(new ModelInfo("boat-house.ifc", "00ff", "IFC4", "millimetre", "Pencil 1", 1234)), FAR,
        Tolerance.DEFAULT, RoofSystem.DEFAULT, elements, List.of(face("F1", -1), face("F2", 1)), junctions(), findings());
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

  private static List<KindedJunction> junctions() {
    Junction ridge = new Junction("ridge1", List.of(new Vec3(0, 0, 2), new Vec3(10, 0, 2)), List.of("F1", "F2"), List.of("0roof"),
        Facts.builder().count("faceCount", 2).number("foldDegrees", 53.13010235).number("inclinationDegrees", 0).build());
    Junction eave = new Junction("eave1", List.of(new Vec3(0, -4, 0), new Vec3(10, -4, 0)), List.of("F1"), List.of("0roof"),
        Facts.builder().count("faceCount", 1).word("against", "nothing").build());
    Junction rake = new Junction("rake1", List.of(new Vec3(0, -4, 0), new Vec3(0, 0, 2)), List.of("F1"), List.of("0roof", "0wall"),
        Facts.builder().count("faceCount", 1).flag("oblique", true).number("obliquityDegrees", 12.25).build());
    return List.of(kinded(ridge, "ridge"), kinded(eave, "eave"), new KindedJunction(rake, "unclassified",
        new Explanation(List.of(), "rake", List.of("obliquityDegrees is 12.25 and must be at most 5"))));
  }

  private static KindedJunction kinded(Junction junction, String kind) {
    return new KindedJunction(junction, kind, new Explanation(List.of(kind), "", List.of()));
  }

  private static List<Finding> findings() {
    return List.of(Finding.of(Code.BAD_GLOBAL_ID, "0roof is no valid GlobalId", "0roof"),
        Finding.of(Code.UNCLASSIFIED, "no shape claims this line", "0roof").at("rake1"));
  }
}
