package org.seamledger.cli;

/** What a command does. */
interface Task {

  /** Does it and gives the exit status. */
  int run(Session session);
}
