package org.seamledger.samples;

import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Roofs.risingNorth;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.seamledger.geometry.Vec2;

/** Small roofs for corners that ordinary roofs don't have, by the kind of node that each must have at least once. */
public final class RareCorners {

  private static final Pitch PITCH = Pitch.per12(4);
  private static final double WALL = 0.3;

  private RareCorners() {
  }

  public static Map<String, Supplier<House>> all() {
    Map<String, Supplier<House>> all = new TreeMap<>();
    all.put("curb-corner", RareCorners::turnedChimney);
    all.put("curb-corner-inside", RareCorners::angledChimney);
    all.put("hip-foot-roof", RareCorners::hipBehindParapets);
    all.put("wall-foot-roof", RareCorners::wallBesideTheUpperHalf);
    all.put("wall-end", RareCorners::wallAlongHalfTheTop);
    all.put("eave-corner-outside", () -> bent("bent outward", 1));
    all.put("eave-corner-inside", () -> bent("bent inward", -1));
    all.put("high-eave-corner", () -> bent("bent outward", 1));
    all.put("rake-low-point", () -> bent("bent to a point", 4));
    all.put("rake-peak", () -> bent("bent to a point", 4));
    all.put("rake-bend", RareCorners::bentSide);
    all.put("rake-eave-inside", RareCorners::notchedBelow);
    all.put("rake-high-eave-inside", RareCorners::notchedAbove);
    all.put("valley-foot-roof", RareCorners::slopingTrough);
    return all;
  }

  private static House plane(String name) {
    return new House(name).roof("plane", risingNorth(0, EAVE, PITCH), DEPTH, at(0, 0), at(12, 0), at(12, 8), at(0, 8));
  }

  /** Eight sides, so that two of them meet at the widest points with neither above the other. */
  private static House turnedChimney() {
    Vec2[] plan = new Vec2[8];
    for (int i = 0; i < 8; i++) {
      double angle = Math.PI * (0.25 * i);
      plan[i] = at(6 + 0.9 * Math.cos(angle), 4 + 0.9 * Math.sin(angle));
    }
    return chimney(plane("eight-sided chimney"), plan);
  }

  private static House angledChimney() {
    return chimney(plane("angled chimney"), at(5, 3), at(6, 3), at(6, 4), at(7, 4), at(7, 5), at(5, 5));
  }

  private static House chimney(House house, Vec2... plan) {
    return house.thing("chimney", Thing.Role.CHIMNEY, Extrusion.upright(List.of(plan), EAVE - 1, EAVE + 5));
  }

  private static House hipBehindParapets() {
    House house = Roofs.hip(8, 14, PITCH);
    double top = EAVE + 0.6;
    return house.wall("parapet south", -WALL, -WALL, 14 + WALL, 0, 0, top).wall("parapet north", -WALL, 8, 14 + WALL, 8 + WALL, 0, top)
        .wall("parapet west", -WALL, 0, 0, 8, 0, top).wall("parapet east", 14, 0, 14 + WALL, 8, 0, top);
  }

  private static House wallBesideTheUpperHalf() {
    return plane("half beside a wall").wall("higher house", 12, 4, 12 + WALL, 8, 0, EAVE + 6);
  }

  private static House wallAlongHalfTheTop() {
    return plane("half below a wall").wall("higher house", 6, 8, 12, 8 + WALL, 0, EAVE + 6);
  }

  /** One plane whose low and high edges bend a little in plan, outward in the middle or inward. */
  private static House bent(String name, int way) {
    double by = 0.3 * way;
    return new House(name).roof("plane", risingNorth(0, EAVE, PITCH), DEPTH, at(0, 0), at(6, -by), at(12, 0), at(12, 8), at(6, 8 + by),
        at(0, 8));
  }

  private static House bentSide() {
    return new House("bent side").roof("plane", risingNorth(0, EAVE, PITCH), DEPTH, at(0, 0), at(12, 0), at(13, 4), at(12, 8), at(0, 8));
  }

  private static House notchedBelow() {
    return new House("notched below").roof("plane", risingNorth(0, EAVE, PITCH), DEPTH, at(0, 0), at(8, 0), at(8, 3), at(12, 3), at(12, 8),
        at(0, 8));
  }

  private static House notchedAbove() {
    return new House("notched above").roof("plane", risingNorth(0, EAVE, PITCH), DEPTH, at(0, 0), at(12, 0), at(12, 5), at(8, 5), at(8, 8),
        at(0, 8));
  }

  /** Two planes that fall to a valley which falls itself, and ends in the open where both have an oblique edge. */
  private static House slopingTrough() {
    return new House("sloping trough").roof("west", new Slope(EAVE, -0.3, 0.15), DEPTH, at(-6, 0), at(0, 0), at(0, 8), at(-6, 8))
        .roof("east", new Slope(EAVE, 0.3, 0.15), DEPTH, at(0, 0), at(6, 0), at(6, 8), at(0, 8));
  }
}
