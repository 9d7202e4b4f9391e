package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.formula.BeadShape;
import org.seamledger.quantity.formula.Slump;
import org.seamledger.quantity.formula.Tape;
import org.seamledger.quantity.layout.Panel;
import org.seamledger.quantity.physics.Air;
import org.seamledger.quantity.physics.Cure;
import org.seamledger.quantity.physics.Galvanic;
import org.seamledger.quantity.physics.Head;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.quantity.physics.Rain;
import org.seamledger.quantity.physics.Thermal;
import org.seamledger.quantity.system.CureKind;
import org.seamledger.quantity.system.FixedAt;
import org.seamledger.roof.RoofFace;

/** The physics of a roof and its system, each figure with its assumptions: estimates, no design. */
public final class Estimates {

  /** An unsealed lap of sheets lies about this far apart. */
  private static final double TIGHT_LAP = 0.00025;
  /** Angle at which water meets paint, degrees. */
  private static final double ON_PAINT = 70;
  /** Slopes are told apart to a millionth of a degree, lengths of panels to a tenth of a millimetre. */
  private static final double SLOPES = 1e6;
  private static final double LENGTHS = 1e4;

  private final RoofSystem system;
  private final List<RoofFace> faces;
  private final RoofLayout layout;
  private final LengthText text;
  private final List<Estimate> all = new ArrayList<>();

  private Estimates(List<RoofFace> faces, Quantities quantities) {
    this.system = quantities.system();
    this.faces = faces;
    this.layout = quantities.layout();
    this.text = LengthText.of(system);
  }

  /** In a fixed order. What needs a sloping face is left out where there is none. */
  public static List<Estimate> of(List<RoofFace> faces, Quantities quantities) {
    Estimates e = new Estimates(faces, quantities);
    e.movement();
    e.water();
    e.wind();
    e.weather();
    e.sealant();
    e.metals();
    return List.copyOf(e.all);
  }

  private void add(String topic, String name, String value, String basis) {
    all.add(new Estimate(topic, name, value, basis));
  }

  private double celsius(org.seamledger.measure.Measure reading) {
    return reading.in(Unit.CELSIUS);
  }

  // ---- movement

  private void movement() {
    Metal metal = system.panel().metal();
    double range = system.site().highestMetal().value() - system.site().lowestMetal().value();
    String heat = "metal from " + system.site().lowestMetal() + " to " + system.site().highestMetal() + ", α = "
        + MeasureFormat.plain(metal.expansionPerK() * 1e6, 1) + "·10⁻⁶/K for " + metal.word();
    double longest = layout.byFace().values().stream().flatMap(l -> l.panels().stream()).mapToDouble(Panel::lengthM).max().orElse(0);
    if (longest > 0) {
      double all = Thermal.movementM(metal, longest, range);
      boolean middle = system.panel().fixedAt() == FixedAt.MIDDLE;
      add("movement", "movement at the free end of the longest panel, " + text.run(longest), text.part(middle ? all / 2 : all),
          "ΔL = α·L·ΔT" + (middle ? ", half of it to each side of the middle" : "") + "; " + heat + "; room at the end: "
              + system.panel().movementGap());
      double gap = Thermal.gapAtInstallM(system.panel().movementGap().value(), metal, middle ? longest / 2 : longest,
          celsius(system.site().installMetal()), celsius(system.site().lowestMetal()));
      add("movement", "gap to leave at its free end when fixed at " + system.site().installMetal(), text.least(Math.max(0, gap)),
          "widest gap less what opens until " + system.site().lowestMetal());
    }
    add("movement", "stress in a panel pinned at both ends", MeasureFormat.fixed(Thermal.lockedStressPa(metal, range) / 1e6, 0) + " MPa",
        "E·α·ΔT, whatever the length; " + heat);
    double piece = Thermal.movementM(system.flashing().metal(), system.flashing().length().value(), range);
    double capability = system.sealant().movementCapability().value();
    add("movement", "sealant in a moving lap between lengths of " + system.flashing().length(),
        text.least(Thermal.lapJointM(piece, capability)) + " thick",
        "W = ΔL / √((1+S)² − 1), ΔL = " + text.part(piece) + ", S = " + system.sealant().movementCapability() + "; derived");
    add("movement", "the same as a butt joint", text.least(Thermal.buttJointM(piece, capability)) + " wide",
        "W = ΔL / S (form used in joint-width guides, from memory)");
  }

