package org.seamledger.ifc.entity;

import java.util.Objects;
import java.util.Optional;
import org.seamledger.site.RigidTransform;
import org.seamledger.step.StepFile;

/**
 * One model to read.
 *
 * @param file the open exchange structure; it stays the caller's to close
 * @param name file name for people, with no more folders than it needs to be told from the others'
 * @param movement that brings the model to the first one, where the caller knows better than the models
 */
public record IfcInput(StepFile file, String name, Optional<RigidTransform> movement) {

  public IfcInput(StepFile file, String name) {
    this(file, name, Optional.empty());
  }

  public IfcInput {
    Objects.requireNonNull(file);
    Objects.requireNonNull(name);
    Objects.requireNonNull(movement);
  }

  /** The name without folders, as results show it. */
  public String bareName() {
    return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  }
}
