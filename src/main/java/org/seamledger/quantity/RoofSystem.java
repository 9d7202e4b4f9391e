package org.seamledger.quantity;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.MetalPart;
import org.seamledger.finding.SettingsFile;
import org.seamledger.measure.Dimension;
import org.seamledger.measure.Fraction;
import org.seamledger.measure.Measure;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.measure.Unit;
import org.seamledger.quantity.formula.BeadShape;
import org.seamledger.quantity.formula.Plate;
import org.seamledger.quantity.layout.Start;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.quantity.system.ClipSettings;
import org.seamledger.quantity.system.CoilSettings;
import org.seamledger.quantity.system.CutSettings;
import org.seamledger.quantity.system.GutterSettings;
import org.seamledger.quantity.system.PackSettings;
import org.seamledger.quantity.system.PurchaseSettings;
import org.seamledger.quantity.system.SealantPack;
import org.seamledger.quantity.system.SnowGuardSettings;
import org.seamledger.quantity.system.StockSettings;
import org.seamledger.quantity.system.UnderlaymentSettings;
import org.seamledger.quantity.system.BeadSettings;
import org.seamledger.quantity.system.ClosureSettings;
import org.seamledger.quantity.system.Counterflashing;
import org.seamledger.quantity.system.CrewSettings;
import org.seamledger.quantity.system.CurbSettings;
import org.seamledger.quantity.system.CureKind;
import org.seamledger.quantity.system.EaveSettings;
import org.seamledger.quantity.system.FastenerSettings;
import org.seamledger.quantity.system.FinishSettings;
import org.seamledger.quantity.system.FixedAt;
import org.seamledger.quantity.system.FlashingSettings;
import org.seamledger.quantity.system.InSeamSettings;
import org.seamledger.quantity.system.LapSeal;
import org.seamledger.quantity.system.LayoutSettings;
import org.seamledger.quantity.system.PanelSettings;
import org.seamledger.quantity.system.PipeSettings;
import org.seamledger.quantity.system.RidgeSettings;
import org.seamledger.quantity.system.SealantSettings;
import org.seamledger.quantity.system.SeamKind;
import org.seamledger.quantity.system.SiteSettings;
import org.seamledger.quantity.system.SlopeSettings;
import org.seamledger.quantity.system.TapeSettings;
import org.seamledger.quantity.system.ValleySettings;
import org.seamledger.quantity.system.WallSettings;
import org.seamledger.quantity.system.WasteSettings;

/**
 * The roof system in force: panel, tape, closures, fasteners, sealants, flashings, limits, waste, site, purchase, crew and finish. Every
 * value keeps the text with the unit that it was written in. Read from one JSON file; what the file leaves out has its default.
 *
 * <p>Three figures are common practice without a public source, and therefore parameters: a fastener's reach in tape, the tape's size
 * under a fastening flange, a closure as high as the seam.
 *
 * @param name for users
 */
