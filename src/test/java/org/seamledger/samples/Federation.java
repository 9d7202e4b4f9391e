package org.seamledger.samples;

import static org.seamledger.samples.Form.PLAIN;
import static org.seamledger.samples.Form.Make.SLABS;
import static org.seamledger.samples.Form.Placing.RAW;
import static org.seamledger.samples.Form.Placing.SITE;
import static org.seamledger.samples.Form.Schema.IFC2X3;
import static org.seamledger.samples.Form.Schema.IFC4X3;
import static org.seamledger.samples.Form.Unit.FOOT;
import static org.seamledger.samples.Form.Unit.MILLIMETRE;
import static org.seamledger.samples.Pitch.pitch;

import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.House.Through;
import org.seamledger.samples.Thing.Role;

/** The estate's infirmary in the models of its three disciplines, each in coordinates, units and a schema of its own. */
final class Federation {

  static final String FOLDER = "infirmary/";
  static final String TITLE = "Infirmary: a gable, split by discipline; the models meet through the map";
  /** Where the house lies: an invented place in a zone of a real grid. */
  static final Georeference PLACE = new Georeference(new Vec3(450_310.25, 5_200_140.5, 88.2), 20, "EPSG:25832");
  /** How the misplaced model lies to the house: turned, then moved. */
  static final Form MOVED = PLAIN.as(IFC2X3).in(FOOT).made(SLABS).at(SITE, 25, -40, 3.1).turned(90);

  private static final double WALL = 0.3;

  private Federation() {
  }

  /** The whole house: what all models together must give. */
  static House house() {
    double plate = Roofs.EAVE - Roofs.DEPTH;
    double peak = plate + 4 * pitch(30).tan();
    return new House("infirmary").with("", Roofs.gable(8, 14, pitch(30)), 0, 0, 0, 0)
        .wall("south wall", 0, 0, 14, WALL, 0, plate)
        .wall("north wall", 0, 8 - WALL, 14, 8, 0, plate)
        .gableWall("west gable", 0, WALL, 0, 8, 0, plate, 4, peak)
        .gableWall("east gable", 14 - WALL, WALL, 0, 8, 0, plate, 4, peak)
        .pipe("soil stack", "south", 3.1, 1.9, 0.11, 0.5, Through.OPENING)
        .pipe("vent", "south", 9.7, 2.3, 0.16, 0.45, Through.OPENING)
        .boxThrough("extract duct", Role.DUCT, "north", 5.2, 6.1, 0.6, 0.4, 0.9, Through.OPENING)
        .pipeInParts("boiler flue", "north", 11.4, 5.6, 0.13, 0.6);
  }

  private static boolean isService(Thing t) {
    return t.role() == Role.PIPE || t.role() == Role.DUCT || t.role() == Role.FITTING;
  }

  private static House services() {
    return house().only(false, Federation::isService);
  }

  /** The models that fit. */
  static List<Discipline> models() {
    Form services = PLAIN.as(IFC2X3).in(FOOT).made(SLABS).at(SITE, -30, 12, -1.5).turned(-35);
    Form structure = PLAIN.as(IFC4X3).made(SLABS).at(RAW, PLACE.at().x(), PLACE.at().y(), PLACE.at().z()).turned(PLACE.turnDegrees());
    return List.of(
        model("roof", house().only(true, t -> t.role() == Role.WALL), PLAIN.in(MILLIMETRE)),
        model("services", services(), services),
        model("structure", house().only(false, t -> t.role() == Role.WALL), structure));
  }

  /** The services once more, turned and shifted, and with no word about a map. */
  static Discipline misplaced() {
    return new Discipline("services-misplaced", services(), MOVED, Optional.empty());
  }

  private static Discipline model(String file, House part, Form form) {
    return new Discipline(file, part, form, Optional.of(Georeference.of(PLACE, form)));
  }

  /** The expected ledger of the models that fit. */
  static String expectedJson() {
    return new Sample(FOLDER + "roof", TITLE, house(), PLAIN.in(MILLIMETRE)).expectedJson();
  }

  static String readme() {
    return """

        ## Several models of one building

        [`infirmary`](infirmary) is split by discipline. `roof.ifc` (IFC4, millimetres), `services.ifc` (IFC2X3, feet) and \
        `structure.ifc` (IFC4X3,
        metres, drawn at map coordinates) state where they lie in the map and meet through it; together they must give
        `roof.expected.json`. The structural model repeats the walls. One pipe of `services.ifc` goes through the roof where it has no
        opening. `services-misplaced.ifc` holds the same pipes turned by a quarter and shifted, and says nothing of a map: with
        `roof.ifc` it must give the movement that brings it back.
        """;
  }
}
