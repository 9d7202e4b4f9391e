package org.seamledger.samples;

import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Roofs.fallingEast;
import static org.seamledger.samples.Roofs.fallingNorth;
import static org.seamledger.samples.Roofs.risingEast;
import static org.seamledger.samples.Roofs.risingNorth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;

/** Roofs that meet in valleys: wings and dormers. */
public final class JoinedRoofs {

  /** How two roofs that meet are modelled. */
  public enum Meeting {
    /** Both end at the valleys. */
    CUT,
    /** The smaller roof ends at the valleys, the main roof runs on beneath it. */
    MAIN_WHOLE,
    /** The smaller roof runs on inside, under the main roof's surface, too. */
    BOTH_WHOLE
  }

  /** How far dormer walls reach below the main roof's surface. */
  private static final double BELOW = 0.5;
  private static final double WALL = 0.12;

  private JoinedRoofs() {
  }

  /** Two wings of the same width at a right angle, gabled at both ends; {@code a} and {@code b} are the outer lengths. */
  public static House ell(double a, double b, double width, Pitch pitch) {
    double h = width / 2;
    double line = h * Math.sqrt(2 + pitch.tan() * pitch.tan());
    return new House("L plan")
        .roof("south", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(a, 0), at(a, h), at(h, h))
        .roof("inner south", fallingNorth(width, EAVE, pitch), DEPTH, at(h, h), at(a, h), at(a, width), at(width, width))
        .roof("west", risingEast(0, EAVE, pitch), DEPTH, at(0, 0), at(h, h), at(h, b), at(0, b))
        .roof("inner west", fallingEast(width, EAVE, pitch), DEPTH, at(h, h), at(width, width), at(width, b), at(h, b))
        .expect("ridge", a - h, "outer length − half width")
        .expect("ridge", b - h, "outer length − half width")
        .expect("hip", line, "half width × √(2+t²)")
        .expect("valley", line, "half width × √(2+t²)")
        .expect("eave", a, "outer length")
        .expect("eave", b, "outer length")
        .expect("eave", a - width, "outer length − width")
        .expect("eave", b - width, "outer length − width")
        .expect(4, "rake", h * pitch.rafter(), "half width × √(1+t²)");
  }

  /**
   * A gabled wing at a right angle to a main roof, its eaves level with the main eaves.
   *
   * @param centre of the wing along the main roof
   * @param out how far the wing stands out from the main eave
   */
  public record Wing(double centre, double span, double out, Pitch pitch) {
    double half() {
      return span / 2;
    }

    double rise() {
      return half() * pitch.tan();
    }

    /** Plan length of its ridge over a main roof of the given pitch. */
    double run(Pitch main) {
      return rise() / main.tan();
    }
  }

  /** A gable with one wing on its south side. */
  public static House tee(double span, double length, Pitch main, double centre, double wing, double out, Pitch side, Meeting meeting) {
    return winged("T plan", span, length, main, List.of(new Wing(centre, wing, out, side)), List.of(), meeting);
  }

  /** A gable with wings, those of each side in their order along X, none touching. */
  public static House winged(String name, double span, double length, Pitch main, List<Wing> south, List<Wing> north, Meeting meeting) {
    House house = new House(name)
        .roof("south", risingNorth(0, EAVE, main), DEPTH, mainOutline(length, span / 2, main, south, meeting))
        .roof("north", fallingNorth(span, EAVE, main), DEPTH, acrossTheRidge(mainOutline(length, span / 2, main, north, meeting), span))
        .expect("ridge", length, "length of the plan")
        .expect(4, "rake", span / 2 * main.rafter(), "half span × √(1+t²)");
    wings(house, south, "south wing ", span, main, meeting, false);
    wings(house, north, "north wing ", span, main, meeting, true);
    mainEaves(house, length, south);
    mainEaves(house, length, north);
    return house;
  }

