package org.seamledger.geometry;

import java.util.Collection;

/** An axis-parallel box in metres. {@link #EMPTY} has min above max; {@link #EVERYWHERE} is unbounded. */
public record Box3(double minX, double minY, double minZ, double maxX, double maxY, double maxZ) {

  private static final double INF = Double.POSITIVE_INFINITY;

  public static final Box3 EMPTY = new Box3(INF, INF, INF, -INF, -INF, -INF);
  public static final Box3 EVERYWHERE = new Box3(-INF, -INF, -INF, INF, INF, INF);

  /** The smallest box around points, metres; empty around none. */
  public static Box3 of(Collection<Vec3> points) {
    Box3 box = EMPTY;
    for (Vec3 p : points) {
      box = box.with(p);
    }
    return box;
  }

  /** Whether no point is in it. */
  public boolean isEmpty() {
    return minX > maxX || minY > maxY || minZ > maxZ;
  }

  /** Whether every side is finite, or it is empty. */
  public boolean isBounded() {
    return isEmpty() || Double.isFinite(maxX - minX + maxY - minY + maxZ - minZ);
  }

  /** The smallest box that holds this one and a point. */
  public Box3 with(Vec3 p) {
    return new Box3(Math.min(minX, p.x()), Math.min(minY, p.y()), Math.min(minZ, p.z()),
        Math.max(maxX, p.x()), Math.max(maxY, p.y()), Math.max(maxZ, p.z()));
  }

  /** The smallest box that holds both. */
  public Box3 union(Box3 o) {
    return new Box3(Math.min(minX, o.minX), Math.min(minY, o.minY), Math.min(minZ, o.minZ),
        Math.max(maxX, o.maxX), Math.max(maxY, o.maxY), Math.max(maxZ, o.maxZ));
  }

  /** What both have in common; empty where they are apart. */
  public Box3 intersection(Box3 o) {
    Box3 box = new Box3(Math.max(minX, o.minX), Math.max(minY, o.minY), Math.max(minZ, o.minZ),
        Math.min(maxX, o.maxX), Math.min(maxY, o.maxY), Math.min(maxZ, o.maxZ));
    return box.isEmpty() ? EMPTY : box;
  }

  /** Every side moved outwards by metres; an empty box stays empty. */
  public Box3 grown(double by) {
    return isEmpty() ? this : new Box3(minX - by, minY - by, minZ - by, maxX + by, maxY + by, maxZ + by);
  }

  /** Whether they have a point in common, a side or corner included. */
  public boolean overlaps(Box3 o) {
    return minX <= o.maxX && o.minX <= maxX && minY <= o.maxY && o.minY <= maxY && minZ <= o.maxZ && o.minZ <= maxZ;
  }

  /** The middle, metres; the box must be bounded and not empty. */
  public Vec3 centre() {
    return new Vec3((minX + maxX) / 2, (minY + maxY) / 2, (minZ + maxZ) / 2);
  }

  /** Length of the space diagonal; zero for an empty box. */
  public double diagonal() {
    return isEmpty() ? 0 : Math.sqrt((maxX - minX) * (maxX - minX) + (maxY - minY) * (maxY - minY) + (maxZ - minZ) * (maxZ - minZ));
  }
}
