package org.seamledger.roof;

import org.seamledger.geometry.Region;

/** Something that a roof face ends at: a wall, a penetration, a hole that nothing fills, or the side of another roof element. */
public sealed interface Obstacle extends Contact {

  /** GlobalId of the element, or of the opening; empty for a hole that is modelled by its outline only. */
  String globalId();

  /** Its IFC class; empty where it is no element. */
  String ifcClass();

  /** Where it stands in the face's plane, in the plane's coordinates, metres; the whole thing. */
  Region footprint();

  /** How far it stands above the face's plane, vertically, as far as measured, metres; zero for a hole. */
  double heightM();

  /** Whether the footprint's outline is a circle or an ellipse. */
  boolean round();

  @Override
  default boolean sameAs(Contact o) {
    return o instanceof Obstacle other && other.getClass() == getClass() && other.globalId().equals(globalId());
  }

  /**
   * A wall that stands on the face or beside it.
   *
   * @param gapM how far beside it, metres; zero where it is not known, or nearer than edges that meet
   */
  record Wall(String globalId, String ifcClass, Region footprint, double heightM, double gapM) implements Obstacle {
    Wall(String globalId, String ifcClass, Region footprint, double heightM) {
      this(globalId, ifcClass, footprint, heightM, 0);
    }

    /** The same wall so far beside a face's edge. */
    Wall apart(double gap) {
      return new Wall(globalId, ifcClass, footprint, heightM, gap);
    }

    @Override
    public int precedence() {
      return 2;
    }

    @Override
    public boolean round() {
      return false;
    }
  }

  /**
   * Something that goes through the roof or stands in it, or fills a hole in it.
   *
   * @param passage how it goes through the roof
   */
  record Penetration(String globalId, String ifcClass, Region footprint, double heightM, boolean round, Passage passage)
      implements Obstacle {
    @Override
    public int precedence() {
      return 1;
    }

    Penetration with(Passage other) {
      return new Penetration(globalId, ifcClass, footprint, heightM, round, other);
    }

    /** The same where the roof ends at another outline, such as that of the hole it stands in. */
    Penetration in(Region outline, boolean isRound) {
      return new Penetration(globalId, ifcClass, outline, heightM, isRound, passage);
    }
  }

  /** A hole that nothing fills, modelled as an opening or only by the element's outline. */
  record OpenHole(String globalId, String ifcClass, Region footprint, boolean round) implements Obstacle {
    @Override
    public int precedence() {
      return 3;
    }

    @Override
    public double heightM() {
      return 0;
    }
  }

  /** The side of another roof element that comes up through the face or stands on it. */
  record RoofSide(String globalId, String ifcClass, Region footprint, double heightM) implements Obstacle {
    @Override
    public int precedence() {
      return 4;
    }

    @Override
    public boolean round() {
      return false;
    }
  }
}
