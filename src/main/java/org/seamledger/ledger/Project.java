package org.seamledger.ledger;

/** Analyses of one building, newest revision last. */
public record Project(String id, String name, String created, int revisions) {
}
