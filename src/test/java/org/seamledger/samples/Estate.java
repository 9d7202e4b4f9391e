package org.seamledger.samples;

import static org.seamledger.samples.Form.PLAIN;
import static org.seamledger.samples.Form.Make.COVERINGS;
import static org.seamledger.samples.Form.Make.ROOF;
import static org.seamledger.samples.Form.Make.SLABS;
import static org.seamledger.samples.Form.Placing.ELEMENT;
import static org.seamledger.samples.Form.Placing.SITE;
import static org.seamledger.samples.Form.Schema.IFC2X3;
import static org.seamledger.samples.Form.Schema.IFC4X3;
import static org.seamledger.samples.Form.Unit.FOOT;
import static org.seamledger.samples.Form.Unit.INCH;
import static org.seamledger.samples.Form.Unit.MILLIMETRE;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.seamledger.samples.Form.Shape;

/** The demo buildings: the houses of Vellinghow, an invented estate, and small roofs that are worked by hand in the trade. */
public final class Estate {

  private Estate() {
  }

  /** Every sample, in the order of the list beside the files. */
  public static List<Sample> samples() {
    return List.of(
        new Sample("gatehouse", "Gatehouse: a hip roof with a chimney and a vent", EstateHouses.gatehouse(),
            PLAIN.in(MILLIMETRE).cut(RoofPlane.Cut.SQUARE)),
        new Sample("stable", "Stable: an L with hip and valley, a hay shaft and a chimney", EstateHouses.stable(),
            PLAIN.as(IFC2X3).in(MILLIMETRE).by(Shape.BREP).made(SLABS)),
        new Sample("barn", "Barn: a gambrel with a louvred lantern and two vents", EstateHouses.barn(),
            PLAIN.in(FOOT).by(Shape.CLIPPED).made(SLABS)),
        new Sample("orangery", "Orangery: a lean-to with rooflights, a side wall half its depth", EstateHouses.orangery(),
            PLAIN.as(IFC4X3).in(MILLIMETRE).by(Shape.POLYGONS)),
        new Sample("boathouse", "Boathouse: two planes that drain into the middle", EstateHouses.boathouse(),
            PLAIN.as(IFC2X3).in(INCH).made(ROOF)),
        new Sample("forge", "Forge: a plane that drains into a wall, with an oblique wall beside it", EstateHouses.forge(),
            PLAIN.as(IFC2X3).in(MILLIMETRE).by(Shape.BOUNDED_CLIPPED).made(SLABS)),
        new Sample("dovecote", "Dovecote: eight faces that meet in a point", EstateHouses.dovecote(),
            PLAIN.by(Shape.TRIANGLES).made(ROOF).at(SITE, 450_000, 5_200_000, 87).turned(20)),
        new Sample("bathhouse", "Bathhouse: a low slope behind parapets with ducts, vents and rooflights", EstateHouses.bathhouse(),
            PLAIN.as(IFC4X3).made(SLABS).at(ELEMENT, 450_120, 5_200_080, 86)),
        new Sample("lodge", "Lodge: a mansard with a level top and a dormer", EstateHouses.lodge(),
            PLAIN.in(MILLIMETRE).by(Shape.ADVANCED_BREP)),
        new Sample("granary", "Granary: small hips above the gables, two dormers", EstateHouses.granary(),
            PLAIN.as(IFC4X3).in(MILLIMETRE).by(Shape.BOX_CLIPPED).made(SLABS)),
        new Sample("cart-shed", "Cart shed: one plane with an oblique side, drawn as a sheet", EstateHouses.cartShed(),
            PLAIN.as(IFC2X3).by(Shape.SHEET).made(COVERINGS)),
        new Sample("brewhouse", "Brewhouse: a steeper wing on a roof that was not cut for it, a chimney across the ridge",
            EstateHouses.brewhouse(), PLAIN.as(IFC2X3).in(FOOT).by(Shape.MAPPED_MIRRORED).made(SLABS)),
        new Sample("coach-house", "Coach house: a lower roof that runs under the upper one's overhang to the wall",
            EstateHouses.coachHouse(), PLAIN.by(Shape.BREP).in(MILLIMETRE).turned(-15)),
        new Sample("dairy", "Dairy: a modelled ridge cap, and a lean-to with its headwall flashing and gutter", EstateHouses.dairy(),
            PLAIN.in(MILLIMETRE)),
        new Sample("school", "School: wings, dormers, chimneys, vents, rooflights, a hall behind parapets, an arcade",
            School.house(), PLAIN.in(MILLIMETRE)),
        new Sample("worked/ridge-40ft", "A ridge of 40 ft", WorkedExamples.ridge(), PLAIN.in(INCH)),
        new Sample("worked/regular-hip", "Hips over a run of 12 ft at 6:12: 18 ft each", WorkedExamples.regularHip(), PLAIN.in(FOOT)),
        new Sample("worked/unequal-valley", "Valleys where 8:12 meets 4:12 at a right angle, rise 4 ft: 14 ft each",
            WorkedExamples.unequalValley(), PLAIN.in(FOOT)),
        new Sample("worked/metric-headwall", "A headwall of 12 m", WorkedExamples.metricHeadwall(), PLAIN.in(MILLIMETRE)),
        new Sample("worked/hip-roof", "A hip roof of 40 by 24 ft, all 6:12", WorkedExamples.hipRoof(), PLAIN.in(FOOT)),
        new Sample("worked/hip-roof-steeper-ends", "The same with ends of 9:12", WorkedExamples.hipRoofSteeperEnds(), PLAIN.in(FOOT)));
  }

