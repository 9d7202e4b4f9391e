package org.seamledger.ids;

/** A facet that elements have to meet, may or mustn't. @param instructions for whoever writes models; may be empty */
public record Requirement(IdsFacet facet, Occurrence occurrence, String instructions) {
}