public record RoofSystem(String name, PanelSettings panel, LayoutSettings layout, TapeSettings tape, ClosureSettings closure,
    FastenerSettings fasteners, BeadSettings bead,
    SealantSettings sealant, FlashingSettings flashing, WallSettings walls, EaveSettings eaves, RidgeSettings ridge, ValleySettings valley,
    CurbSettings curbs,
    PipeSettings pipes, SlopeSettings limits, WasteSettings waste,
    SiteSettings site, PurchaseSettings purchase, CrewSettings crew, InSeamSettings inSeam, FinishSettings finish) {

  /** The system that is in force where nobody states one. */
  public static final RoofSystem DEFAULT = new RoofSystem("Default standing seam system",
      new PanelSettings(length("16 in"), length("1 1/2 in"), SeamKind.DOUBLE_FOLD, length("0 in"), Metal.ALUMINIUM_ZINC_STEEL,
          length("0.024 in"),
          FixedAt.EAVE, true, length("3/4 in"), length("200 ft"), length("3 in")),
      new LayoutSettings(Start.LEFT, length("0 in")),
      new TapeSettings(length("7/8 in"), length("3/16 in"), length("50 ft"), share("12.5 %"), length("2 in"), Measure.temperature("5 °C")),
      new ClosureSettings(length("1 1/2 in"), length("1 in")),
      new FastenerSettings(length("4 in"), length("1 in"), 1, length("12 in"), length("18 in"), length("1 1/2 in"), Metal.STAINLESS_STEEL,
          length("1 in"), length("1 1/4 in"), false, 1),
      new BeadSettings(BeadShape.ROUND, length("1/4 in"), length("1 3/4 in"), BeadShape.FILLET, length("3/8 in"), BeadShape.FILLET,
          length("1/4 in"), Measure.volume("10.1 fl oz")),
      new SealantSettings(CureKind.MOISTURE, false, length("2 mm"), Measure.temperature("4 °C"), Measure.temperature("32 °C"),
          Measure.temperatureDifference("3 K"), Measure.parse(Dimension.DENSITY, "1300 kg/m3"), Measure.parse(Dimension.PRESSURE, "0 Pa"),
          share("25 %"), time("1 h"), time("24 h"), share("85 %"), Measure.temperature("50 °C")),
      new FlashingSettings(Metal.ALUMINIUM_ZINC_STEEL, length("10 ft"), length("4 in"), length("12 in"), LapSeal.SEALANT),
      new WallSettings(Counterflashing.REGLET, length("8 in"), length("0 in")),
      new EaveSettings(false),
      new RidgeSettings(false, length("1 in"), length("3/4 in")),
      new ValleySettings(length("4 in")),
      new CurbSettings(length("30 in")),
      new PipeSettings(length("1 3/8 in"), length("12 in"), length("18 in")),
      new SlopeSettings(Measure.slope("3:12"), Measure.slope("1/4:12")),
      new WasteSettings(share("10 %"), share("10 %"), share("10 %"), share("10 %"), share("0 %"), share("0 %")),
      new SiteSettings(length("0 m"), Measure.parse(Dimension.SPEED, "4.8 in/h"), Measure.parse(Dimension.SPEED, "9.6 in/h"),
          share("100 %"), Measure.temperature("-20 °F"),
          Measure.temperature("180 °F"), Measure.temperature("70 °F"), Measure.temperature("70 °F"), share("50 %"),
          Measure.parse(Dimension.SPEED, "90 mph"), false, false),
      usualPurchase(), usualCrew(), new InSeamSettings(Measure.temperature("5 °C"), Measure.temperature("50 °C")),
      new FinishSettings(share("70 %"), share("85 %")));

  /** Common practice, to be replaced by what is sold. */
  private static PurchaseSettings usualPurchase() {
    return new PurchaseSettings(new CutSettings(length("1 in"), length("1 in"), length("1 in"), length("6 in")),
        new CoilSettings(length("4 in"), length("48 in")),
        new ClipSettings(length("24 in"), length("12 in"), length("12 in"), 2, length("0 ft")),
        new UnderlaymentSettings(length("36 in"), length("66 2/3 ft"), length("3 in"), length("6 in")),
        new StockSettings(length("12 in"), length("0 in")),
        new PackSettings(SealantPack.CARTRIDGE, Measure.volume("20 fl oz"), Measure.volume("5 gal"), 250, 250, 100, 100,
            Measure.parse(Dimension.AREA, "250 m2")),
        new GutterSettings(length("40 ft"), length("30 in")),
        new SnowGuardSettings(false, length("20 ft"), length("16 in")));
  }

  /** Common practice, no source. */
  private static CrewSettings usualCrew() {
    return new CrewSettings(2, time("8 h"), time("7 h"), Measure.parse(Dimension.AREA, "60 m2"), Measure.parse(Dimension.AREA, "20 m2"),
        length("150 m"), length("12 m"), length("30 m"), length("40 m"), length("15 m"), length("20 m"), length("80 m"), time("45 min"));
  }

  /** Length of the intervals by which a part is counted, metres: as its detail states, or that which one outlet serves. */
  public double everyM(MetalPart part) {
    return part.everyM() > 0 ? part.everyM() : purchase.gutters().outletSpacing().value();
  }

  private static Measure time(String text) {
    return Measure.parse(Dimension.TIME, text);
  }

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
    return read(file, String.valueOf(file.getFileName()));
  }

  /** @param name of the file for messages */
  public static RoofSystem read(Path file, String name) {
    try {
      if (Files.size(file) > SystemReader.LONGEST) {
        throw SystemReader.tooLong(name, Files.size(file));
      }
      return parse(SettingsFile.text(file), name);
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
    return SystemFields.toMap(this);
  }

  /** What follows from other values where a file does not say: closure height, bead upstand, metal of flashings. */
  RoofSystem withDerivedDefaults(RoofSystem stated) {
    Measure seam = stated.panel.seamHeight();
    return new RoofSystem(name, panel, layout, tape, new ClosureSettings(seam, closure.fasteningFlange()), fasteners,
        new BeadSettings(bead.shape(), bead.size(), sum(seam, stated.bead.size()), bead.receiverShape(), bead.receiverSize(),
            bead.clampShape(), bead.clampSize(),
            bead.cartridge()),
        sealant, new FlashingSettings(stated.panel.metal(), flashing.length(), flashing.lap(), flashing.girth(), flashing.lapSeal()), walls,
        eaves,
        ridge, valley,
        curbs, pipes, limits, waste, site, purchase, crew, inSeam, finish);
  }

  /** The sum in the unit of the first, if that is inches or millimetres. */
  private static Measure sum(Measure a, Measure b) {
    Fraction si = a.si().plus(b.si());
    Unit unit = a.text().endsWith("m") ? Unit.MILLIMETRE : Unit.INCH;
    return new Measure(Dimension.LENGTH, si, unit == Unit.MILLIMETRE ? MeasureFormat.plain(si.toDouble() * 1000, 3) + " mm"
        : Measure.of(unit.fromSi(si), unit).text());
  }

  /** The spacings that details may name. */
  public static final List<String> SPACINGS =
      List.of("fasteners.spacing", "fasteners.trimSpacing", "fasteners.wedgeSpacing", "fasteners.bootSpacing",
          "purchase.gutters.hangerSpacing");

  /**
   * One of the spacings, by the name of its field.
   *
   * @throws IllegalArgumentException if there is none of that name
   */
  public Measure spacing(String field) {
    return switch (field) {
      case "fasteners.spacing" -> fasteners.spacing();
      case "fasteners.trimSpacing" -> fasteners.trimSpacing();
      case "fasteners.wedgeSpacing" -> fasteners.wedgeSpacing();
      case "fasteners.bootSpacing" -> fasteners.bootSpacing();
      case "purchase.gutters.hangerSpacing" -> purchase.gutters().hangerSpacing();
      default -> throw new IllegalArgumentException("expected one of " + String.join(", ", SPACINGS) + ", found \"" + field + "\"");
    };
  }

  /**
   * What a seam's own thickness takes off a closure between two seams, metres: as stated, and where nothing or 0 is stated the layers of
   * sheet in the fold: 3 of a single, 5 of a double one, 4 of a snapped one (counted in the fold's section; common practice).
   */
  public double seamThicknessM() {
    int layers = switch (panel.seamKind()) {
      case SINGLE_FOLD -> 3;
      case DOUBLE_FOLD -> 5;
      case SNAP -> 4;
    };
    return panel.seamThickness().value() > 0 ? panel.seamThickness().value() : layers * panel.thickness().value();
  }

  /** What the plate under a pipe on a seam is sized by; its own fasteners need their spacing from the boot's (derived). */
  public Plate.Allowance plateAllowance() {
    return new Plate.Allowance(panel.coverage().value(), pipes.plateLength().value(), pipes.fastenerCircleMargin().value(),
        fasteners.spacing().value());
  }

  /** Length of a closure as cut: the clear width between two seams along its line, metres, whatever of it the count took off before. */
  public double clearM(ClosureCut cut) {
    double more = seamThicknessM() - panel.seamThickness().value();
    double sine = Math.cos(Math.toRadians(cut.bevelDegrees()));
    return sine < 1e-9 ? cut.lengthM() : Math.max(0, cut.lengthM() - more / sine);
  }

  /** True where seams of a face of this slope get a sealant in the seam. */
  public boolean sealsSeamsAt(double slopeDegrees) {
    return slopeDegrees < limits.sealSeamsBelow().degrees() - 1e-3;
  }

  /** Intensity of five minutes' rain, metres a second: never less than the hour's. */
  public double fiveMinuteRainfallMs() {
    return Math.max(site.rainfall().value(), site.fiveMinuteRainfall().value());
  }

  /** Manning's n of the panel's surface (published table: copper, brass, lead .011, smooth steel .012, galvanized .016). */
  public double manningN() {
    return switch (panel.metal()) {
      case COPPER, LEAD -> 0.011;
      case GALVANIZED_STEEL -> 0.016;
      default -> 0.012;
    };
  }
}
