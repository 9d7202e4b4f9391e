package org.seamledger.ledger;

import java.util.Optional;

/**
 * A project on a server of models that this program has to do with.
 *
 * @param server what the operator calls the server
 * @param served the server's number for the project
 * @param name what people call the project
 * @param project where the analyses of its revisions are, empty before the first
 * @param on whether people asked for it to be watched
 * @param checked when the server was last asked for its revisions and answered: instant, ISO 8601 UTC
 * @param problemCode short code of what went wrong at the last attempt, or empty
 * @param problem one line for people, or empty
 */
public record Watch(String server, long served, String name, Optional<String> project, boolean on, Optional<String> checked,
    Optional<String> problemCode, Optional<String> problem) {
}
