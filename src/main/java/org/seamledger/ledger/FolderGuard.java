package org.seamledger.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Keeps a data folder for one process; the lock goes when the process goes, however it ends. */
final class FolderGuard implements AutoCloseable {

  private final FileChannel channel;

  private FolderGuard(FileChannel channel) {
    this.channel = channel;
  }

  /** Takes a folder, which is made where there is none. */
  static FolderGuard take(Path folder) {
    try {
      Files.createDirectories(folder);
      FileChannel channel = FileChannel.open(folder.resolve("in-use"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (tryLock(channel) == null) {
        channel.close();
        throw new LedgerException(LedgerException.Reason.STORAGE,
            "The data folder " + folder + " is in use by another running server; stop it, or name another folder.");
      }
      return new FolderGuard(channel);
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "The data folder " + folder + " cannot be used: " + e.getMessage(), e);
    }
  }

  private static FileLock tryLock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "Storage did not close: " + e.getMessage(), e);
    }
  }
}
