package org.seamledger.export.submittal;

import java.util.List;

/**
 * A place that contents and bookmarks lead to.
 *
 * @param id of an element there
 */
record OutlineEntry(String title, String id, List<OutlineEntry> below) {

  OutlineEntry {
    below = List.copyOf(below);
  }

  OutlineEntry(String title, String id) {
    this(title, id, List.of());
  }
}
