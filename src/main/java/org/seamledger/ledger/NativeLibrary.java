package org.seamledger.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.sqlite.SQLiteJDBCLoader;

/**
 * The embedded engine's native library, which it unpacks anew in each process and which a killed one leaves behind: in a folder of the data
 * folder that this process alone uses, so that the next start can sweep it.
 */
final class NativeLibrary {

  private static final Logger LOG = LoggerFactory.getLogger(NativeLibrary.class);
  private static final String PLACE = "org.sqlite.tmpdir";
  private static boolean loaded;

  private NativeLibrary() {
  }

  /** Loads it from there, once in a process; from the temporary folder where it can't be, such as on a disk that runs no programs. */
  static synchronized void unpackIn(Path folder) {
    if (loaded || System.getProperty(PLACE) != null) {
      return;
    }
    try {
      Files.createDirectories(folder);
      sweep(folder);
      System.setProperty(PLACE, folder.toAbsolutePath().toString());
      loaded = SQLiteJDBCLoader.initialize();
    } catch (Exception | LinkageError e) {
      LOG.debug("native library not in {}", folder, e);
    } finally {
      System.clearProperty(PLACE);
    }
  }

  private static void sweep(Path folder) throws IOException {
    List<Path> left;
    try (Stream<Path> files = Files.list(folder)) {
      left = files.filter(f -> f.getFileName().toString().startsWith("sqlite-")).toList();
    }
    for (Path f : left) {
      Files.deleteIfExists(f);
    }
  }
}
