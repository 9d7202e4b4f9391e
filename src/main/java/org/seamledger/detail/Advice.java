package org.seamledger.detail;

/**
 * What a finding of the design means.
 *
 * @param reason why it matters
 * @param action what to do
 */
public record Advice(String reason, String action) {
}
