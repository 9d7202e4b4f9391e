/**
 * Keeps analyses, what people said about them, and the difference between two of them. The only room that knows SQL.
 *
 * <p>Everything that belongs together is written in one transaction, of an SQLite file in write-ahead mode with full synchronisation or of
 * a PostgreSQL database: an analysis is either there whole, with its junction and finding lists and the reviews carried over from the
 * revision before, or not at all. {@link org.seamledger.ledger.StorageSchema} has the tables, {@link org.seamledger.ledger.Engine} what
 * differs between the two.
 */
package org.seamledger.ledger;
