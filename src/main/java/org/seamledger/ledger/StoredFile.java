package org.seamledger.ledger;

/**
 * A file that an analysis reads.
 *
 * @param name as its owner calls it: text for people, never a path to open
 * @param path where this process finds it; chosen by the program or on its command line, never by a request
 * @param bytes its size
 * @param role {@code model} or {@code system}
 */
public record StoredFile(String name, String path, long bytes, String role) {
}
