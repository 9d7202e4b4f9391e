package org.seamledger.step;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;

/** The bytes of a file by their offsets. */
final class FileBytes {

  private final SeekableByteChannel channel;
  private final long size;

  FileBytes(SeekableByteChannel channel) throws IOException {
    this.channel = channel;
    this.size = channel.size();
  }

  long size() {
    return size;
  }

  /** Reads up to {@code length} bytes from {@code offset}; fewer only at the end of the file. */
  int read(long offset, byte[] into, int at, int length) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(into, at, length);
    if (channel instanceof FileChannel file) {
      while (buffer.hasRemaining() && file.read(buffer, offset + buffer.position() - at) >= 0) {
        // until full or at the end
      }
      return buffer.position() - at;
    }
    synchronized (channel) {
      channel.position(offset);
      while (buffer.hasRemaining() && channel.read(buffer) >= 0) {
        // until full or at the end
      }
    }
    return buffer.position() - at;
  }

  void close() throws IOException {
    channel.close();
  }
}
