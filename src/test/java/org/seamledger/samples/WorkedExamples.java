package org.seamledger.samples;

import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;
import static org.seamledger.samples.Units.feet;

import org.seamledger.samples.JoinedRoofs.Meeting;

/** Roofs whose quantities are worked by hand: each holds the one line that the example is about, and what a whole roof needs besides. */
final class WorkedExamples {
  private WorkedExamples() {
  }

  /** Gable, ridge 40 ft. */
  static House ridge() {
    return named("ridge 40 ft", Roofs.gable(feet(24), feet(40), per12(6)));
  }

  /** Pyramid on 24 by 24 ft at 6:12: four hips of √(12² + 12² + 6²) = 18 ft. */
  static House regularHip() {
    return named("regular hip", Roofs.hip(feet(24), feet(24), per12(6)));
  }

  /** 8:12 wing of 12 ft span (rise 4 ft) on a 4:12 roof (run 12 ft): valleys of √(6² + 12² + 4²) = 14 ft. */
  static House unequalValley() {
    return named("unequal valley", JoinedRoofs.tee(feet(32), feet(40), per12(4), feet(20), feet(12), feet(8), per12(8), Meeting.CUT));
  }

  /** Lean-to, headwall 12 m. */
  static House metricHeadwall() {
    return named("metric headwall", WalledRoofs.leanTo(4, 12, pitch(15), 0.6));
  }

  /** 40 by 24 ft, 6:12 all round: ridge 16 ft, four hips of 18 ft. */
  static House hipRoof() {
    return named("hip roof", Roofs.hip(feet(24), feet(40), per12(6)));
  }

  /** The same with ends of 9:12: ridge 24 ft, four hips of √244 ft. */
  static House hipRoofSteeperEnds() {
    return named("hip roof with steeper ends", Roofs.hip(feet(24), feet(40), per12(6), per12(9)));
  }

  private static House named(String name, House house) {
    return new House(name).with("", house, 0, 0, 0, 0);
  }
}
