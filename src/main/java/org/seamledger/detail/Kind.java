package org.seamledger.detail;

import java.util.Locale;

/**
 * A kind of junction, as the shape that decides it describes it in {@code shapes/kinds.ttl}. Everything that differs from kind to kind is
 * said here: nothing else in the program knows a kind by its id.
 *
 * @param id such as {@code level-valley}: what results, decisions and rules say
 * @param label in the words of the trade, lower case
 * @param meaning what it is, in a few words
 * @param line its look on the plan
 * @param section which drawing shows its detail
 * @param order place among the kinds where they are listed
 */
public record Kind(String id, String label, String meaning, Family family, Water water, Line line, Section section, int order)
    implements Comparable<Kind> {

  /** Of what no shape matches, or several do. */
  public static final Kind UNCLASSIFIED = new Kind("unclassified", "unclassified", "no shape, or more than one, claims it", Family.NONE,
      Water.AWAY, Line.OTHER, Section.RIDGE, Integer.MAX_VALUE);

  /** A constant that rules name by a word: {@code HIGH_EDGE} by {@code high-edge}. */
  public interface Worded {
    String name();

    /** The word used in {@code shapes/kinds.ttl} and in results. */
    default String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** What a face ends at. */
  public enum Family implements Worded {
    /** Another face. */
    FACES(Line.BREAK, Section.RIDGE),
    /** Nothing: a free edge. */
    EDGE(Line.EDGE, Section.RAKE),
    WALL(Line.WALL, Section.WALL),
    /** One side of a polygonal penetration, or of a hole. */
    PENETRATION(Line.CURB, Section.CURB_DOWNSLOPE),
    /** A round penetration, all around it. */
    ROUND(Line.CURB, Section.PIPE),
    /** Nothing: the face goes on, its panels are divided here. */
    FIELD(Line.BREAK, Section.LAP),
    /** Whatever it is: the face is level. */
    LEVEL(Line.OTHER, Section.RIDGE),
    /** Not known. */
    NONE(Line.OTHER, Section.RIDGE);

    final Line line;
    final Section section;

    Family(Line line, Section section) {
      this.line = line;
      this.section = section;
    }
  }

  /** Where the face's water goes at the line. */
  public enum Water implements Worded {
    /** Away from the line, or nowhere near it. */
    AWAY,
    /** Over the line and off the roof. */
    OVER,
    /** Into the line and down along it. */
    ALONG,
    /** Into the line, which is level. */
    INTO,
    /** Down beside the line, and against it where it lies obliquely. */
    BESIDE,
    /** Against what stands at the line. */
    AGAINST
  }

  /** Looks of lines on the plan; {@code export} draws them. */
  public enum Line implements Worded {
    RIDGE, VALLEY, BREAK, EAVE, EDGE, WALL, CURB, OTHER
  }

  /** Section drawings that there are; {@code export} draws them. */
  public enum Section implements Worded {
    RIDGE, VALLEY, GUTTER, TRANSITION, EAVE, HIGH_EDGE, RAKE, WALL, SIDEWALL, CURB_UPSLOPE, CURB_SIDE, CURB_DOWNSLOPE, PIPE, LAP, STEP
  }

  /** True for either kind of penetration's line. */
  public boolean atPenetration() {
    return family == Family.PENETRATION || family == Family.ROUND;
  }

  /** In the order in which kinds are listed. */
  @Override
  public int compareTo(Kind o) {
    int c = Integer.compare(order, o.order);
    return c != 0 ? c : id.compareTo(o.id);
  }
}
