package org.seamledger.element;

/**
 * Where a part of a building comes from.
 *
 * @param file name without folders
 * @param sha256 of the model's bytes after unpacking, lower-case hexadecimal
 * @param schema {@code IFC2X3}, {@code IFC4} or {@code IFC4X3}
 * @param lengthUnit such as {@code metre}, {@code millimetre}, {@code foot}
 * @param application the program that wrote it, with its version, or the empty string
 * @param bytes size after unpacking
 */
public record ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes) {
}