  private static Vec2[] mainOutline(double length, double half, Pitch main, List<Wing> wings, Meeting meeting) {
    List<Vec2> outline = new ArrayList<>(List.of(at(0, 0)));
    if (meeting == Meeting.CUT) {
      for (Wing w : wings) {
        outline.addAll(List.of(at(w.centre() - w.half(), 0), at(w.centre(), w.run(main)), at(w.centre() + w.half(), 0)));
      }
    }
    outline.addAll(List.of(at(length, 0), at(length, half), at(0, half)));
    return outline.toArray(Vec2[]::new);
  }

  /** The same plan on the other side of the ridge. */
  private static Vec2[] acrossTheRidge(Vec2[] outline, double span) {
    return Arrays.stream(outline).map(p -> at(p.u(), span - p.v())).toArray(Vec2[]::new);
  }

  private static void wings(House house, List<Wing> wings, String prefix, double span, Pitch main, Meeting meeting, boolean onNorth) {
    for (int i = 0; i < wings.size(); i++) {
      Wing w = wings.get(i);
      String name = prefix + (wings.size() == 1 ? "" : (i + 1) + " ");
      double west = w.centre() - w.half();
      double east = w.centre() + w.half();
      double run = w.run(main);
      double eaveEnd = meeting == Meeting.BOTH_WHOLE ? Math.min(run + 0.6, span / 2) : 0;
      double ridgeEnd = meeting == Meeting.BOTH_WHOLE ? eaveEnd : run;
      Vec2[] left = {at(west, -w.out()), at(w.centre(), -w.out()), at(w.centre(), ridgeEnd), at(west, eaveEnd)};
      Vec2[] right = {at(w.centre(), -w.out()), at(east, -w.out()), at(east, eaveEnd), at(w.centre(), ridgeEnd)};
      house.roof(name + "west", risingEast(west, EAVE, w.pitch()), DEPTH, onNorth ? acrossTheRidge(left, span) : left)
          .roof(name + "east", fallingEast(east, EAVE, w.pitch()), DEPTH, onNorth ? acrossTheRidge(right, span) : right)
          .expect("ridge", w.out() + run, "wing's projection + wing rise / main pitch")
          .expect(2, "valley", Math.sqrt(w.half() * w.half() + run * run + w.rise() * w.rise()),
              "√(half wing² + run over the main roof² + wing rise²)")
          .expect(w.out() > 0 ? 2 : 0, "eave", w.out(), "wing's projection")
          .expect(2, "rake", w.half() * w.pitch().rafter(), "half wing × √(1+t²)");
    }
  }

  private static void mainEaves(House house, double length, List<Wing> wings) {
    double from = 0;
    for (Wing w : wings) {
      house.expect("eave", w.centre() - w.half() - from, "main eave up to a wing");
      from = w.centre() + w.half();
    }
    house.expect("eave", length - from, wings.isEmpty() ? "length of the plan" : "main eave beyond a wing");
  }

  /**
   * A dormer with a gable, flush with its walls, on a plane that rises to the north from the eave at y = 0.
   *
   * @param plane name of the main roof's plane
   * @param centre along the eave
   * @param front plan distance of its front from the eave
   * @param cheek height of its eaves above the main roof at the front
   */
  public static House gableDormer(House house, String plane, String name, double centre, double width, double front, double cheek,
      Pitch pitch, Meeting meeting) {
    RoofPlane main = house.roofNamed(plane);
    Pitch under = main.slope().pitch();
    double t = under.tan();
    double eave = main.slope().z(0, front) + cheek;
    double back = front + cheek / t;
    double half = width / 2;
    double rise = half * pitch.tan();
    double peak = back + rise / t;
    double west = centre - half;
    double east = centre + half;
    if (meeting == Meeting.CUT) {
      house.pierce(plane, List.of(at(west, front), at(east, front), at(east, back), at(centre, peak), at(west, back)),
          House.Through.OUTLINE, name);
    }
    double inner = meeting == Meeting.BOTH_WHOLE ? peak + 0.3 : 0;
    house.roof(name + " west", risingEast(west, eave, pitch), DEPTH, at(west, front), at(centre, front),
        at(centre, inner > 0 ? inner : peak), at(west, inner > 0 ? inner : back))
        .roof(name + " east", fallingEast(east, eave, pitch), DEPTH, at(centre, front), at(east, front),
            at(east, inner > 0 ? inner : back), at(centre, inner > 0 ? inner : peak));
    double top = eave - DEPTH;
    double low = main.slope().z(0, front) - BELOW;
    double meets = front + (top - low) / t;
    house.wallFacingX(name + " west cheek", west, WALL, at(front, low), at(front, top), at(meets, top))
        .wallFacingX(name + " east cheek", east - WALL, WALL, at(front, low), at(front, top), at(meets, top))
        .wallFacingY(name + " front", front, WALL, at(west, low), at(east, low), at(east, top), at(centre, top + rise), at(west, top));
    return house.expect("headwall", width, "width of the front")
        .expect(2, "sidewall", cheek / t * under.rafter(), "cheek height / main pitch × √(1+t²)")
        .expect(2, "valley", Math.sqrt(half * half + (rise / t) * (rise / t) + rise * rise),
            "√(half width² + run over the main roof² + rise²)")
        .expect("ridge", peak - front, "front to where the ridge meets the main roof")
        .expect(2, "eave", cheek / t, "cheek height / main pitch")
        .expect(2, "rake", half * pitch.rafter(), "half width × √(1+t²)");
  }

