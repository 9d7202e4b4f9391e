package org.seamledger.junction;

/**
 * One thing that is known of a line, a face or a roof system and that rules can ask for. {@link FactList} has them all.
 *
 * @param name in results, rules and messages; numbers carry their unit in it
 * @param meaning what it is, as the head of the rules' files says it
 * @param measured how it is had
 */
public record Fact(String name, FactType type, FactUnit unit, String meaning, String measured) {

  /** What a fact's value is. */
  public enum FactType {
    NUMBER, COUNT, FLAG, WORD;
  }

  /** Units of numbers. Rules see each rounded to so many decimals: noise in a model can't tip a limit. */
  public enum FactUnit {
    /** A thousandth of a degree. */
    DEGREES(3),
    /** A hundredth of a millimetre. */
    METRES(5),
    /** 0 to 1. */
    SHARE(6), SQUARE_METRES(3), LITRES_PER_SECOND(3), PASCALS(6), MEGAPASCALS(6), CELSIUS(6), KELVINS(6), NONE(6);

    private final int decimals;

    FactUnit(int decimals) {
      this.decimals = decimals;
    }

    public int decimals() {
      return decimals;
    }
  }
}
