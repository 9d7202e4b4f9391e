package org.seamledger.source;

import java.time.Instant;

/**
 * One state of a project's model on a server.
 *
 * @param project the project's number on the server
 * @param id the server's own number for the revision; a later one is larger
 * @param number what people call it: the revisions of a project are counted from 1
 * @param comment what its author wrote with it, or the empty string
 * @param created when it was checked in
 */
public record ServedRevision(long project, long id, int number, String comment, Instant created) {
}
