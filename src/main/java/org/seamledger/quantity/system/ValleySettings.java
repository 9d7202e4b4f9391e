package org.seamledger.quantity.system;

import org.seamledger.measure.Measure;

/** @param cleatOffset of the panels' cleat from the valley's middle line, on the face, square to the line */
public record ValleySettings(@Range(min = "1 in", max = "36 in") Measure cleatOffset) {
}