  // ---- water and wind

  /** Of faces that slope alike, but for rounding, that with the longest panel. */
  private RoofFace flattest() {
    return faces.stream().filter(f -> !layout.face(f.id()).panels().isEmpty())
        .min(Comparator.<RoofFace>comparingDouble(f -> Math.rint(f.slopeDegrees() * SLOPES))
            .thenComparingDouble(f -> -Math.rint(longestM(f) * LENGTHS)))
        .orElse(null);
  }

  private double longestM(RoofFace face) {
    return layout.face(face.id()).panels().stream().mapToDouble(Panel::lengthM).max().orElse(0);
  }

  private void water() {
    RoofFace face = flattest();
    double rain = system.site().rainfall().value();
    if (face == null || rain == 0) {
      return;
    }
    double run = longestM(face);
    double slope = face.slopeDegrees();
    double q = Rain.flow(system.site().runoff().value(), rain, run * Math.cos(Math.toRadians(slope)));
    String inputs =
        system.site().rainfall() + ", longest pan of " + face.id() + " " + text.run(run) + " at " + MeasureFormat.formatSlope(slope)
            + ", n = " + system.manningN();
    add("water", "flow at the end of the longest pan of the flattest face",
        MeasureFormat.fixed(q * system.panel().coverage().value() * 60_000, 2) + " l/min ("
            + MeasureFormat.fixed(q * system.panel().coverage().value() / 6.30902e-5, 2) + " gpm)",
        "rational method Q = C·i·A; " + inputs);
    double depth = Rain.filmDepthM(q, system.manningN(), slope);
    add("water", "depth of rain water there",
        MeasureFormat.fixed(depth * 1000, 2) + " mm (" + MeasureFormat.fixed(depth / 0.0254, 3) + " in)",
        "Manning's equation for even flow over a wide pan; seams are " + system.panel().seamHeight()
            + " high: rain alone doesn't reach over them, drifts, ice and blocked outlets do");
    add("water", "time until the whole pan contributes",
        MeasureFormat.fixed(Rain.equilibriumSeconds(run, system.manningN(), slope, rain * system.site().runoff().value()), 0) + " s",
        "kinematic wave; a design rainfall of minutes, not of an hour, suits a roof");
    double rise = Head.capillaryRiseM(TIGHT_LAP, 0);
    add("water", "how far a tight unsealed lap draws water up that face", text.part(Head.runUpM(rise, slope)),
        "capillary rise 2γcosα/(ρgd) of " + MeasureFormat.fixed(rise * 1000, 1) + " mm in a gap of 0.25 mm on clean metal, "
            + MeasureFormat.fixed(Head.capillaryRiseM(TIGHT_LAP, ON_PAINT) * 1000, 1) + " mm on paint (70°); a break of 6 mm stops it");
  }

  private void wind() {
    double head = Head.headM(Head.stagnationPa(system.site().wind().value()));
    add("wind", "head of water that the wind holds up", text.part(head), "½ρV² at " + system.site().wind()
        + " where it is stopped; flashings stand up " + system.walls().upstand());
    RoofFace face = flattest();
    if (face != null) {
      add("wind", "how far it drives water up the flattest face", text.run(Head.runUpM(head, face.slopeDegrees())),
          "head / sin θ at " + MeasureFormat.formatSlope(face.slopeDegrees()) + ": no lap replaces a seal or an upstand at a low slope");
    }
  }

  // ---- weather and sealants

