package org.seamledger.cli;

import java.io.IOException;

/** A result can't be written. */
final class OutputException extends RuntimeException {

  private static final long serialVersionUID = 1;

  OutputException(String where, IOException cause) {
    super("can't write " + where + ": " + cause.getMessage(), cause);
  }
}
