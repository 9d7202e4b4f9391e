package org.seamledger.step;

import java.io.IOException;
import org.seamledger.progress.Progress;

/**
 * A file's bytes from front to back through one buffer, hashed on their way.
 *
 * <p>Behind the last byte stand eight semicolons and eight apostrophes, so that scans for either need no test for the end in their inner
 * loop: they stop there, and see that their position is at or behind {@link #limit}.
 */
final class Feed {

  /** Bytes before {@link #position} that a refill keeps. */
  static final int LOOKBACK = 64;
  /** How far behind {@link #limit} a scan may look without leaving the buffer. */
  static final int PAD = 160;
  /** The most that {@link #ensure} can be asked for. */
  static final int AHEAD = 512;
  /** Bytes read at once; fits the processor's second-level cache. */
  static final int BLOCK = 256 * 1024;

  final byte[] buffer;
  int position;
  int limit;
  /** Offset in the file of the buffer's first byte. */
  long base;

  private final FileBytes bytes;
  private final int block;
  private final Progress progress;
  private final FileHash hash;
  private boolean ended;

  Feed(FileBytes bytes, FileHash hash, int block, Progress progress) {
    this.progress = progress;
    this.bytes = bytes;
    this.block = block;
    this.buffer = new byte[LOOKBACK + AHEAD + block + PAD];
    this.hash = hash;
  }

  long offset() {
    return base + position;
  }

  /** Reads on. {@link #position} and {@link #base} change, their sum doesn't. False at the end of the file. */
  boolean refill() throws IOException {
    if (ended) {
      return false;
    }
    progress.at(Math.min(1, (base + limit) / (double) Math.max(1, bytes.size())));
    int from = Math.max(0, position - LOOKBACK);
    System.arraycopy(buffer, from, buffer, 0, limit - from);
    base += from;
    position -= from;
    limit -= from;
    int read = bytes.read(base + limit, buffer, limit, block);
    ended = read < block;
    hash.add(base + limit, buffer, limit, read);
    limit += read;
    for (int i = 0; i < 8; i++) {
      buffer[limit + i] = ';';
      buffer[limit + 8 + i] = '\'';
    }
    return read > 0;
  }

  /** Sees to it that {@link #AHEAD} bytes are in the buffer from {@link #position} on, or all there are. */
  void ensure() throws IOException {
    if (limit - position < AHEAD) {
      refill();
    }
  }

  /** Moves to an offset not before the position's, at most the file's end. */
  void skipTo(long offset) throws IOException {
    while (offset > base + limit) {
      position = limit;
      if (!refill()) {
        return;
      }
    }
    position = (int) (offset - base);
  }

  /** The byte at {@link #position}, or -1 at the end of the file. */
  int peek() throws IOException {
    return position < limit || refill() ? buffer[position] & 0xFF : -1;
  }

  /** The byte behind {@link #position}, or -1 where the file ends before it. */
  int peekNext() throws IOException {
    return position + 1 < limit || refill() && position + 1 < limit ? buffer[position + 1] & 0xFF : -1;
  }

  /** Reads what is left, so that the hash covers the file. */
  void hashRest() throws IOException {
    position = limit;
    while (!hash.readsForItself() && refill()) {
      position = limit;
    }
  }
}
