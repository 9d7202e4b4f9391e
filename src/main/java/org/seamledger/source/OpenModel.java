package org.seamledger.source;

import java.io.IOException;
import java.nio.channels.SeekableByteChannel;

/**
 * A model's bytes, ready to read.
 *
 * @param file name without folders, as results show it
 * @param channel the unpacked bytes; closing it removes the temporary file, if there is one
 * @param bytes size after unpacking
 */
public record OpenModel(String file, SeekableByteChannel channel, long bytes) implements AutoCloseable {

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