  /** The models of the building that is split by discipline. */
  static List<Discipline> disciplines() {
    List<Discipline> all = new java.util.ArrayList<>(Federation.models());
    all.add(Federation.misplaced());
    return all;
  }

  /**
   * Writes every sample and its expected ledger, and the list of them.
   *
   * @param args the folder; {@code ifc-samples} where there is none
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "ifc-samples");
    for (Sample s : samples()) {
      Path file = folder.resolve(s.file() + ".ifc");
      Files.createDirectories(file.getParent());
      Files.writeString(file, s.ifc(), StandardCharsets.US_ASCII);
      Files.writeString(folder.resolve(s.file() + ".expected.json"), s.expectedJson(), StandardCharsets.UTF_8);
    }
    Files.createDirectories(folder.resolve(Federation.FOLDER));
    for (Discipline d : disciplines()) {
      Files.writeString(folder.resolve(Federation.FOLDER + d.file() + ".ifc"), d.ifc(), StandardCharsets.US_ASCII);
    }
    Files.writeString(folder.resolve(Federation.FOLDER + "roof.expected.json"), Federation.expectedJson(), StandardCharsets.UTF_8);
    Files.writeString(folder.resolve("README.md"), readme(), StandardCharsets.UTF_8);
  }

  static String readme() {
    StringBuilder text = new StringBuilder("""
        # Demo models

        The houses of Vellinghow, an estate that does not exist, and small roofs that are worked by hand in the trade. The generator in
        `src/test/java/org/seamledger/samples` writes them all, this list too; run its class `Estate` after a change. Beside each \
        model stands
        what it must give, `NAME.expected.json`: the true lengths by kind, and for every line the formula that it was worked out by from the
        house's own measures. Nothing in these files was copied from the program's results; a test compares the two.

        | model | what it is | schema | unit | kinds |
        |---|---|---|---|---|
        """);
    for (Sample s : samples()) {
      text.append("| [`").append(s.file()).append("`](").append(s.file()).append(".ifc) | ").append(s.title()).append(" | ")
          .append(s.form().schema()).append(" | ").append(s.form().unit().name().toLowerCase(Locale.ROOT)).append(" | ")
          .append(String.join(", ", s.house().expectedByKind().keySet())).append(" |\n");
    }
    return text.append(Federation.readme()).toString();
  }
}
