package org.seamledger.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Files that were written long ago and what is done with them, while other processes may do the same. */
final class OldFiles {

  private OldFiles() {
  }

  /** All files below a folder, none where it is not there. */
  static List<Path> below(Path root) {
    if (!Files.isDirectory(root)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(root)) {
      return all.filter(Files::isRegularFile).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether a file is there and was written, or marked as used, before a moment. */
  static boolean isOlder(Path file, Instant moment) {
    try {
      return Files.getLastModifiedTime(file).toInstant().isBefore(moment);
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Removes a file.
   *
   * @param withFolder whether its folder goes with it where nothing else is in there
   * @return whether it went
   */
  static boolean removed(Path file, boolean withFolder) {
    try {
      boolean gone = Files.deleteIfExists(file);
      if (withFolder && isEmpty(file.getParent())) {
        Files.deleteIfExists(file.getParent());
      }
      return gone;
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean isEmpty(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isEmpty();
    }
  }

  /** Removes a folder with all that is in it. */
  static void removeTree(Path root) {
    if (!Files.isDirectory(root)) {
      return;
    }
    try (Stream<Path> all = Files.walk(root)) {
      for (Path p : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(p);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
