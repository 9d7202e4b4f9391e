package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/** @param cricketAbove curbs wider across the fall get a cricket (International Residential Code R903.2.2: 30 in) */
public record CurbSettings(@Range(min = "6 in", max = "120 in") Measure cricketAbove) {
}
