package org.seamledger.step;

import java.nio.ByteBuffer;
import java.nio.channels.NonWritableChannelException;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;

/** Bytes in memory, read like a file; deals out at most so many at once. */
final class MemoryChannel implements SeekableByteChannel {

  private final byte[] bytes;
  private final int most;
  private long position;
  private boolean open = true;

  MemoryChannel(byte[] bytes, int most) {
    this.bytes = bytes;
    this.most = most;
  }

  static MemoryChannel of(String text) {
    return new MemoryChannel(text.getBytes(StandardCharsets.ISO_8859_1), Integer.MAX_VALUE);
  }

  @Override
  public int read(ByteBuffer into) {
    if (position >= bytes.length) {
      return -1;
    }
    int n = (int) Math.min(Math.min(into.remaining(), most), bytes.length - position);
    into.put(bytes, (int) position, n);
    position += n;
    return n;
  }

  @Override
  public int write(ByteBuffer from) {
    throw new NonWritableChannelException();
  }

  @Override
  public long position() {
    return position;
  }

  @Override
  public SeekableByteChannel position(long to) {
    position = to;
    return this;
  }

  @Override
  public long size() {
    return bytes.length;
  }

  @Override
  public SeekableByteChannel truncate(long size) {
    throw new NonWritableChannelException();
  }

  @Override
  public boolean isOpen() {
    return open;
  }

  @Override
  public void close() {
    open = false;
  }
}
