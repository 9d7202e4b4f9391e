package org.seamledger.finding;

import java.io.IOException;
import java.util.List;

/** Tells a disk without room from other faults of reading and writing: the platform has no exception for it, only the system's words. */
public final class FullDisk {

  /** ENOSPC and EDQUOT as the C library words them, ERROR_DISK_FULL as Windows does. */
  private static final List<String> WORDS = List.of("No space left on device", "Disk quota exceeded", "not enough space on the disk");

  private FullDisk() {
  }

  /** Whether this was thrown, or caused, by a disk that is full. */
  public static boolean causes(Throwable thrown) {
    for (Throwable t = thrown; t != null; t = t.getCause()) {
      String message = t instanceof IOException ? String.valueOf(t.getMessage()) : "";
      if (WORDS.stream().anyMatch(message::contains)) {
        return true;
      }
    }
    return false;
  }
}
