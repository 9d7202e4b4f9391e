package org.seamledger.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * A body that answers one question: what is your section with this plane? A section of a Boolean result is the same Boolean of
 * the operands' sections, so no three-dimensional Boolean kernel is needed.
 *
 * <p>Coordinates are metres in the building's local system, Z up.
 */
public sealed interface Solid permits Mesh, HalfSpace, Solid.Union, Solid.Difference, Solid.Intersection {

  /**
   * The section of this solid with {@code plane}, in the plane's coordinates, taken just to one side of the plane.
   *
   * @param coincidence whatever lies within this distance of the plane (metres) counts as lying in it
   * @param window the part of the plane that matters, bounded; unbounded solids are cut to it
   */
  Region section(Plane plane, double coincidence, SectionSide side, Region window);

  /**
   * What this solid leaves of a region of {@code plane}; the same as the region without {@link #section}.
   *
   * @param kept within the window
   */
  default Region takenFrom(Region kept, Plane plane, double coincidence, SectionSide side, Region window) {
    return kept.isEmpty() ? kept : kept.minus(section(plane, coincidence, side, window));
  }

  /** Every plane that can carry a part of this solid's surface, with repetitions, in an order that depends on the input only. */
  void eachSurface(Consumer<Surface> consumer);

  /**
   * A plane that may carry a part of a surface.
   *
   * @param at a point of it, on the surface where the surface is bounded
   * @param corners of the bounded part; none for the unbounded plane of a half-space
   * @param area of the bounded part, square metres; zero for the unbounded plane of a half-space
   */
  record Surface(Plane plane, Vec3 at, List<Vec3> corners, double area) {
    public Surface {
      corners = List.copyOf(corners);
    }

    /** The same seen from its other side. */
    public Surface flipped() {
      return new Surface(plane.flipped(), at, corners, area);
    }

    /** Whether it has an end. */
    public boolean isBounded() {
      return !corners.isEmpty();
    }

    /** Whether every corner lies within this distance, metres, of a plane; false where it has none. */
    public boolean liesIn(Plane other, double withinM) {
      return isBounded() && corners.stream().allMatch(p -> Math.abs(other.height(p)) <= withinM);
    }
  }

  /** A box that holds the solid, metres; not always the smallest. */
  Box3 bounds();

  /** The same body after a map, which must not be singular. */
  Solid transformed(Transform t);

  /** Everything in any of the parts. */
  record Union(List<Solid> parts) implements Solid {
    public Union {
      parts = List.copyOf(parts);
    }

    @Override
    public Region section(Plane plane, double coincidence, SectionSide side, Region window) {
      return Region.unionOf(parts.stream().map(p -> p.section(plane, coincidence, side, window)).toList());
    }

    /** Half-spaces one by one, each a cut by a line; of bounded parts, which are many, the union is taken away at once. */
    @Override
    public Region takenFrom(Region kept, Plane plane, double coincidence, SectionSide side, Region window) {
      Region left = kept;
      List<Solid> bounded = new ArrayList<>();
      for (Solid part : parts) {
        if (part instanceof HalfSpace) {
          left = part.takenFrom(left, plane, coincidence, side, window);
        } else {
          bounded.add(part);
        }
      }
      return left.isEmpty() || bounded.isEmpty() ? left : left.minus(new Union(bounded).section(plane, coincidence, side, window));
    }

    @Override
    public void eachSurface(Consumer<Surface> consumer) {
      parts.forEach(p -> p.eachSurface(consumer));
    }

    @Override
    public Box3 bounds() {
      return parts.stream().map(Solid::bounds).reduce(Box3.EMPTY, Box3::union);
    }

    @Override
    public Solid transformed(Transform t) {
      return new Union(parts.stream().map(p -> p.transformed(t)).toList());
    }
  }

  /** {@code body} without {@code tool}. */
  record Difference(Solid body, Solid tool) implements Solid {
    @Override
    public Region section(Plane plane, double coincidence, SectionSide side, Region window) {
      return tool.takenFrom(body.section(plane, coincidence, side, window), plane, coincidence, side, window);
    }

    @Override
    public void eachSurface(Consumer<Surface> consumer) {
      body.eachSurface(consumer);
      tool.eachSurface(p -> consumer.accept(p.flipped()));
    }

    @Override
    public Box3 bounds() {
      return body.bounds();
    }

    @Override
    public Solid transformed(Transform t) {
      return new Difference(body.transformed(t), tool.transformed(t));
    }
  }

  /** What both have in common. */
  record Intersection(Solid first, Solid second) implements Solid {
    @Override
    public Region section(Plane plane, double coincidence, SectionSide side, Region window) {
      Region kept = first.section(plane, coincidence, side, window);
      return kept.isEmpty() ? kept : kept.intersect(second.section(plane, coincidence, side, window));
    }

    @Override
    public void eachSurface(Consumer<Surface> consumer) {
      first.eachSurface(consumer);
      second.eachSurface(consumer);
    }

    @Override
    public Box3 bounds() {
      return first.bounds().intersection(second.bounds());
    }

    @Override
    public Solid transformed(Transform t) {
      return new Intersection(first.transformed(t), second.transformed(t));
    }
  }
}
