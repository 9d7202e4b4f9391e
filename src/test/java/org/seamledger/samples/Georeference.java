package org.seamledger.samples;

import org.seamledger.geometry.Vec3;

/**
 * Where a model's own world lies in a map, as the file states it.
 *
 * @param at easting, northing and height of the world's origin, metres
 * @param turnDegrees direction of the world's x axis, anticlockwise from east
 * @param crs name of the reference system
 */
public record Georeference(Vec3 at, double turnDegrees, String crs) {

  /**
   * What a file has to state so that the house lies at {@code house} in the map, however the file's own world turns and shifts it.
   *
   * @param form of the file; not mirrored
   */
  static Georeference of(Georeference house, Form form) {
    double turn = house.turnDegrees - form.turnDegrees();
    double c = StrictMath.cos(StrictMath.toRadians(turn));
    double s = StrictMath.sin(StrictMath.toRadians(turn));
    Vec3 o = form.offset();
    return new Georeference(new Vec3(house.at.x() - (c * o.x() - s * o.y()), house.at.y() - (s * o.x() + c * o.y()), house.at.z() - o.z()),
        turn, house.crs);
  }
}
