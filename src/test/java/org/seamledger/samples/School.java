package org.seamledger.samples;

import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;

import java.util.List;
import org.seamledger.samples.House.Through;
import org.seamledger.samples.JoinedRoofs.Meeting;
import org.seamledger.samples.JoinedRoofs.Wing;

/** The estate's school: the largest of the samples. */
final class School {

  private static final double SPAN = 12;
  private static final double LENGTH = 44;
  private static final Pitch MAIN = pitch(35);
  /** How much the main eaves are higher than those of a plain house. */
  private static final double LIFT = 3;
  private static final double EAVES = EAVE + LIFT;
  private static final double WALL = 0.3;
  private static final List<Wing> SOUTH = List.of(new Wing(8, 8, 7, MAIN), new Wing(36, 8, 7, MAIN));
  private static final List<Wing> NORTH = List.of(new Wing(22, 9, 5, pitch(40)));

  private School() {
  }

  static House house() {
    House school = new House("school").with("", mainRoof(), 0, 0, 0, LIFT);
    mainWalls(school);
    return school.with("hall ", hall(), 0, LENGTH + WALL, 1.5, 0).with("arcade ", arcade(), 2, 42, SPAN + 3, 0);
  }

  private static House mainRoof() {
    House main = JoinedRoofs.winged("school", SPAN, LENGTH, MAIN, SOUTH, NORTH, Meeting.CUT);
    JoinedRoofs.gableDormer(main, "south", "west dormer", 16, 2, 1.2, 1.1, pitch(38), Meeting.CUT);
    JoinedRoofs.shedDormer(main, "south", "middle dormer", 22, 3.6, 1, 1.2, pitch(12), Meeting.CUT);
    JoinedRoofs.gableDormer(main, "south", "east dormer", 28, 2, 1.2, 1.1, pitch(38), Meeting.CUT);
    JoinedRoofs.chimneyAcrossRidge(main, "great chimney", SPAN, LENGTH, 14, 1.2, 0.9, 1.5, Through.WHOLE);
    return main.chimney("kitchen chimney", "north", 34, 8.6, 1, 0.8, 1.6, Through.OPENING)
        .skylight("rooflight west", "north", 12, 9, 0.8, 1.2, 0.15)
        .skylight("rooflight east", "north", 30, 9, 0.8, 1.2, 0.15)
        .pipe("vent 1", "north", 5, 8.5, 0.11, 0.4, Through.WHOLE)
        .pipe("vent 2", "north", 39, 8, 0.11, 0.4, Through.WHOLE)
        .pipe("vent 3", "south wing 1 west", 6, -3, 0.16, 0.5, Through.WHOLE)
        .pipe("vent 4", "south wing 2 east", 38, -3, 0.16, 0.5, Through.OPENING);
  }

  private static void mainWalls(House school) {
    double plate = EAVES - DEPTH;
    double peak = plate + SPAN / 2 * MAIN.tan();
    school.wall("south wall", WALL, 0, LENGTH - WALL, WALL, 0, plate)
        .wall("north wall", WALL, SPAN - WALL, LENGTH - WALL, SPAN, 0, plate)
        .gableWall("west gable", 0, WALL, 0, SPAN, 0, plate, SPAN / 2, peak)
        .gableWall("east gable", LENGTH - WALL, WALL, 0, SPAN, 0, plate, SPAN / 2, peak);
    EstateHouses.wingWalls(school, "south wing 1", SOUTH.get(0), EAVES);
    EstateHouses.wingWalls(school, "south wing 2", SOUTH.get(1), EAVES);
    House north = new House("north wing walls");
    Wing w = NORTH.get(0);
    EstateHouses.wingWalls(north, "north wing", new Wing(-w.centre(), w.span(), w.out(), w.pitch()), EAVES);
    school.with("", north, 2, 0, SPAN, 0);
  }

  /** A low slope behind parapets, beside the east gable. */
  private static House hall() {
    return WalledRoofs.parapets(9, 11, per12(0.5), 0.5)
        .boxThrough("plant duct", Thing.Role.DUCT, "plane", 3, 6, 0.8, 0.6, 1, Through.OPENING)
        .skylight("rooflight", "plane", 7, 4, 1.2, 1.2, 0.3)
        .pipe("vent", "plane", 9, 7, 0.11, 0.5, Through.WHOLE);
  }

  /** A lean-to on the north wall, which the main roof's walls stand behind. */
  private static House arcade() {
    double depth = 3;
    double length = 14;
    Pitch p = pitch(15);
    House arcade = new House("arcade")
        .roof("plane", Roofs.risingNorth(0, EAVE, p), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth))
        .expect("headwall", length, "length of the arcade")
        .expect("eave", length, "length of the arcade")
        .expect(2, "rake", depth * p.rafter(), "plan depth × √(1+t²)");
    for (int i = 0; i < 5; i++) {
      double x = 0.3 + i * (length - 0.6) / 4;
      arcade.thing("post " + (i + 1), Thing.Role.COLUMN,
          Extrusion.upright(List.of(at(x - 0.1, 0.3), at(x + 0.1, 0.3), at(x + 0.1, 0.5), at(x - 0.1, 0.5)), 0, EAVE - DEPTH));
    }
    return arcade;
  }
}
