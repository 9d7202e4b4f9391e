package org.seamledger.ifc;

import java.util.Objects;
import org.seamledger.step.StepFile;

/**
 * One model to read.
 *
 * @param file the open exchange structure; it stays the caller's to close
 * @param name file name for people, without folders
 */
public record IfcInput(StepFile file, String name) {
  public IfcInput {
    Objects.requireNonNull(file);
    Objects.requireNonNull(name);
  }
}
