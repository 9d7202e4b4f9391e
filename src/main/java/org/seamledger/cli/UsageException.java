package org.seamledger.cli;

/** The command line asks for something that can't be: one line for people. */
final class UsageException extends RuntimeException {

  private static final long serialVersionUID = 1;

  UsageException(String message) {
    super(message);
  }
}
