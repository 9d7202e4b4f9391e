package org.seamledger.site;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * How a whole model is moved: its lengths multiplied, it is turned anticlockwise about the upright through its own origin, then moved.
 *
 * @param factor by which lengths are multiplied, above zero; 1 nearly always
 * @param degrees of the turn, above −180 up to 180
 * @param shift metres
 */
public record RigidTransform(double factor, double degrees, Vec3 shift) {

  public static final RigidTransform NONE = new RigidTransform(1, 0, Vec3.ZERO);
  /** Decimals of metres beyond which nothing in a model is known. */
  private static final int FINEST = 9;

  /** @throws IllegalArgumentException where the factor is not above zero or a number not finite */
  public RigidTransform {
    if (!(factor > 0) || !Double.isFinite(factor) || !Double.isFinite(degrees)) {
      throw new IllegalArgumentException("a factor above zero and a finite turn are needed, found " + factor + ", " + degrees);
    }
    degrees = degrees % 360;
    degrees = degrees > 180 ? degrees - 360 : degrees <= -180 ? degrees + 360 : degrees;
  }

  public Transform transform() {
    double quarter = degrees / 90;
    boolean square = quarter == Math.rint(quarter);
    double c = square ? Math.rint(Math.cos(Math.toRadians(degrees))) : Math.cos(Math.toRadians(degrees));
    double s = square ? Math.rint(Math.sin(Math.toRadians(degrees))) : Math.sin(Math.toRadians(degrees));
    return new Transform(c * factor, -s * factor, 0, shift.x(), s * factor, c * factor, 0, shift.y(), 0, 0, factor, shift.z());
  }

  /** The movement that a map of space is, if it turns about the upright only: factor and turn are those of its x axis. */
  public static RigidTransform of(Transform t) {
    return new RigidTransform(Math.hypot(t.m00(), t.m10()), Math.toDegrees(Math.atan2(t.m10(), t.m00())), new Vec3(t.tx(), t.ty(), t.tz()));
  }

  /** To the millimetre and to a ten-thousandth of a degree, as people read it. */
  RigidTransform rounded() {
    return new RigidTransform(Math.abs(factor - 1) < 1e-6 ? 1 : factor, Math.rint(degrees * 1e4) / 1e4,
        new Vec3(milli(shift.x()), milli(shift.y()), milli(shift.z())));
  }

  /**
   * The movement with the fewest decimals that brings a model to the same place. The turn is rounded first and the shift then made anew, so
   * that a turn about an origin that is thousands of kilometres away needs no more digits than one about a near one.
   *
   * @param own box round the model, in the coordinates that are moved
   * @param within metres that a corner of the box may lie elsewhere; as exact as what the movement is known from
   */
  RigidTransform tidied(Box3 own, double within) {
    double multiple = Math.abs(factor - 1) * own.diagonal() < within ? 1 : factor;
    for (int decimals = 3; decimals < FINEST; decimals++) {
      for (int turn = 4; turn <= decimals + 4; turn++) {
        RigidTransform m = toDecimals(own.centre(), multiple, turn, decimals);
        if (m.strays(this, own) <= within) {
          return m;
        }
      }
    }
    return toDecimals(own.centre(), factor, FINEST + 3, FINEST);
  }

  private RigidTransform toDecimals(Vec3 middle, double multiple, int turn, int decimals) {
    double angle = decimal(degrees, turn);
    Vec3 s = transform().apply(middle).minus(new RigidTransform(multiple, angle, Vec3.ZERO).transform().apply(middle));
    return new RigidTransform(multiple, angle, new Vec3(decimal(s.x(), decimals), decimal(s.y(), decimals), decimal(s.z(), decimals)));
  }

  private static double decimal(double d, int decimals) {
    return BigDecimal.valueOf(d).setScale(decimals, RoundingMode.HALF_EVEN).doubleValue() + 0.0;
  }

  /** How far apart (metres) two movements bring the corners of a box at most. */
  private double strays(RigidTransform other, Box3 own) {
    Transform t = transform();
    Transform o = other.transform();
    double most = 0;
    for (int k = 0; k < 8; k++) {
      Vec3 corner = new Vec3((k & 1) == 0 ? own.minX() : own.maxX(), (k & 2) == 0 ? own.minY() : own.maxY(),
          (k & 4) == 0 ? own.minZ() : own.maxZ());
      most = Math.max(most, t.apply(corner).distance(o.apply(corner)));
    }
    return most;
  }

  private static double milli(double m) {
    return Math.rint(m * 1000) / 1000 + 0.0;
  }

  /** For people: {@code lengths times 0.3048, turned by 90° about its origin, moved by x +12 m, y -3.5 m, z 0 m}. */
  public String words() {
    RigidTransform r = rounded();
    if (r.equals(NONE)) {
      return "where its own coordinates put it";
    }
    StringBuilder words = new StringBuilder();
    if (r.factor != 1) {
      words.append("lengths times ").append(number(r.factor)).append(", ");
    }
    if (r.degrees != 0) {
      words.append("turned by ").append(number(r.degrees)).append("° about its origin, ");
    }
    return words.append("moved by x ").append(signed(r.shift.x())).append(" m, y ").append(signed(r.shift.y())).append(" m, z ")
        .append(signed(r.shift.z())).append(" m").toString();
  }

  /** As the command line takes it, in full: {@code 12,-3.5,0,90}. */
  public String argument() {
    String text = plain(shift.x()) + "," + plain(shift.y()) + "," + plain(shift.z());
    if (degrees != 0 || factor != 1) {
      text += "," + plain(degrees);
    }
    return factor == 1 ? text : text + "," + plain(factor);
  }

  private static String plain(double d) {
    return d == 0 ? "0" : BigDecimal.valueOf(d).stripTrailingZeros().toPlainString();
  }

  private static String signed(double m) {
    return (m > 0 ? "+" : "") + number(m);
  }

  private static String number(double d) {
    String s = String.format(Locale.ROOT, "%.6f", d).replaceAll("0+$", "").replaceAll("\\.$", "");
    return s.equals("-0") ? "0" : s;
  }

  /**
   * Reads {@code dx,dy,dz}, {@code dx,dy,dz,degrees} or {@code dx,dy,dz,degrees,factor}.
   *
   * @throws IllegalArgumentException with a message for users where the text is something else
   */
  public static RigidTransform parse(String text) {
    String[] parts = text.split(",", -1);
    if (parts.length < 3 || parts.length > 5) {
      throw new IllegalArgumentException("expected dx,dy,dz in metres and perhaps degrees and a factor, found '" + text + "'");
    }
    double[] n = new double[] {0, 0, 0, 0, 1};
    for (int i = 0; i < parts.length; i++) {
      try {
        n[i] = Double.parseDouble(parts[i].trim());
      } catch (NumberFormatException e) {
        throw new IllegalArgumentException("expected a number, found '" + parts[i].trim() + "' in '" + text + "'", e);
      }
    }
    return new RigidTransform(n[4], n[3], new Vec3(n[0], n[1], n[2]));
  }
}
