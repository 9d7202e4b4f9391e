package org.seamledger.cli;

/** What the process's exit status says. */
final class ExitStatus {

  static final int DONE = 0;
  /** Done, and a finding at or above {@code --fail-on} exists. */
  static final int FINDINGS = 1;
  /** The command line, or a file of settings, rules or servers that it names, is wrong. */
  static final int USAGE = 2;
  /** A model can't be read, or a server of models did not do what it was asked. */
  static final int UNREADABLE = 3;
  /** A fault of this program. */
  static final int INTERNAL = 70;
  /** The result can't be written, or the disk has no room for what is unpacked or fetched on the way to it. */
  static final int OUTPUT = 74;

  private ExitStatus() {
  }
}
