package org.seamledger.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Where a result goes: standard output, or a file that appears whole or not at all. */
final class Output {

  private static final int BUFFER = 1 << 16;

  /** Writes a result. */
  @FunctionalInterface
  interface Content {
    void write(OutputStream out) throws IOException;
  }

  private Output() {
  }

  /**
   * Writes to the stream and flushes it. A reader that has seen enough and closed its end is no error.
   *
   * @throws IOException if writing fails for another reason
   */
  static void toStream(OutputStream stream, Content content) throws IOException {
    OutputStream out = new BufferedOutputStream(stream, BUFFER);
    try {
      content.write(out);
      out.flush();
    } catch (IOException e) {
      if (!"Broken pipe".equals(e.getMessage())) {
        throw e;
      }
    }
  }

  /**
   * Writes beside the file first and then moves it into place, so that a reader never sees half a result and a failure leaves the old
   * one. What is there and no regular file, such as a pipe or a device, is written to directly.
   */
  static void toFile(Path file, Content content) throws IOException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      try (OutputStream out = Files.newOutputStream(file)) {
        toStream(out, content);
      }
      return;
    }
    Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
    Path half = target.resolveSibling("." + target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(half, StandardOpenOption.CREATE_NEW,
          StandardOpenOption.WRITE), BUFFER)) {
        content.write(out);
      }
      Files.move(half, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(half);
    }
  }
}
