package org.seamledger.takeoff;

import org.seamledger.progress.Progress;

/** What an analysis is busy with, in the order in which it happens. */
enum Stage {
  READING("reading the models", 25),
  ROOF("finding the roof's faces", 35),
  JUNCTIONS("measuring where they end", 4),
  KINDS("asking the shapes for each kind", 5),
  LAYOUT("laying out panels", 10),
  DETAILS("choosing details", 4),
  NODES("finding where lines meet", 2),
  QUANTITIES("adding up quantities", 11),
  REVIEW("reviewing the design", 4);

  private final String words;
  private final int weight;

  /** @param weight how much of the time it takes, about, of a hundred */
  Stage(String words, int weight) {
    this.words = words;
    this.weight = weight;
  }

  /** Begins this stage of a whole analysis. */
  Progress of(Progress whole) {
    return whole.stage(words(), fraction(0), fraction(1));
  }

  /**
   * How much of the work is done in the middle of this stage, 0 to 1.
   *
   * @param share of the stage that is done
   */
  double fraction(double share) {
    double done = weight * share;
    double all = 0;
    for (Stage s : values()) {
      done += s.ordinal() < ordinal() ? s.weight : 0;
      all += s.weight;
    }
    return done / all;
  }

  /** For people: what is being done. */
  String words() {
    return words;
  }
}
