package org.seamledger.ledger;

/**
 * A revision on a server of models, as storage knows it.
 *
 * @param server what the operator calls the server
 * @param project the server's number for the project
 * @param projectName what people call the project
 * @param revision the server's own number for the revision, unique on it; a later one is larger
 * @param number what people call the revision: 1 for the project's first
 * @param comment what its author wrote with it, or the empty string
 * @param checkedIn when it was checked in, as the server says: instant, ISO 8601 UTC, or the empty string where nobody noted it
 */
public record Origin(String server, long project, String projectName, long revision, int number, String comment, String checkedIn) {
}
