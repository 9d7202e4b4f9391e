package org.seamledger.quantity.system;

/** Ridges; {@code vented} where air leaves there. */
public record RidgeSettings(boolean vented) {
}
