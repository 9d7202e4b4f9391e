package org.seamledger.step;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.finding.Sha256;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Progress;

/** Whoever hashes a file, and wherever a thread takes over, the hash is that of all its bytes. */
class FileHashTest {

  private static final String HEAD = "ISO-10303-21;HEADER;ENDSEC;DATA;#1=A('";
  private static final String TAIL = "');ENDSEC;END-ISO-10303-21;";

  @TempDir
  private Path folder;

  private Path file(int size, String tail) throws IOException {
    byte[] bytes = new byte[size];
    new Random(size).nextBytes(bytes);
    for (int i = 0; i < size; i++) {
      bytes[i] = (byte) ('a' + (bytes[i] & 15));
    }
    byte[] head = HEAD.getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    System.arraycopy(head, 0, bytes, 0, head.length);
    byte[] end = tail.getBytes(java.nio.charset.StandardCharsets.US_ASCII);
    System.arraycopy(end, 0, bytes, size - end.length, end.length);
    return Files.write(folder.resolve("model.ifc"), bytes);
  }

  @ParameterizedTest
  @ValueSource(ints = {1000, (1 << 24) - 1, 1 << 24, (1 << 24) + 1, 40_000_003})
  void hashesAllBytes(int size) throws IOException {
    Path model = file(size, TAIL + "behind the end\n");
    try (StepFile file = StepFile.open(FileChannel.open(model, StandardOpenOption.READ), "model.ifc", Progress.NONE)) {
      assertThat(file.sha256()).isEqualTo(Sha256.hex(Files.readAllBytes(model)));
      assertThat(file.sha256()).hasSize(64);
      assertThat(file.keywordOf(1)).isEqualTo("A");
    }
  }

  @Test
  void endsItsThreadWithTheFile() throws IOException {
    FileChannel channel = FileChannel.open(file(40_000_003, "no end"), StandardOpenOption.READ);
    assertThatThrownBy(() -> StepFile.open(channel, "model.ifc", Progress.NONE)).isInstanceOf(UnreadableModelException.class);
    assertThat(channel.isOpen()).isFalse();
  }

  @Test
  void readingThatBreaksOffIsAFailure() throws IOException {
    FileChannel channel = FileChannel.open(file(40_000_003, TAIL), StandardOpenOption.READ);
    FileBytes bytes = new FileBytes(channel);
    try (FileHash hash = new FileHash(bytes)) {
      channel.close();
      hash.add(0, ByteBuffer.allocate(10).array(), 0, 10);
      if (hash.readsForItself()) {
        assertThatThrownBy(hash::hex).isInstanceOf(UncheckedIOException.class);
      }
    }
  }
}
