package org.seamledger.geometry;

import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * The great circle of the sphere near which directions lie.
 *
 * <p>Its axis a makes Σ (nᵢ·a)² least: the eigenvector of Σ nᵢ nᵢᵀ whose eigenvalue is least, which the adjugate of that matrix stretches
 * most (its eigenvalues are the products of the two others). Two directions alone, however far apart, tell less: each misses the circle a
 * little, and what they miss it by turns the axis.
 */
public final class GreatCircle {

  /** The share of the second eigenvector goes down by the ratio of two eigenvalues each time; for directions near a circle a tenth. */
  private static final int STEPS = 30;

  private GreatCircle() {
  }

  /**
   * The unit axis at a right angle to the circle; either of the two.
   *
   * @param directions unit vectors, not all the same or opposite
   */
  public static Vec3 axis(List<Vec3> directions) {
    Vec3 x = sum(directions, Vec3::x);
    Vec3 y = sum(directions, Vec3::y);
    Vec3 z = sum(directions, Vec3::z);
    Vec3 ofX = y.cross(z);
    Vec3 ofY = z.cross(x);
    Vec3 ofZ = x.cross(y);
    Vec3 axis = Stream.of(ofX, ofY, ofZ).max(Comparator.comparingDouble(Vec3::length)).orElseThrow().unit();
    for (int i = 0; i < STEPS; i++) {
      axis = new Vec3(ofX.dot(axis), ofY.dot(axis), ofZ.dot(axis)).unit();
    }
    return axis;
  }

  private static Vec3 sum(List<Vec3> directions, ToDoubleFunction<Vec3> component) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 n : directions) {
      sum = sum.plus(n.times(component.applyAsDouble(n)));
    }
    return sum;
  }
}
