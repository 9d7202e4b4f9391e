package org.seamledger.quantity.system;

/**
 * The eaves.
 *
 * @param gutters whether a gutter hangs along every eave, for details, findings and order alike; one that the model has counts anyway
 */
public record EaveSettings(boolean gutters) {
}
