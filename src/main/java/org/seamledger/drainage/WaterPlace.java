package org.seamledger.drainage;

/**
 * A face or a junction that water comes to.
 *
 * @param isFace false for a junction
 * @param id of the face or the junction
 */
public record WaterPlace(boolean isFace, String id) implements Comparable<WaterPlace> {

  public static WaterPlace face(String id) {
    return new WaterPlace(true, id);
  }

  public static WaterPlace junction(String id) {
    return new WaterPlace(false, id);
  }

  /** Faces first, in the order of their numbers; then junctions. */
  @Override
  public int compareTo(WaterPlace o) {
    int c = Boolean.compare(o.isFace, isFace);
    c = c != 0 || !isFace ? c : Integer.compare(id.length(), o.id.length());
    return c != 0 ? c : id.compareTo(o.id);
  }
}
