package org.seamledger.ledger;

/**
 * A result as stored.
 *
 * @param sha256 of the plain JSON bytes, hexadecimal
 * @param bytes length of the plain JSON
 * @param gzip the JSON, compressed
 */
@SuppressWarnings("ArrayRecordComponent")
public record StoredLedger(String sha256, long bytes, byte[] gzip) {
}
