package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.junction.Junction;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.formula.Slump;
import org.seamledger.quantity.formula.Tape;
import org.seamledger.quantity.layout.CrossLine;
import org.seamledger.quantity.layout.FaceLayout;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.quantity.physics.Air;
import org.seamledger.quantity.physics.Galvanic;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.quantity.physics.Thermal;
import org.seamledger.roof.RoofFace;

/**
 * What the review of the design needs to know of the roof system, its faces and its junctions: the facts that
 * {@code org.seamledger.detail} lists. A fact that can't be had is left out. All physics here is an estimate from the system's figures.
 */
public final class DesignFacts {

  /** Greatest distance between expansion joints of flashings, metres: UFGS 07 60 00, 40 ft of copper or stainless, 32 ft of aluminium. */
  private static final double JOINTS = 12.192;
  private static final double ALUMINIUM_JOINTS = 9.7536;

  /** Ids of what covers an upturned flashing from above. */
  private static final Set<String> COVERS = Set.of("counterflashing", "receiver-bar");

  private final List<DetailedJunction> junctions;
  private final Map<String, List<DetailedJunction>> joints = new HashMap<>();
  private final Quantities quantities;
  private final RoofSystem system;
  private final Penetrations penetrations;
  private final WaterFacts water;
  private final BelowRoof below;
  private final WaterMetals metals;

  /** Facts of a roof whose junctions, joints within faces, quantities and ways of the water these are, and what lies below it. */
  public DesignFacts(List<DetailedJunction> junctions, List<DetailedJunction> joints, Quantities quantities, DrainageTrace drainage,
      BelowRoof below) {
    this.below = below;
    this.junctions = List.copyOf(junctions);
    for (DetailedJunction j : joints) {
      j.junction().junction().faces().stream().distinct().forEach(f -> this.joints.computeIfAbsent(f, k -> new ArrayList<>()).add(j));
    }
    this.quantities = quantities;
    this.system = quantities.system();
    this.penetrations = new Penetrations(junctions);
    this.water = new WaterFacts(junctions, quantities.layout(), system, drainage);
    this.metals = new WaterMetals(drainage, below, system.panel().metal());
  }

  // ---- the system

  /** Facts of the roof system as a whole, by name; lengths in metres, shares of one, temperatures in °C, angles in degrees. */
  public SortedMap<String, Object> system() {
    SortedMap<String, Object> f = new TreeMap<>(DetailFacts.of(system));
    metals(f);
    tapeAndClosures(f);
    sealant(f);
    f.put("movementGapM", system.panel().movementGap().value());
    f.put("lockedStressMPa", Thermal.lockedStressPa(system.panel().metal(), range()) / 1e6);
    f.put("lowestSlopeDegrees", system.limits().lowestSlope().degrees());
    f.put("flashingClearanceM", system.pipes().clearance().value());
    f.put("eaveM", junctions.stream().filter(j -> j.junction().type().water() == Kind.Water.OVER)
        .mapToDouble(j -> j.junction().junction().lengthM()).sum());
    f.put("marine", system.site().marine());
    f.put("iceBarrier", system.site().iceBarrier());
    if (system.site().iceBarrier()) {
      IceZone ice = IceZone.of(quantities.layout(), junctions, below);
      f.put("iceZoneM2", ice.areaM2());
      f.put("iceUnmeasuredM", ice.unmeasuredM());
    }
    f.put("lowestMetalC", system.site().lowestMetal().in(Unit.CELSIUS));
    f.put("jointSpacingM", system.flashing().metal() == Metal.ALUMINIUM ? ALUMINIUM_JOINTS : JOINTS);
    f.put("freeEdgeM", junctions.stream().filter(j -> j.junction().type().family() == Kind.Family.EDGE)
        .mapToDouble(j -> j.junction().junction().lengthM()).sum());
    return f;
  }

  private double range() {
    return system.site().highestMetal().value() - system.site().lowestMetal().value();
  }

  private void metals(SortedMap<String, Object> f) {
    boolean marine = system.site().marine();
    f.put("panelMetal", system.panel().metal().word());
    f.put("flashingMetal", system.flashing().metal().word());
    f.put("fastenerMetal", system.fasteners().metal().word());
    f.put("panelThicknessM", system.panel().thickness().value());
    f.put("fastenerContact", Galvanic.fastener(system.fasteners().metal(), system.panel().metal(), marine).word());
    f.put("flashingContact", Galvanic.sheets(system.flashing().metal(), system.panel().metal(), marine).word());
  }

  private void tapeAndClosures(SortedMap<String, Object> f) {
    Tape tape = new Tape(system.tape().width().value(), system.tape().thickness().value());
    double compression = system.tape().compression().value();
    double closure = system.closure().height().value();
    f.put("tapeWidthM", system.tape().width().value());
    f.put("tapeSpreadM", tape.compressedWidthM(compression));
    f.put("lipM", system.closure().fasteningFlange().value());
    f.put("closureHeightM", closure);
    f.put("seamHeightM", system.panel().seamHeight().value());
    f.put("closureProudM", tape.stackM(closure, compression) - system.panel().seamHeight().value());
  }

