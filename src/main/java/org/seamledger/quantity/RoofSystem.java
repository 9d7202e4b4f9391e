package org.seamledger.quantity;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.seamledger.measure.Dimension;
import org.seamledger.measure.Fraction;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.formula.BeadShape;
import org.seamledger.quantity.layout.Start;
import org.seamledger.quantity.physics.Metal;

/**
 * The roof system in force: panel, tape, closures, fasteners, sealants, flashings, limits, waste and site. Every value keeps the text
 * with the unit that it was written in. Read from one JSON file; what the file leaves out has its default.
 *
 * <p>Three figures are common practice without a public source, and therefore parameters: a fastener's reach in tape, the tape's size
 * under a lip, a closure as high as the seam.
 *
 * @param name for people
 */
public record RoofSystem(String name, Panel panel, Layout layout, Tape tape, Closure closure, Fasteners fasteners, Bead bead,
    Sealant sealant, Flashing flashing, Walls walls, Ridge ridge, Valley valley, Curbs curbs, Pipes pipes, Limits limits, Waste waste,
    Site site) {

  /**
   * @param coverage distance from seam to seam
   * @param seamHeight from the pan to the top of the seam
   * @param seamThickness taken off each closure between two seams
   * @param thickness of the sheet
   * @param fixedAt the one line where a panel can't move
   * @param movementGap room for movement at its free end
   * @param minimumPiece shorter pieces are slivers
   */
  public record Panel(@Range(min = "3 in", max = "48 in") Measure coverage, @Range(min = "1/2 in", max = "6 in") Measure seamHeight,
      SeamKind seamKind, @Range(min = "0 in", max = "2 in") Measure seamThickness, Metal metal,
      @Range(min = "0.1 mm", max = "6 mm") Measure thickness, FixedAt fixedAt, @Range(min = "0 in", max = "4 in") Measure movementGap,
      @Range(min = "0 in", max = "24 in") Measure minimumPiece) {
  }

  public enum SeamKind {
    SINGLE_FOLD, DOUBLE_FOLD, SNAP
  }

  public enum FixedAt {
    EAVE, RIDGE, MIDDLE, BOTH_ENDS
  }

  /**
   * @param start where the seams of a face begin
   * @param offset of the first seam from there, to the right when you look up the slope
   */
  public record Layout(Start start, @Range(min = "0 in", max = "48 in") Measure offset) {
  }

  /**
   * @param compression that fasteners are meant to give it
   * @param reach how far to each side a fastener presses it (common practice, no source)
   */
  public record Tape(@Range(min = "1/8 in", max = "6 in") Measure width, @Range(min = "1/64 in", max = "1 in") Measure thickness,
      @Range(min = "1 ft", max = "1000 ft") Measure roll, @Range(min = "0 %", max = "90 %") Measure compression,
      @Range(min = "1/4 in", max = "12 in") Measure reach) {
  }

  /**
   * @param height of the closure itself; the seam's where the file says nothing (common practice)
   * @param lip width of the fastening lip that lies on the tape
   */
  public record Closure(@Range(min = "1/4 in", max = "12 in") Measure height, @Range(min = "1/4 in", max = "6 in") Measure lip) {
  }

  /**
   * @param spacing greatest distance between fasteners through tape
   * @param endDistance of the first and the last from the ends of a piece or line
   * @param minimumPerPiece least number in a piece
   * @param trimSpacing greatest distance where a line is not sealed by tape: trims, cleats that only hold
   * @param wedgeSpacing greatest distance of wedges in a reglet
   * @param bootSpacing greatest distance on the ring of a pipe's boot
   * @param box pieces in a unit of sale
   */
  public record Fasteners(@Range(min = "1/2 in", max = "48 in") Measure spacing, @Range(min = "0 in", max = "12 in") Measure endDistance,
      int minimumPerPiece, @Range(min = "1/2 in", max = "96 in") Measure trimSpacing,
      @Range(min = "1/2 in", max = "96 in") Measure wedgeSpacing, @Range(min = "1/2 in", max = "12 in") Measure bootSpacing, Metal metal,
      int box) {
  }

  /**
   * @param size diameter of a round bead, leg of a fillet, width of a half-round
   * @param upstand how far the bead behind a closure turns up each seam leg; where the file says nothing, the seam's height and one bead
   *     more, so that it joins the tape on the closure's top
   * @param receiverShape of the tooled bead where a flashing ends at a wall
   * @param clampShape of the bead at the clamp of a pipe's boot
   * @param cartridge content of a unit of sale
   */
  public record Bead(BeadShape shape, @Range(min = "1/32 in", max = "2 in") Measure size,
      @Range(min = "0 in", max = "12 in") Measure upstand, BeadShape receiverShape,
      @Range(min = "1/32 in", max = "2 in") Measure receiverSize, BeadShape clampShape,
      @Range(min = "1/32 in", max = "2 in") Measure clampSize, @Range(min = "10 ml", max = "20 l") Measure cartridge) {
  }

  /**
   * The sealant of the beads, from its data sheet.
   *
   * @param cure how it sets
   * @param acidCuring true for one that gives off acetic acid
   * @param firstDayDepth depth cured after a day at 23 °C and 50 %
   * @param lowest lowest temperature of air and metal for its use
   * @param dewPointMargin how much warmer than the dew point the metal must be (a rule of coating work, used as a caution)
   * @param yieldStress 0 where the data sheet does not say
   * @param movementCapability share of its width
   */
  public record Sealant(CureKind cure, boolean acidCuring, @Range(min = "0.1 mm", max = "20 mm") Measure firstDayDepth, Measure lowest,
      Measure highest, @Range(min = "0 K", max = "20 K") Measure dewPointMargin,
      @Range(min = "500 kg/m3", max = "3000 kg/m3") Measure density, @Range(min = "0 Pa", max = "10 kPa") Measure yieldStress,
      @Range(min = "1 %", max = "200 %") Measure movementCapability) {
  }

  public enum CureKind {
    MOISTURE, SOLVENT_RELEASE, NONE
  }

  /**
   * Caps, trims and other flashings in stock lengths.
   *
   * @param metal the panel's where the file says nothing
   * @param girth of the part across a lap, for what seals the lap
   * @param lapSeal with tape, or with a non-curing sealant from the gun, since laps slide
   */
  public record Flashing(Metal metal, @Range(min = "1 ft", max = "100 ft") Measure length,
      @Range(min = "0 in", max = "24 in") Measure lap, @Range(min = "1 in", max = "60 in") Measure girth, LapSeal lapSeal) {
  }

  public enum LapSeal {
    SEALANT, TAPE
  }

  /**
   * @param counterflashing how flashings end at walls
   * @param upstand height to which flashings stand up at walls and curbs
   */
  public record Walls(Counterflashing counterflashing, @Range(min = "1 in", max = "36 in") Measure upstand) {
  }

  public enum Counterflashing {
    REGLET, SURFACE_MOUNTED
  }

  public record Ridge(boolean vented) {
  }

  /** @param cleatOffset of the panels' cleat from the valley's middle line, on the face, square to the line */
  public record Valley(@Range(min = "1 in", max = "36 in") Measure cleatOffset) {
  }

  /** @param cricketAbove curbs wider across the fall get a cricket (International Residential Code R903.2.2: 30 in) */
  public record Curbs(@Range(min = "6 in", max = "120 in") Measure cricketAbove) {
  }

  /**
   * @param boltCircleMargin from the pipe's surface to the fasteners of its boot
   * @param clearance least distance between the edges of two penetrations, and from one to a seam's neighbour line, for their flashings
   */
  public record Pipes(@Range(min = "1/4 in", max = "12 in") Measure boltCircleMargin,
      @Range(min = "0 in", max = "60 in") Measure clearance) {
  }

  /**
   * @param sealSeamsBelow seams of flatter faces get a sealant in the seam
   * @param lowestSlope of the panel system, as its maker states it
   */
  public record Limits(@Range(min = "0:12", max = "24:12") Measure sealSeamsBelow,
      @Range(min = "0:12", max = "12:12") Measure lowestSlope) {
  }

  /** Added to net quantities before they are rounded up, once for the project. Parts cut to measure have none by default. */
  public record Waste(@Range(min = "0 %", max = "100 %") Measure tape, @Range(min = "0 %", max = "100 %") Measure bead,
      @Range(min = "0 %", max = "100 %") Measure inSeam, @Range(min = "0 %", max = "100 %") Measure fasteners,
      @Range(min = "0 %", max = "100 %") Measure closures, @Range(min = "0 %", max = "100 %") Measure flashing) {
  }

  /**
   * @param elevation above sea level; 0 for a site below it
   * @param rainfall design intensity; short ones, of 5 to 15 minutes, suit roofs better than an hour's
   * @param runoff share of the rain that runs off
   * @param lowestMetal coldest the metal gets
   * @param installMetal temperature of the metal when it is fixed
   * @param installAir temperature of the air when sealants are applied
   * @param humidity relative, then
   * @param wind speed for wind-driven rain
   * @param marine within reach of salt spray
   */
  public record Site(@Range(min = "0 m", max = "6000 m") Measure elevation, @Range(min = "0 in/h", max = "40 in/h") Measure rainfall,
      @Range(min = "10 %", max = "100 %") Measure runoff, @Range(min = "-80 °C", max = "40 °C") Measure lowestMetal,
      @Range(min = "0 °C", max = "120 °C") Measure highestMetal, @Range(min = "-40 °C", max = "80 °C") Measure installMetal,
      @Range(min = "-40 °C", max = "60 °C") Measure installAir, @Range(min = "0 %", max = "100 %") Measure humidity,
      @Range(min = "0 mph", max = "250 mph") Measure wind, boolean marine) {
  }

  /** The system that is in force where nobody states one. */
  public static final RoofSystem DEFAULT = new RoofSystem("Default standing seam system",
      new Panel(length("16 in"), length("1 1/2 in"), SeamKind.DOUBLE_FOLD, length("0 in"), Metal.ALUMINIUM_ZINC_STEEL, length("0.024 in"),
          FixedAt.EAVE, length("3/4 in"), length("3 in")),
      new Layout(Start.LEFT, length("0 in")),
      new Tape(length("7/8 in"), length("3/16 in"), length("50 ft"), share("25 %"), length("2 in")),
      new Closure(length("1 1/2 in"), length("1 in")),
      new Fasteners(length("4 in"), length("1 in"), 1, length("12 in"), length("18 in"), length("1 1/2 in"), Metal.STAINLESS_STEEL, 1),
      new Bead(BeadShape.ROUND, length("1/4 in"), length("1 3/4 in"), BeadShape.FILLET, length("3/8 in"), BeadShape.FILLET,
          length("1/4 in"), Measure.volume("10.1 fl oz")),
      new Sealant(CureKind.MOISTURE, false, length("2 mm"), Measure.temperature("4 °C"), Measure.temperature("32 °C"),
          Measure.temperatureDifference("3 K"), Measure.parse(Dimension.DENSITY, "1300 kg/m3"), Measure.parse(Dimension.PRESSURE, "0 Pa"),
          share("25 %")),
      new Flashing(Metal.ALUMINIUM_ZINC_STEEL, length("10 ft"), length("4 in"), length("12 in"), LapSeal.SEALANT),
      new Walls(Counterflashing.REGLET, length("6 in")),
      new Ridge(false),
      new Valley(length("4 in")),
      new Curbs(length("30 in")),
      new Pipes(length("1 3/8 in"), length("12 in")),
      new Limits(Measure.slope("3:12"), Measure.slope("1/4:12")),
      new Waste(share("10 %"), share("10 %"), share("10 %"), share("10 %"), share("0 %"), share("0 %")),
      new Site(length("0 m"), Measure.parse(Dimension.SPEED, "4.8 in/h"), share("100 %"), Measure.temperature("-20 °F"),
          Measure.temperature("180 °F"), Measure.temperature("70 °F"), Measure.temperature("70 °F"), share("50 %"),
          Measure.parse(Dimension.SPEED, "90 mph"), false));

  private static Measure length(String text) {
    return Measure.length(text);
  }

  private static Measure share(String text) {
    return Measure.share(text);
  }

  /**
   * Reads a file of at most a megabyte, UTF-8.
   *
   * @throws SystemFormatException if it can't be used, with every reason
   */
  public static RoofSystem read(Path file) {
    String name = String.valueOf(file.getFileName());
    try {
      if (Files.size(file) > SystemReader.LONGEST) {
        throw SystemReader.tooLong(name, Files.size(file));
      }
      return parse(Files.readString(file, StandardCharsets.UTF_8), name);
    } catch (IOException e) {
      throw SystemReader.unreadable(name, e);
    }
  }

  /**
   * Reads JSON text.
   *
   * @param file the name for messages
   * @throws SystemFormatException if it can't be used, with every reason
   */
  public static RoofSystem parse(String json, String file) {
    return SystemReader.parse(json, file);
  }

  /** Every value in force as text with its unit, nested as in the file; reading it again gives this system. */
  public Map<String, Object> toMap() {
    return SystemReader.toMap(this);
  }

  /** What follows from other values where a file does not say: closure height, bead upstand, metal of flashings. */
  RoofSystem withDerivedDefaults(RoofSystem stated) {
    Measure seam = stated.panel.seamHeight;
    return new RoofSystem(name, panel, layout, tape, new Closure(seam, closure.lip), fasteners,
        new Bead(bead.shape, bead.size, sum(seam, stated.bead.size), bead.receiverShape, bead.receiverSize, bead.clampShape, bead.clampSize,
            bead.cartridge),
        sealant, new Flashing(stated.panel.metal, flashing.length, flashing.lap, flashing.girth, flashing.lapSeal), walls, ridge, valley,
        curbs, pipes, limits, waste, site);
  }

  /** The sum in the unit of the first, if that is inches or millimetres. */
  private static Measure sum(Measure a, Measure b) {
    Fraction si = a.si().plus(b.si());
    Unit unit = a.text().endsWith("m") ? Unit.MILLIMETRE : Unit.INCH;
    return new Measure(Dimension.LENGTH, si, unit == Unit.MILLIMETRE ? MeasureFormat.plain(si.toDouble() * 1000, 3) + " mm"
        : Measure.of(unit.fromSi(si), unit).text());
  }

  /** The spacings that details may name. */
  public static final java.util.List<String> SPACINGS =
      java.util.List.of("fasteners.spacing", "fasteners.trimSpacing", "fasteners.wedgeSpacing", "fasteners.bootSpacing");

  /**
   * One of the spacings, by the name of its field.
   *
   * @throws IllegalArgumentException if there is none of that name
   */
  public Measure spacing(String field) {
    return switch (field) {
      case "fasteners.spacing" -> fasteners.spacing;
      case "fasteners.trimSpacing" -> fasteners.trimSpacing;
      case "fasteners.wedgeSpacing" -> fasteners.wedgeSpacing;
      case "fasteners.bootSpacing" -> fasteners.bootSpacing;
      default -> throw new IllegalArgumentException("expected one of " + String.join(", ", SPACINGS) + ", found \"" + field + "\"");
    };
  }

  /** True where seams of a face of this slope get a sealant in the seam. */
  public boolean sealsSeamsAt(double slopeDegrees) {
    return slopeDegrees < limits.sealSeamsBelow.degrees() - 1e-3;
  }

  /** Manning's n of the panel's surface (published table: copper, brass, lead .011, smooth steel .012, galvanized .016). */
  public double manningN() {
    return switch (panel.metal) {
      case COPPER, LEAD -> 0.011;
      case GALVANIZED_STEEL -> 0.016;
      default -> 0.012;
    };
  }
}
