package org.seamledger.source;

import java.io.IOException;
import java.nio.channels.SeekableByteChannel;

/**
 * A model's bytes, ready to read.
 *
 * @param name what people call it, with or without folders: for messages
 * @param channel the unpacked bytes; closing it removes the temporary file, if there is one
 * @param bytes size after unpacking
 */
public record OpenModel(String name, SeekableByteChannel channel, long bytes) implements AutoCloseable {

  /** The name without folders, as results show it. */
  public String file() {
    return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
