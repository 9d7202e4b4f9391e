package org.seamledger.detail;

/**
 * What a person chose for one junction in place of the rules, and why.
 *
 * @param junction its id
 * @param kind one of {@link KindBook#ids}; empty: the rules' kind stands
 * @param detail id of a sealing detail, or {@code none} for a line that is not to be sealed by this job; empty: the rules choose the
 *     detail, for the chosen kind where one is chosen
 * @param reason for people, never blank
 */
public record Decision(String junction, String kind, String detail, String reason) {

  /** @throws IllegalArgumentException where nothing is chosen or the reason is missing */
  public Decision {
    require(!junction.isBlank(), "a decision names its junction");
    require(!kind.isEmpty() || !detail.isEmpty(), "a decision names a kind or a detail, or both");
    require(!reason.isBlank(), "a decision gives its reason");
  }

  private static void require(boolean holds, String message) {
    if (!holds) {
      throw new IllegalArgumentException(message);
    }
  }
}