  /** A dormer with one flatter plane that falls the same way as the plane beneath it; see {@link #gableDormer}. */
  public static House shedDormer(House house, String plane, String name, double centre, double width, double front, double cheek,
      Pitch pitch, Meeting meeting) {
    RoofPlane main = house.roofNamed(plane);
    Pitch under = main.slope().pitch();
    double eave = main.slope().z(0, front) + cheek;
    double run = cheek / (under.tan() - pitch.tan());
    double west = centre - width / 2;
    double east = centre + width / 2;
    double back = front + run;
    if (meeting == Meeting.CUT) {
      house.pierce(plane, List.of(at(west, front), at(east, front), at(east, back), at(west, back)), House.Through.OUTLINE, name);
    }
    double end = meeting == Meeting.BOTH_WHOLE ? back + 0.3 : back;
    house.roof(name + " plane", risingNorth(front, eave, pitch), DEPTH, at(west, front), at(east, front), at(east, end), at(west, end));
    double top = eave - DEPTH;
    double low = main.slope().z(0, front) - BELOW;
    double meets = front + (top - low) / (under.tan() - pitch.tan());
    double topEnd = top + pitch.tan() * (meets - front);
    house.wallFacingX(name + " west cheek", west, WALL, at(front, low), at(front, top), at(meets, topEnd))
        .wallFacingX(name + " east cheek", east - WALL, WALL, at(front, low), at(front, top), at(meets, topEnd))
        .wallFacingY(name + " front", front, WALL, at(west, low), at(east, low), at(east, top), at(west, top));
    return house.expect("headwall", width, "width of the front")
        .expect(2, "sidewall", run * under.rafter(), "run × √(1+t²) of the main roof")
        .expect("transition-concave", width, "width of the dormer")
        .expect("eave", width, "width of the dormer")
        .expect(2, "rake", run * pitch.rafter(), "run × √(1+t²) of the dormer's roof");
  }

