package org.seamledger.source;

/** The operator's list of servers can't be used. The message is one line, {@code file:line: what is wrong}, and holds no secret. */
public final class ServerListException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  ServerListException(String file, int line, String wrong) {
    super(file + (line > 0 ? ":" + line : "") + ": " + wrong);
  }
}
