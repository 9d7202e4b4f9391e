package org.seamledger.finding;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.ClosedByInterruptException;
import java.util.concurrent.CancellationException;

/**
 * A model can't be read at all: the one exception that bad input ends in. Its message is one human-readable line: file, line, column, what
 * was expected, what was found.
 */
public final class UnreadableModelException extends RuntimeException {

  private static final long serialVersionUID = 1;

  /**
   * @param file name as the user gave it
   * @param line from 1, or 0 where no place in a text can be named
   * @param column from 1, in bytes, or 0
   * @param expected what should stand there
   * @param found what stands there instead
   */
  public UnreadableModelException(String file, long line, long column, String expected, String found) {
    super(file + (line > 0 ? ":" + line + ":" + column : "") + ": expected " + expected + ", found " + found);
  }

  /**
   * What a failure to read a file is.
   *
   * @return to be thrown: this, if the file is why; a cancellation where the reader was interrupted; the failure itself where a disk is
   *     full, for then the file may well be whole
   */
  public static RuntimeException of(String file, IOException e) {
    if (e instanceof ClosedByInterruptException) {
      return new CancellationException("interrupted while reading " + file);
    }
    return FullDisk.causes(e) ? new UncheckedIOException(e)
        : new UnreadableModelException(file, 0, 0, "a file that can be read to its end", String.valueOf(e.getMessage()));
  }
}
