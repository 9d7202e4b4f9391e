package org.seamledger.takeoff;

/** What an analysis is busy with, in the order in which it happens. */
public enum Stage {
  READING("reading the models"),
  ROOF("finding the roof's faces"),
  JUNCTIONS("measuring where they end"),
  KINDS("asking the shapes for each kind"),
  DETAILS("laying out panels and choosing details"),
  QUANTITIES("adding up quantities"),
  REVIEW("reviewing the design"),
  DONE("done");

  private final String words;

  Stage(String words) {
    this.words = words;
  }

  /** How much of the stages lies before this one, 0 to 1. */
  public double fraction() {
    return ordinal() / (double) DONE.ordinal();
  }

  /** For people: what is being done. */
  public String words() {
    return words;
  }
}
