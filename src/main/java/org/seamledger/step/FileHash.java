package org.seamledger.step;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.seamledger.finding.Sha256;
import org.seamledger.progress.Aside;

/**
 * The SHA-256 of a file, of the blocks that its reader comes by. Of a large file a thread of its own hashes the rest as soon as there is a
 * processor to spare: it reads for itself, out of the operating system's cache, so that neither of the two waits for the other.
 */
final class FileHash implements AutoCloseable {

  /** The hash of fewer bytes costs less than a thread. */
  private static final long LARGE = 1 << 24;
  private static final int BLOCK = 1 << 18;

  private final FileBytes bytes;
  private final MessageDigest digest = Sha256.digest();
  private Aside<Void> rest;
  private String hex;
  private volatile boolean closed;

  FileHash(FileBytes bytes) {
    this.bytes = bytes;
  }

  /** Takes the file's next bytes, which stand at an offset. */
  void add(long offset, byte[] buffer, int from, int length) {
    if (rest == null && bytes.size() - offset >= LARGE) {
      rest = Aside.ifSpare(() -> readFrom(offset)).orElse(null);
    }
    if (rest == null) {
      digest.update(buffer, from, length);
    }
  }

  /** Whether {@link #add} is no longer needed. */
  boolean readsForItself() {
    return rest != null;
  }

  private Void readFrom(long offset) {
    byte[] block = new byte[BLOCK];
    try {
      int n;
      for (long at = offset; !closed && (n = bytes.read(at, block, 0, BLOCK)) > 0; at += n) {
        digest.update(block, 0, n);
      }
      return null;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * In lower-case hexadecimal, when all bytes have been added.
   *
   * @throws UncheckedIOException where the thread couldn't read them
   */
  synchronized String hex() {
    if (hex == null) {
      if (rest != null) {
        rest.get();
      }
      hex = HexFormat.of().formatHex(digest.digest());
    }
    return hex;
  }

  /** Ends the thread, whether it is done or not. */
  @Override
  public void close() {
    closed = true;
    if (rest != null) {
      rest.close();
    }
  }
}
