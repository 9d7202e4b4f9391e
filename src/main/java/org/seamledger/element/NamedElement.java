package org.seamledger.element;

/**
 * An element that a result or a finding speaks of, by what people find it by.
 *
 * @param ifcClass in the standard's spelling
 * @param name as the file has it, or the empty string
 * @param model index of the model it comes from, from 0
 * @param storey name of the storey that it is in, itself or with what it is a part of, or the empty string
 */
public record NamedElement(String globalId, String ifcClass, String name, int model, String storey) {
}
