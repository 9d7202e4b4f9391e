package org.seamledger.detail;

/**
 * Something to look at before work goes on.
 *
 * @param before what must not be done before, such as {@code the cap is set}
 * @param check what to see
 */
public record HoldPoint(String before, String check) {
}
