package org.seamledger.site;

import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/**
 * The way from a model's own world into a map: scale, turn anticlockwise, move.
 *
 * <pre>
 * E = eastings  + cos · kx · x − sin · ky · y
 * N = northings + sin · kx · x + cos · ky · y
 * H = height    + kz · z
 * </pre>
 *
 * <p>Source: ISO 16739-1, IfcMapConversion and IfcMapConversionScaled: the axes are scaled, turned anticlockwise by
 * arctan(XAxisOrdinate / XAxisAbscissa), then moved by Eastings, Northings and OrthogonalHeight; the vertical axes stay parallel. A rigid
 * operation moves only.
 *
 * @param eastingsM metres, whatever the map's unit is; so are {@code northingsM} and {@code heightM}
 * @param cos of the turn of the world's x axis against east
 * @param kx metres of map for one metre of world along x; likewise {@code ky} and {@code kz}
 * @param crs name of the map's coordinate reference system, or the empty string
 */
public record MapConversion(double eastingsM, double northingsM, double heightM, double cos, double sin, double kx, double ky, double kz,
    String crs) {

  /** Parts of a map that differ by less than this (of a linear map, or metres) are rounding of the files' decimals. */
  private static final double ROUNDING = 1e-9;

  /** @throws IllegalArgumentException where a number is not finite, a scale not above zero, or (cos, sin) no direction */
  public MapConversion {
    if (!Double.isFinite(eastingsM + northingsM + heightM)) {
      throw new IllegalArgumentException("eastings, northings and height must be finite");
    }
    if (!(kx > 0 && ky > 0 && kz > 0 && Double.isFinite(kx + ky + kz))) {
      throw new IllegalArgumentException("a map's scale must be above zero, found " + kx + ", " + ky + ", " + kz);
    }
    double length = Math.hypot(cos, sin);
    if (!(length > 1e-9) || !Double.isFinite(length)) {
      throw new IllegalArgumentException("the direction of the x axis in the map has no length");
    }
    cos /= length;
    sin /= length;
    crs = crs.trim();
  }

  /** With one scale for all axes. */
  public static MapConversion of(double eastingsM, double northingsM, double heightM, double cos, double sin, double scale, String crs) {
    return new MapConversion(eastingsM, northingsM, heightM, cos, sin, scale, scale, scale, crs);
  }

  /** Easting, northing and height of a point of the model's own world. */
  public Vec3 toMap(Vec3 p) {
    return linear().apply(p).plus(new Vec3(eastingsM, northingsM, heightM));
  }

  /**
   * From this model's own world into another's, through the map that both share. Map coordinates are only ever subtracted from each other,
   * so that eastings of thousands of kilometres cost no digit; two equal conversions give exactly {@link Transform#IDENTITY}.
   */
  public Transform into(MapConversion other) {
    Transform back = other.linear().inverse();
    Vec3 shift = new Vec3(eastingsM - other.eastingsM, northingsM - other.northingsM, heightM - other.heightM);
    Transform t = Transform.translation(back.applyDirection(shift)).after(back.after(linear()));
    return isIdentity(t) ? Transform.IDENTITY : t;
  }

  private Transform linear() {
    return new Transform(cos * kx, -sin * ky, 0, 0, sin * kx, cos * ky, 0, 0, 0, 0, kz, 0);
  }

  private static boolean isIdentity(Transform t) {
    return near(t.m00(), 1) && near(t.m11(), 1) && near(t.m22(), 1) && near(t.m01(), 0) && near(t.m10(), 0)
        && Math.abs(t.tx()) < 1e-6 && Math.abs(t.ty()) < 1e-6 && Math.abs(t.tz()) < 1e-6;
  }

  private static boolean near(double a, double b) {
    return Math.abs(a - b) < ROUNDING;
  }

  /** Whether both name the same reference system, or one of them none: case, blanks and the authority's name don't matter. */
  public boolean sameMap(MapConversion other) {
    String a = key(crs);
    String b = key(other.crs);
    return a.isEmpty() || b.isEmpty() || a.equals(b);
  }

  private static String key(String name) {
    String key = name.toUpperCase(java.util.Locale.ROOT).replaceAll("[^A-Z0-9]", "");
    return key.startsWith("EPSG") ? key.substring(4) : key;
  }
}
