package org.seamledger.portfolio;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipException;
import org.seamledger.finding.Sha256;

/**
 * The entries of a portfolio in a folder, a file each, which is there whole or not at all; and a mark for each model that is being
 * analysed. A mark that is left over says that the process died meanwhile. One process at a time uses a folder.
 */
public final class EntryStore implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int KEY_BYTES = 12;

  private final Path entries;
  private final Path marks;
  private final FileChannel lock;
  /** Models being analysed, with the deaths noted before. */
  private final Map<String, Integer> running = new TreeMap<>();
  private boolean isClosed;

  private EntryStore(Path entries, Path marks, FileChannel lock) {
    this.entries = entries;
    this.marks = marks;
    this.lock = lock;
  }

  /**
   * Opens a folder, which is made where there is none.
   *
   * @throws IOException where it can't be used, with a message for people
   */
  public static EntryStore open(Path folder) throws IOException {
    Path entries = Files.createDirectories(folder.resolve("entries"));
    Path marks = Files.createDirectories(folder.resolve("entries").resolve("begun"));
    FileChannel lock = FileChannel.open(entries.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      if (lock.tryLock() != null) {
        return new EntryStore(entries, marks, lock);
      }
    } catch (OverlappingFileLockException e) {
      // By this process: the same answer.
    }
    lock.close();
    throw new IOException("another run is writing there");
  }

  /** A short name for files about a model. */
  static String key(String name) {
    return HexFormat.of().formatHex(Sha256.of(name), 0, KEY_BYTES);
  }

  private Path file(String name) {
    String key = key(name);
    return entries.resolve(key.substring(0, 2)).resolve(key + ".json.gz");
  }

  /** The entry of a model; empty where there is none, or none that this version of the program can read. */
  Optional<ModelEntry> get(String name) throws IOException {
    try (InputStream in = new GZIPInputStream(Files.newInputStream(file(name)))) {
      return Optional.of(JSON.readValue(in, ModelEntry.class)).filter(e -> e.name().equals(name));
    } catch (NoSuchFileException | JacksonException | EOFException | ZipException e) {
      return Optional.empty();
    }
  }

  /**
   * The hash of the file that the entry of a model was made of, where no other need be made of that file; else the empty string.
   *
   * @param basis what else results depend on now
   * @param again whether models without a result are to be analysed again even where that would say the same
   */
  public String known(String name, String basis, boolean again) throws IOException {
    return get(name).filter(e -> e.basis().equals(basis) && (again ? e.state() == ModelState.DONE : e.state().isFinal()))
        .map(ModelEntry::file).orElse("");
  }

  /** An entry as it is kept. */
  public static byte[] packed(ModelEntry entry) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(bytes, 1 << 16)) {
      JSON.writeValue(out, entry);
    }
    return bytes.toByteArray();
  }

  void put(ModelEntry entry) throws IOException {
    put(entry.name(), packed(entry));
  }

  /** Keeps the entry of a model that was packed before. */
  public void put(String name, byte[] packed) throws IOException {
    Path file = file(name);
    Files.createDirectories(file.getParent());
    Path half = file.resolveSibling(file.getFileName() + ".part");
    Files.write(half, packed);
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** How often the process died at a model since it was last analysed to an end. */
  int deaths(String name) throws IOException {
    try {
      String text = Files.readString(marks.resolve(key(name))).strip();
      return text.matches("\\d{1,3}") ? Integer.parseInt(text) : 0;
    } catch (NoSuchFileException e) {
      return 0;
    }
  }

  /** Notes that a model is being analysed: should the process die now, that is another death at it. */
  synchronized void begin(String name) throws IOException {
    if (isClosed) {
      throw new IOException("the process ends");
    }
    int before = deaths(name);
    running.put(name, before);
    Files.writeString(marks.resolve(key(name)), Integer.toString(before + 1));
  }

  /** Notes that it was analysed to an end. */
  synchronized void end(String name) throws IOException {
    running.remove(name);
    Files.deleteIfExists(marks.resolve(key(name)));
  }

  /** What is still being analysed was not what ended the process. */
  @Override
  public synchronized void close() {
    isClosed = true;
    try {
      for (Map.Entry<String, Integer> model : running.entrySet()) {
        Path mark = marks.resolve(key(model.getKey()));
        if (model.getValue() == 0) {
          Files.deleteIfExists(mark);
        } else {
          Files.writeString(mark, model.getValue().toString());
        }
      }
      running.clear();
      lock.close();
    } catch (IOException e) {
      // They count as deaths then: the next run takes these models one by one.
    }
  }
}
