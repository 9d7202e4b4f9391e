package org.seamledger.detail;

/**
 * What belongs to a detail and is counted with the faces beside it, not along the line: underlayment, clips.
 *
 * @param part its name in the trade
 * @param id what it is to drawings, such as {@code clip}
 * @param orderLine id of the order's line in which it is counted
 */
public record FacePart(String part, String id, String orderLine) {

  /** In words, with where it is counted. */
  public String words() {
    return part + " (counted with the faces: " + orderLine + ")";
  }
}