  /** A chimney centred on the ridge of a {@link Roofs#gable gable} of equal pitches. */
  public static House chimneyAcrossRidge(House gable, String name, double span, double length, double x, double along, double across,
      double above, House.Through through) {
    Pitch pitch = gable.roofNamed("south").slope().pitch();
    double y = span / 2;
    double ridgeZ = EAVE + y * pitch.tan();
    double x0 = x - along / 2;
    double x1 = x + along / 2;
    double y0 = y - across / 2;
    double y1 = y + across / 2;
    gable.thing(name, Thing.Role.CHIMNEY,
        Extrusion.upright(List.of(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)), ridgeZ - pitch.tan() * across / 2 - 0.8,
            ridgeZ + above));
    if (through == House.Through.OPENING) {
      gable.pierce("south", List.of(at(x0, y0), at(x1, y0), at(x1, y + 0.01), at(x0, y + 0.01)), through, name + " south");
      gable.pierce("north", List.of(at(x0, y - 0.01), at(x1, y - 0.01), at(x1, y1), at(x0, y1)), through, name + " north");
    }
    return gable.noLonger("ridge", length)
        .expect("ridge", x0, "ridge up to the chimney")
        .expect("ridge", length - x1, "ridge beyond the chimney")
        .expect(2, "curb-downslope", along, "chimney's size along the ridge")
        .expect(4, "curb-side", across / 2 * pitch.rafter(), "half its size across the ridge × √(1+t²)");
  }

  /** A round pipe centred on the ridge of a gable of equal pitches. */
  public static House pipeAcrossRidge(House gable, String name, double span, double length, double x, double diameter, double above) {
    Pitch pitch = gable.roofNamed("south").slope().pitch();
    double y = span / 2;
    double z = EAVE + y * pitch.tan();
    double r = diameter / 2;
    gable.thing(name, Thing.Role.PIPE,
        new Cylinder(new Vec3(x, y, z - pitch.tan() * r - 0.8), new Vec3(0, 0, pitch.tan() * r + 0.8 + above), r));
    return gable.noLonger("ridge", length)
        .expect("ridge", x - r, "ridge up to the pipe")
        .expect("ridge", length - x - r, "ridge beyond the pipe")
        .expect("pipe", Ellipse.perimeter(r, r * pitch.rafter()), "two halves of the ellipse with semi-axes r and r·√(1+t²)");
  }

  // ---- one roof above another ----

  /**
   * A lower plane whose top ends at the wall of a taller gable with an overhanging eave; the lower roof runs under the overhang to the
   * wall.
   *
   * @param drop height of the upper eave above the lower roof's top
   * @param overhang plan width of the upper roof beyond its wall
   */
  public static House underOverhang(double depth, double length, Pitch lower, double drop, double overhang, double upperSpan, Pitch upper) {
    double top = EAVE + depth * lower.tan();
    double upperEave = top + drop;
    double south = depth - overhang;
    double north = depth + upperSpan + overhang;
    double middle = (south + north) / 2;
    double run = middle - south;
    return new House("under an overhang")
        .roof("lower", risingNorth(0, EAVE, lower), DEPTH, at(0, 0), at(length, 0), at(length, depth), at(0, depth))
        .roof("upper south", risingNorth(south, upperEave, upper), DEPTH, at(0, south), at(length, south), at(length, middle),
            at(0, middle))
        .roof("upper north", fallingNorth(north, upperEave, upper), DEPTH, at(0, middle), at(length, middle), at(length, north),
            at(0, north))
        .wall("tall wall south", 0, depth, length, depth + 0.3, 0, upperEave - DEPTH)
        .wall("tall wall north", 0, depth + upperSpan - 0.3, length, depth + upperSpan, 0, upperEave - DEPTH)
        .expect("headwall", length, "length of the plan")
        .expect("eave", length, "length of the plan")
        .expect(2, "rake", depth * lower.rafter(), "lower depth × √(1+t²)")
        .expect("ridge", length, "length of the plan")
        .expect(2, "eave", length, "length of the plan")
        .expect(4, "rake", run * upper.rafter(), "(half span + overhang) × √(1+t²)");
  }

  /** Two planes that fall the same way, the lower one's top against a wall that carries the upper one's eave. */
  public static House step(double lowerDepth, double upperDepth, double length, Pitch pitch, double height) {
    double top = EAVE + lowerDepth * pitch.tan();
    double y = lowerDepth;
    return new House("step")
        .roof("lower", risingNorth(0, EAVE, pitch), DEPTH, at(0, 0), at(length, 0), at(length, y), at(0, y))
        .roof("upper", risingNorth(y, top + height, pitch), DEPTH, at(0, y), at(length, y), at(length, y + upperDepth),
            at(0, y + upperDepth))
        .wall("step wall", 0, y, length, y + 0.25, 0, top + height - DEPTH)
        .expect(2, "eave", length, "length of the plan")
        .expect("headwall", length, "length of the plan")
        .expect("high-edge", length, "length of the plan")
        .expect(2, "rake", lowerDepth * pitch.rafter(), "lower depth × √(1+t²)")
        .expect(2, "rake", upperDepth * pitch.rafter(), "upper depth × √(1+t²)");
  }
}
