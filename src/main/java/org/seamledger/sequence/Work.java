package org.seamledger.sequence;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import org.seamledger.shacl.Described;

/**
 * A sort of work, as its shape in {@code shapes/sequence.ttl} describes it; nothing in the program knows one by its id.
 *
 * @param id such as {@code closures}
 * @param label in the words of the trade, lower case
 * @param does what is done, in words
 * @param order of several works that a part conforms to, the lowest counts
 * @param stage 1 to 4: those of a stage come before the next as far as precedence lets them
 * @param rate name of the rate in the roof system
 * @param source a publication, or {@code common practice, no source}
 */
public record Work(String id, String label, String does, int order, int stage, Rate rate, Per per, String source)
    implements Comparable<Work> {

  private static final Set<String> TERMS = Set.of("work", "does", "order", "stage", "rate", "per", "source");
  private static final int STAGES = 4;

  /** What a rate counts. */
  public enum Per {
    /** Area of the face; of its panels without those that are laid in a step at a line. */
    FACE_AREA,
    /** Length of the face's seams. */
    SEAMS,
    /** Length of the line. */
    LINE,
    /** Length of the closures. */
    CLOSURES,
    /** Area of the panels that end at the line with their low end. */
    UPPER_AREA,
    /** Area of the panels that end at a joint with their high end. */
    LOWER_AREA,
    /** Pieces; one where there are none. */
    EACH;

    /** The name in rules and results. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  static Work read(String id, Described d) {
    d.only(TERMS);
    if (!id.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*") || id.startsWith("before-") || id.startsWith("recheck-")) {
      throw d.problem("\"" + id
          + "\" is no name for a work: small letters, digits and single dashes, not beginning with before- or recheck-");
    }
    int stage = d.count("stage", STAGES);
    if (stage < 1 || stage > STAGES) {
      throw d.problem("sl:stage is 1 to " + STAGES);
    }
    return new Work(id, d.label(), d.word("does"), d.count("order", STAGES), stage,
        d.oneOf("rate", Arrays.stream(Rate.values()), Rate::field), d.oneOf("per", Arrays.stream(Per.values()), Per::word),
        d.word("source"));
  }

  /** By order, then by id. */
  @Override
  public int compareTo(Work o) {
    int byOrder = Integer.compare(order, o.order);
    return byOrder != 0 ? byOrder : id.compareTo(o.id);
  }
}
