package org.seamledger.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Files that are on the disk, not only on the way there, before anybody is told that they are kept. */
public final class SyncedFiles {

  private SyncedFiles() {
  }

  /**
   * Returns when a file that was just written, its entry in its folder, and the folder's in the one above will outlive a loss of power.
   *
   * @throws IOException where it can't be written out, such as on a full disk
   */
  public static void sync(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Path folder = file.toAbsolutePath().getParent();
    for (int up = 0; up < 2 && folder != null; up++) {
      syncFolder(folder);
      folder = folder.getParent();
    }
  }

  /** Systems that don't let a folder be opened (Windows) write entries out by themselves. */
  private static void syncFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Not offered here.
    }
  }
}