  private void sealant(SortedMap<String, Object> f) {
    double air = system.site().installAir().in(Unit.CELSIUS);
    double dew = Air.dewPointC(air, system.site().humidity().value());
    f.put("acidCuring", system.sealant().acidCuring());
    f.put("installAirC", air);
    f.put("sealantLowestC", system.sealant().lowest().in(Unit.CELSIUS));
    f.put("sealantHighestC", system.sealant().highest().in(Unit.CELSIUS));
    if (Double.isFinite(dew)) {
      f.put("metalAboveDewPointK", system.site().installMetal().in(Unit.CELSIUS) - dew);
    }
    f.put("dewPointMarginK", system.sealant().dewPointMargin().value());
    f.put("slumpStressPa", Slump.neededYieldStressPa(system.sealant().density().value(), system.bead().size().value(), 90));
    f.put("yieldStressPa", system.sealant().yieldStress().value());
  }

  // ---- faces

  /** The longest panel and how much its free end moves: all of it, or half where it is fixed in the middle. */
  public SortedMap<String, Object> face(RoofFace face) {
    SortedMap<String, Object> f = new TreeMap<>();
    f.put("faceMetal", metals.of(face.id()).word());
    f.put("copperAbove", metals.copperComes(face.id()));
    FaceLayout laid = quantities.layout().face(face.id());
    double longest = laid.panels().stream().mapToDouble(Panel::lengthM).max().orElse(0);
    if (longest > 0) {
      double run = Math.max(longest, laid.crossLines().stream().mapToDouble(CrossLine::runM).max().orElse(0));
      f.put("panelLengthM", laid.panels().stream().flatMap(p -> p.piecesM().stream()).mapToDouble(d -> d).max().orElse(longest));
      f.put("movementM", PanelJoints.movementM(longest, system));
      f.put("panelRunM", run);
      f.put("panelRunMovementM", PanelJoints.movementM(run, system));
      f.put("stepJoints", joints(face, Kind.Section.STEP));
      f.put("endLaps", joints(face, Kind.Section.LAP));
    }
    return f;
  }

  private int joints(RoofFace face, Kind.Section section) {
    return (int) joints.getOrDefault(face.id(), List.of()).stream().filter(j -> j.junction().type().section() == section).count();
  }

  // ---- junctions

  /** Facts of a junction with its detail, by name; lengths in metres, angles in degrees. */
  public SortedMap<String, Object> junction(DetailedJunction detailed) {
    Junction line = detailed.junction().junction();
    Kind kind = detailed.junction().type();
    SortedMap<String, Object> f = new TreeMap<>();
    if (kind.family() == Kind.Family.ROUND && !line.faces().isEmpty()) {
      f.put("onSeam", quantities.layout().round(detailed.junction()).onSeam());
    }
    tape(quantities.byJunction().get(line.id()), f);
    if (penetrations.leading().contains(line.id())) {
      f.put("leadingSide", true);
    }
    put(f, "toValleyM", penetrations.toValley().get(line.id()));
    put(f, "toRidgeM", penetrations.toRidge().get(line.id()));
    put(f, "toWallM", penetrations.toWall().get(line.id()));
    f.put("lineMovementM", Thermal.movementM(system.flashing().metal(), line.lengthM(), range()));
    put(f, "toPenetrationM", penetrations.toOther().get(line.id()));
    if (kind.family() == Kind.Family.PENETRATION) {
      f.put("counterflashed", detailed.detail().metal().stream().anyMatch(m -> COVERS.contains(m.id())));
    }
    elements(detailed).forEach((name, ids) -> f.put(name, ids.size()));
    water.add(detailed, f);
    return f;
  }

  /** Elements below a junction, by the fact that counts them: whoever reads of it wants to find them. */
  public SortedMap<String, List<String>> elements(DetailedJunction detailed) {
    String id = detailed.junction().junction().id();
    SortedMap<String, List<String>> elements = new TreeMap<>();
    elements.put("entryCount", below.doors().getOrDefault(id, List.of()));
    elements.put("roomCount", below.rooms().getOrDefault(id, List.of()));
    elements.values().removeIf(List::isEmpty);
    return elements;
  }

  private static void tape(JunctionQuantities counted, SortedMap<String, Object> f) {
    if (counted != null && counted.fasteners().stream().anyMatch(r -> r.throughTape() && r.count() > 0)) {
      f.put("tapeSpacingM",
          counted.fasteners().stream().filter(FastenerRow::throughTape).mapToDouble(FastenerRow::spacingM).max().orElse(0));
      f.put("tapeCoverageShare", counted.fasteners().stream().filter(FastenerRow::throughTape).mapToDouble(FastenerRow::coverage).min()
          .orElse(1));
    }
  }

  private static void put(SortedMap<String, Object> f, String name, Double value) {
    if (value != null && Double.isFinite(value)) {
      f.put(name, value);
    }
  }
}
