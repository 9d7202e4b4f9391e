package org.seamledger.site;

import java.util.Locale;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * How a whole model is moved: its lengths multiplied, it is turned anticlockwise about the upright through its own origin, then moved.
 *
 * @param factor by which lengths are multiplied, above zero; 1 nearly always
 * @param degrees of the turn, above −180 up to 180
 * @param shift metres
 */
public record Movement(double factor, double degrees, Vec3 shift) {

  public static final Movement NONE = new Movement(1, 0, Vec3.ZERO);

  /** @throws IllegalArgumentException where the factor is not above zero or a number not finite */
  public Movement {
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
  static Movement of(Transform t) {
    return new Movement(Math.hypot(t.m00(), t.m10()), Math.toDegrees(Math.atan2(t.m10(), t.m00())), new Vec3(t.tx(), t.ty(), t.tz()));
  }

  /** To the millimetre and to a ten-thousandth of a degree, as findings and the command line show it. */
  Movement rounded() {
    double angle = Math.rint(degrees * 1e4) / 1e4;
    return new Movement(Math.abs(factor - 1) < 1e-6 ? 1 : factor, angle, new Vec3(milli(shift.x()), milli(shift.y()), milli(shift.z())));
  }

  private static double milli(double m) {
    return Math.rint(m * 1000) / 1000 + 0.0;
  }

  /** For people: {@code lengths times 0.3048, turned by 90° about its origin, moved by x +12 m, y -3.5 m, z 0 m}. */
  public String words() {
    Movement r = rounded();
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

  /** As the command line takes it: {@code 12,-3.5,0,90}. */
  public String argument() {
    Movement r = rounded();
    String text = number(r.shift.x()) + "," + number(r.shift.y()) + "," + number(r.shift.z());
    if (r.degrees != 0 || r.factor != 1) {
      text += "," + number(r.degrees);
    }
    return r.factor == 1 ? text : text + "," + number(r.factor);
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
   * @throws IllegalArgumentException with a message for people where the text is something else
   */
  public static Movement parse(String text) {
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
    return new Movement(n[4], n[3], new Vec3(n[0], n[1], n[2]));
  }
}