  private void weather() {
    double air = celsius(system.site().installAir());
    double dew = Air.dewPointC(air, system.site().humidity().value());
    if (Double.isFinite(dew)) {
      add("weather", "dew point when sealing", MeasureFormat.fixed(dew, 1) + " °C (" + MeasureFormat.fixed(dew * 1.8 + 32, 1) + " °F)",
          "Magnus formula, WMO constants; air " + system.site().installAir() + ", " + system.site().humidity() + "; metal "
              + system.site().installMetal() + ", margin asked for " + system.sealant().dewPointMargin());
    }
    double height = system.site().elevation().value();
    add("weather", "mean air at the site's elevation", MeasureFormat.fixed(Air.temperatureC(height), 1) + " °C, "
        + MeasureFormat.fixed(Air.pressurePa(height) / 1000, 1) + " kPa",
        "US Standard Atmosphere 1976 at " + system.site().elevation()
            + "; pressure itself does not change the cure, colder and drier air does");
  }

  private void sealant() {
    double size = system.bead().size().value();
    double depth = system.bead().shape() == BeadShape.ROUND ? size : size / Math.sqrt(2);
    if (system.sealant().cure() == CureKind.MOISTURE && system.site().humidity().value() > 0) {
      double seconds = Cure.seconds(depth, system.sealant().firstDayDepth().value(), celsius(system.site().installAir()),
          system.site().humidity().value());
      add("sealant", "cure of a concealed bead of " + system.bead().size(), MeasureFormat.fixed(seconds / 86400, 1) + " days",
          "d = k√t from one side, k from the data sheet: " + system.sealant().firstDayDepth()
              + " in the first day at 23 °C and 50 %; time × "
              + MeasureFormat.fixed(Cure.timeFactor(celsius(system.site().installAir()), system.site().humidity().value()), 2) + " for air "
              + system.site().installAir() + ", " + system.site().humidity() + "; an estimate, tapes don't cure");
    }
    add("sealant", "yield stress that a vertical bead needs to stay",
        MeasureFormat.fixed(Slump.neededYieldStressPa(system.sealant().density().value(), size, 90), 0) + " Pa",
        "ρ·g·b, bead " + system.bead().size() + ", " + system.sealant().density() + "; data sheet: "
            + (system.sealant().yieldStress().value() > 0 ? system.sealant().yieldStress().text() : "not stated"));
    Tape tape = new Tape(system.tape().width().value(), system.tape().thickness().value());
    double flange = system.closure().fasteningFlange().value();
    add("sealant", "compression at which the tape fills the fastening flange",
        MeasureFormat.plain(100 * tape.compressionThatFills(flange), 1) + " %",
        "t·b stays: " + system.tape().width() + " × " + system.tape().thickness() + " under " + system.closure().fasteningFlange()
            + "; planned "
            + system.tape().compression() + " gives " + text.part(tape.compressedWidthM(system.tape().compression().value()))
            + "; sizes are common practice");
  }

  private void metals() {
    Metal panel = system.panel().metal();
    boolean marine = system.site().marine();
    String limit = "anodic index, limit " + (marine ? Galvanic.MARINE_LIMIT_V : Galvanic.OUTDOOR_LIMIT_V) + " V "
        + (marine ? "near the sea" : "outdoors") + " (from memory, check the standard); the small part shall be the nobler (MIL-STD-889B)";
    add("metals", system.fasteners().metal().word() + " fasteners in " + panel.word(),
        Galvanic.fastener(system.fasteners().metal(), panel, marine).word() + ", "
            + MeasureFormat.fixed(Galvanic.differenceV(system.fasteners().metal(), panel), 2) + " V apart",
        limit);
    add("metals", system.flashing().metal().word() + " flashings on " + panel.word(),
        Galvanic.sheets(system.flashing().metal(), panel, marine).word() + ", "
            + MeasureFormat.fixed(Galvanic.differenceV(system.flashing().metal(), panel), 2) + " V apart",
        limit);
  }
}
