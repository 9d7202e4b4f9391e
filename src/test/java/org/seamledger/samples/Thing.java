package org.seamledger.samples;

import java.util.List;
import org.seamledger.geometry.Transform;

/** A building element that is not a part of the roof. */
public record Thing(String name, Role role, List<Body> bodies) {

  /** What it is; the writer finds the schema's class for it. */
  public enum Role {
    WALL, PARAPET, CHIMNEY, PIPE, DUCT, FITTING, COLUMN, WINDOW, PROXY, FLASHING, GUTTER, OUTLET, DOOR, SPACE
  }

  public Thing {
    bodies = List.copyOf(bodies);
  }

  Thing moved(Transform t) {
    return new Thing(name, role, bodies.stream().map(b -> b.moved(t)).toList());
  }

  Thing named(String other) {
    return new Thing(other, role, bodies);
  }
}
