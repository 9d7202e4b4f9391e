package org.seamledger.ifc.product;

import java.util.Locale;
import org.seamledger.geometry.Box3;
import org.seamledger.ifc.entity.EntityProblem;

/**
 * Where and how large a part of a building may be. Beyond, numbers are slips of a hand or of an export, and computing with them would
 * take time and memory without end.
 */
final class Bounds {

  /** Metres: wider than any one roof (the Klystron Gallery at Stanford, about 3.0 km, is the longest building known to us). */
  static final double WIDEST_ROOF = 4_000;
  /** Metres: terrain and the like, near a roof. */
  static final double WIDEST = 100_000;
  /** Metres from the model's origin: more than twice round the earth, so more than any map's coordinates. */
  private static final double FARTHEST = 1e8;

  private Bounds() {
  }

  /**
   * Lets a body pass that can be one; those without an end (half-spaces) are cut elsewhere.
   *
   * @param most metres that it may be wide, deep and high
   */
  static void require(Box3 box, double most) {
    if (box.isEmpty() || !box.isBounded()) {
      return;
    }
    double size = Math.max(box.maxX() - box.minX(), Math.max(box.maxY() - box.minY(), box.maxZ() - box.minZ()));
    if (size > most) {
      throw EntityProblem.outOfBounds("an item of it is " + kilometres(size) + " km wide, where " + kilometres(most) + " km are the most");
    }
    double far = Math.max(Math.max(Math.abs(box.minX()), Math.abs(box.maxX())),
        Math.max(Math.max(Math.abs(box.minY()), Math.abs(box.maxY())), Math.max(Math.abs(box.minZ()), Math.abs(box.maxZ()))));
    if (far > FARTHEST) {
      throw EntityProblem.outOfBounds("an item of it lies " + kilometres(far) + " km from the origin, farther than round the earth");
    }
  }

  private static String kilometres(double metres) {
    return metres >= 1e9 ? String.format(Locale.ROOT, "%.1e", metres / 1000) : String.format(Locale.ROOT, "%.0f", metres / 1000);
  }
}
