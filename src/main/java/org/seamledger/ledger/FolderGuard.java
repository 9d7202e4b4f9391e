package org.seamledger.ledger;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Collections;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Keeps a data folder for one process; the lock goes when the process goes, however it ends. */
final class FolderGuard implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(FolderGuard.class);
  private static final Set<PosixFilePermission> OF_OTHERS = Set.of(PosixFilePermission.GROUP_READ, PosixFilePermission.OTHERS_READ,
      PosixFilePermission.GROUP_EXECUTE, PosixFilePermission.OTHERS_EXECUTE);

  private final FileChannel channel;

  private FolderGuard(FileChannel channel) {
    this.channel = channel;
  }

  /** Takes a folder, which is made where there is none. */
  static FolderGuard take(Path folder) {
    try {
      createPrivate(folder);
      FileChannel channel = FileChannel.open(folder.resolve("in-use"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (tryLock(channel) == null) {
        channel.close();
        throw new LedgerException(LedgerException.Reason.IN_USE,
            "The data folder " + folder + " is in use by another running server; stop it, or name another folder.");
      }
      return new FolderGuard(channel);
    } catch (IOException e) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "The data folder " + folder + " cannot be used: " + fault(e) + ".", e);
    }
  }

  /** Models and results are nobody's business but this user's; a folder that is there already keeps the rights that it was given. */
  static void createPrivate(Path folder) throws IOException {
    boolean hasRights = folder.getFileSystem().supportedFileAttributeViews().contains("posix");
    if (Files.isDirectory(folder) || !hasRights) {
      Files.createDirectories(folder);
      if (hasRights && !Collections.disjoint(Files.getPosixFilePermissions(folder), OF_OTHERS)) {
        LOG.warn("The data folder {} can be read by other users of this machine; chmod 700 keeps them out.", folder);
      }
    } else {
      Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    }
  }

  /** A failure's own message may be no more than a path. */
  private static String fault(IOException e) {
    if (e instanceof AccessDeniedException a) {
      return "this user may not write " + a.getFile();
    }
    if (e instanceof FileAlreadyExistsException a) {
      return a.getFile() + " is a file and no folder";
    }
    return e instanceof FileSystemException f && f.getReason() != null ? f.getReason() + " (" + f.getFile() + ")"
        : String.valueOf(e.getMessage());
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
      throw new LedgerException(LedgerException.Reason.STORAGE, "The data folder did not close: " + fault(e) + ".", e);
    }
  }
}
