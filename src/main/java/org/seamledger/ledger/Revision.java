package org.seamledger.ledger;

import java.util.Locale;
import java.util.Optional;

/**
 * What people call one analysis among those of its project: everywhere the same, on the page, in answers and in reports. Revisions stand in
 * the order of their numbers and runs, whenever they were analysed.
 *
 * @param number the server's own number where the model comes from a server, else counted from 1 within the project
 * @param run from 1: which of the analyses with this number it is
 * @param origin the revision on the server, where it is that revision alone
 */
public record Revision(Numbering numbering, int number, int run, Optional<Origin> origin) {

  /** Whose numbers count. */
  public enum Numbering {
    /** The project's own. */
    OWN,
    /** The server's: the analysis is of one of its revisions alone. */
    SERVER,
    /** An upload to a project of a server, which has no number there: it stands behind the newest revision that was there before it. */
    UPLOAD;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    static Numbering of(String word) {
      return valueOf(word.toUpperCase(Locale.ROOT));
    }
  }

  /** Short, and different from all others of the project: {@code 5}, {@code 5, run 2}. */
  public String label() {
    return (numbering == Numbering.UPLOAD ? "upload after " : "") + number + (run > 1 ? ", run " + run : "");
  }

  /** As in a sentence, with what its author wrote with it: {@code revision 5 (roof raised)}. */
  public String words() {
    String words = numbering == Numbering.UPLOAD ? label().replace("after ", "after revision ") : "revision " + label();
    return words + origin.map(Origin::comment).filter(c -> !c.isBlank()).map(c -> " (" + c.strip() + ")").orElse("");
  }
}
