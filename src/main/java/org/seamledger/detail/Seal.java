package org.seamledger.detail;

/**
 * Lines of a sealant.
 *
 * @param place where it lies, in words; unique within a detail, except per lap
 * @param id what the place is to drawings, such as {@code closure-foot}
 * @param lines parallel lines on each face (or along the line) that it is on. A bead {@link Run#PER_PIECE} is as long as
 *     {@code lines} times the piece and {@code upstands} times the system's bead upstand; a plug {@link Run#PER_SEAM} {@code lines} times
 *     that upstand; a line {@link Run#PER_LAP} {@code lines} times the girth of {@code part}
 * @param upstands how often a bead per piece turns up at the piece's ends
 * @param size which of the system's sizes a bead has: {@code bead.size}, {@code bead.receiverSize}, {@code bead.clampSize}; empty for
 *     what is no bead
 * @param part id of the metal part whose laps are sealed, or empty
 */
public record Seal(Form form, Role role, Exposure exposure, String place, String id, int lines, On on, Run run, int upstands, String size,
    String part) {

  /** Lines whose id follows from their place. */
  public Seal(Form form, Role role, Exposure exposure, String place, int lines, On on, Run run, int upstands, String size, String part) {
    this(form, role, exposure, place, DerivedIds.seal(place), lines, on, run, upstands, size, part);
  }

  /** The same, its laps those of the part with this id. */
  Seal of(String partId) {
    return new Seal(form, role, exposure, place, id, lines, on, run, upstands, size, partId);
  }

  /** What it is. */
  public enum Form {
    TAPE("tape"), BEAD("bead"), IN_SEAM("in-seam");

    private final String word;

    Form(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** Whether the joint relies on it, after its metal, or it backs something up. */
  public enum Role {
    PRIMARY("primary"), SECONDARY("secondary");

    private final String word;

    Role(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }

  /** Whether weather and eyes reach it. */
  public enum Exposure {
    CONCEALED("concealed"), EXPOSED("exposed");

    private final String word;

    Exposure(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }
  }
}
