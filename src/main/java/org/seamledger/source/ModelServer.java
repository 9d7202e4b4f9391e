package org.seamledger.source;

import java.util.List;

/**
 * A server that keeps building models, each project as a row of revisions; logged in from birth until it is closed. One thread at a time.
 * Every method throws {@link ModelServerException} where the server can't be reached, refuses, or answers with something unusable, and
 * {@link java.util.concurrent.CancellationException} where its thread is interrupted.
 */
public interface ModelServer extends AutoCloseable {

  /** The projects that this user may read, ordered by name, then id. */
  List<ServedProject> projects();

  /** The revisions of a project, the oldest first. */
  List<ServedRevision> revisions(long project);

  /**
   * A revision's model. It is downloaded when it is opened, to a temporary file that goes when it is closed. Its name is the project's
   * with the revision's number, such as {@code Boat house, revision 2}.
   */
  ModelSource model(ServedRevision revision);

  /** Leaves a document with a revision, for everybody who may read it. */
  void attach(ServedRevision revision, Attachment document);

  /** The documents of this program's kind that were left with a revision. */
  List<Attachment> attachments(ServedRevision revision);

  /** Logs out. */
  @Override
  void close();
}
