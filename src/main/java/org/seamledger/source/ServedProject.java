package org.seamledger.source;

/**
 * A project on a server of models.
 *
 * @param id the server's own number for it
 * @param name what people call it
 * @param schema {@code IFC2X3} or {@code IFC4}
 */
public record ServedProject(long id, String name, String schema) {
}
