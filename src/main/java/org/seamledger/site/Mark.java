package org.seamledger.site;

import java.util.Objects;
import org.seamledger.geometry.Box3;

/**
 * An element as far as another model may know it again.
 *
 * @param id GlobalId
 * @param kind IFC class; {@link #HOLE} for an opening of a roof that nothing fills
 * @param service whether it is a pipe, a duct or the like
 * @param box round it, metres, never empty
 */
public record Mark(String id, String kind, boolean service, Box3 box) {

  public static final String HOLE = "hole in a roof";

  public Mark {
    Objects.requireNonNull(id);
    Objects.requireNonNull(kind);
    if (box.isEmpty() || !box.isBounded()) {
      throw new IllegalArgumentException("a mark needs a box");
    }
  }

  double width() {
    return box.maxX() - box.minX();
  }

  double depth() {
    return box.maxY() - box.minY();
  }

  double height() {
    return box.maxZ() - box.minZ();
  }

  /** Kinds that the schemas tell apart and models don't: a standard case is a case. */
  String family() {
    return kind.replace("StandardCase", "").replace("ElementedCase", "");
  }
}
