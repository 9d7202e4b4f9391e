package org.seamledger.detail;

/**
 * What a finding of the design means.
 *
 * @param reason why it matters
 * @param action what to do
 * @param who does it: {@code architect}, {@code engineer} or {@code roofer}
 * @param once whether it is said once, with all its places
 */
public record Advice(String reason, String action, String who, boolean once) {

  /** By the roofer, place by place. */
  public Advice(String reason, String action) {
    this(reason, action, "roofer", false);
  }
}
