package org.seamledger.detail;

/** On which faces of a junction a part or a line of it lies. */
public enum On {
  /** Once on every face that ends at the line: both sides of a ridge, the one side of an eave. */
  EACH_FACE("each-face"),
  /** On the faces that lie below the line, falling away from it: a ridge's two, the lower one of a transition. */
  FACE_BELOW("face-below"),
  /** On the faces that lie above the line and drain into it: the upper one of a transition. */
  FACE_ABOVE("face-above"),
  /** Once along the line, whatever ends there: a cap, a flashing, a counterflashing. */
  LINE("line");

  private final String word;

  On(String word) {
    this.word = word;
  }

  /** The word used in {@code shapes/details-content.ttl}. */
  public String word() {
    return word;
  }
}
