package org.seamledger.source;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import org.seamledger.finding.UnreadableModelException;

/**
 * A file: STEP text as it is, gzipped, or in a zip ({@code .ifczip}). Which of them the first bytes tell, not the name.
 *
 * @param path where it is
 * @param name what people call it, with or without folders: messages name it so
 * @param limits for packed files
 */
public record ModelFile(Path path, String name, UnpackLimits limits) implements ModelSource {

  public ModelFile(Path path) {
    this(path, UnpackLimits.DEFAULT);
  }

  public ModelFile(Path path, UnpackLimits limits) {
    this(path, path.toString(), limits);
  }

  public ModelFile(Path path, String name) {
    this(path, name, UnpackLimits.DEFAULT);
  }

  @Override
  public OpenModel open() throws IOException {
    if (Files.isDirectory(path)) {
      throw unreadable("a model file", "a folder; analyze --each and check --each take folders");
    }
    if (!Files.exists(path)) {
      throw unreadable("a model file", "no file of that name");
    }
    if (!Files.isReadable(path)) {
      throw unreadable("a model file", "one that may not be read");
    }
    SeekableByteChannel channel = channel();
    requireNoOther(channel);
    return new OpenModel(name, channel, channel.size());
  }

  private void requireNoOther(SeekableByteChannel channel) throws IOException {
    ByteBuffer first = ByteBuffer.allocate(ForeignFormat.LOOK);
    channel.position(0);
    for (int n = 0; n >= 0 && first.hasRemaining();) {
      n = channel.read(first);
    }
    channel.position(0);
    Optional<ForeignFormat> other = ForeignFormat.of(Arrays.copyOf(first.array(), first.position()));
    if (other.isPresent() || first.position() == 0) {
      channel.close();
      throw new UnreadableModelException(name, 1, 1, "a STEP file, which starts with ISO-10303-21;",
          other.map(ForeignFormat::found).orElse("an empty file"));
    }
  }

  private SeekableByteChannel channel() throws IOException {
    return switch (Packing.of(path)) {
      case ZIP -> Unpacker.unzip(path, name, limits);
      case GZIP -> Unpacker.gunzip(path, name, limits);
      case NONE -> FileChannel.open(path, StandardOpenOption.READ);
    };
  }

  private UnreadableModelException unreadable(String expected, String found) {
    return new UnreadableModelException(name, 0, 0, expected, found);
  }
}
