package org.seamledger.source;

import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;

/** Bytes in memory, to read. */
public final class ByteArrayChannel implements SeekableByteChannel {

  private final byte[] bytes;
  private long position;
  private boolean open = true;

  public ByteArrayChannel(byte[] bytes) {
    this.bytes = bytes;
  }

  @Override
  public int read(ByteBuffer into) {
    if (position >= bytes.length) {
      return -1;
    }
    int n = (int) Math.min(into.remaining(), bytes.length - position);
    into.put(bytes, (int) position, n);
    position += n;
    return n;
  }

  @Override
  public int write(ByteBuffer from) {
    throw new UnsupportedOperationException();
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
    throw new UnsupportedOperationException();
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
