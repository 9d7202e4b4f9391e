package org.seamledger.shacl;

import org.seamledger.finding.Severity;

/**
 * A rule that a thing breaks.
 *
 * @param message with fact names in braces, to be filled in
 * @param reason why it matters
 * @param action what to do
 * @param who does it
 * @param once whether it is said once, with all its places
 */
public record Breach(String code, Severity severity, String message, String reason, String action, String who, boolean once) {
}
