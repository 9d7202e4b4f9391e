package org.seamledger.cli;

import java.io.Console;

/** Whether a person reads what the process writes. */
final class Terminal {

  private Terminal() {
  }

  /** Whether standard input and output are a terminal. From Java 22 on there is a console in any case, which then says so itself. */
  static boolean isThere() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true;
    }
  }
}
