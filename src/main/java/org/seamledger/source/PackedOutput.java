package org.seamledger.source;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** Writes a changed copy of a model packed as the model is: text, gzip, or a zip with an entry of the same name. */
public final class PackedOutput {

  /** The first moment that a zip can state, so that equal contents give equal bytes. */
  private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  /** Writes what is to be packed. */
  @FunctionalInterface
  public interface Content {
    void write(OutputStream out) throws IOException;
  }

  private PackedOutput() {
  }

  /** @param like the model whose packing is taken; what comes from a server is not packed */
  public static void write(ModelSource like, OutputStream to, Content content) throws IOException {
    Packing packing = like instanceof ModelFile file ? Packing.of(file.path()) : Packing.NONE;
    switch (packing) {
      case NONE -> content.write(to);
      case GZIP -> {
        GZIPOutputStream packed = new GZIPOutputStream(to, 1 << 16);
        content.write(packed);
        packed.finish();
      }
      case ZIP -> {
        ZipOutputStream packed = new ZipOutputStream(to);
        ZipEntry entry = new ZipEntry(entry(((ModelFile) like).path(), like.name()));
        entry.setTimeLocal(NO_TIME);
        packed.putNextEntry(entry);
        content.write(packed);
        packed.closeEntry();
        packed.finish();
      }
    }
  }

  private static String entry(Path path, String name) throws IOException {
    try (ZipFile zip = new ZipFile(path.toFile())) {
      return Unpacker.model(name, Collections.list(zip.entries())).getName();
    }
  }
}
