package org.seamledger.samples;

import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;

/** What a thing is made of. */
public sealed interface Body permits Extrusion, Cylinder, Shell {

  Body moved(Transform t);

  /** Some point of the body. */
  Vec3 anchor();
}
