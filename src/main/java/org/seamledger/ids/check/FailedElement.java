package org.seamledger.ids.check;

/**
 * An element that a specification fails for.
 *
 * @param model the file's name
 * @param instance its number in the file
 * @param globalId empty for what has none
 * @param ifcClass as the schema writes it
 * @param reason in words: what is wrong
 */
public record FailedElement(String model, long instance, String globalId, String ifcClass, String name, String reason) {
}
