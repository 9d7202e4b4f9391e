package org.seamledger.cli;

/** A service that runs, in this process or in one of its own. */
interface RunningService extends AutoCloseable {

  /** Where its page is. */
  String url();

  /** Ends it, as a user does who stops it. */
  @Override
  void close();
}
