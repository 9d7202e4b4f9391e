package org.seamledger.step;

import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.SeekableByteChannel;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Progress;

/**
 * An exchange structure, indexed: its instances by id and by keyword, decoded when asked for.
 *
 * <p>Instances are judged when they are decoded, so every method that decodes may throw {@link UnreadableModelException}, and
 * {@link UncheckedIOException} where the file can't be read any more. Safe for use by several threads.
 */
public final class StepFile implements AutoCloseable {

  /**
   * The keyword given to an instance that is of several entities at once ("external mapping"). Its parameters are {@link Value.Typed}, one
   * for each entity, that hold an {@link Value.Aggregate} of that entity's parameters.
   */
  public static final String COMPLEX = "()";

  private static final int FIRST_LOOK = 64 * 1024;
  /** Longer instances would not fit the heap when decoded, which takes ten to twenty bytes for one. */
  private static final long LONGEST = Math.min(1 << 30, Math.max(1 << 24, Runtime.getRuntime().maxMemory() / 16));

  private final String name;
  private final FileBytes bytes;
  private final KeywordTable keywords;
  private final RecordIndex records;
  private final Header header;
  private final FileHash hash;
  private final long dataEnd;
  private final RecordBytes reading;
  private final InstanceLookup shared;

  private StepFile(String name, FileBytes bytes, FileHash hash, IndexPass pass) throws IOException {
    this.name = name;
    this.bytes = bytes;
    this.keywords = pass.keywords();
    this.records = pass.records();
    this.header = HeaderReader.read(bytes, pass.headerSpans());
    this.hash = hash;
    this.dataEnd = pass.dataEnd();
    this.reading = new ScatteredBytes(bytes);
    this.shared = lookup();
  }

  /**
   * Indexes a file's bytes in one pass.
   *
   * @param channel is closed with the result, or here where that fails or {@code progress} stops it
   * @param name the file's name for messages
   * @param progress receives the progress of the pass
   * @throws UnreadableModelException where the bytes are no exchange structure, or a broken one
   */
  public static StepFile open(SeekableByteChannel channel, String name, Progress progress) throws IOException {
    return open(channel, name, Feed.BLOCK, progress);
  }

  /** @param block bytes that the index pass reads at once */
  static StepFile open(SeekableByteChannel channel, String name, int block, Progress progress) throws IOException {
    FileBytes bytes = new FileBytes(channel);
    FileHash hash = new FileHash(bytes);
    try {
      IndexPass pass = new IndexPass(bytes, hash, block, progress);
      pass.run();
      StepFile file = new StepFile(name, bytes, hash, pass);
      pass.hashRest();
      return file;
    } catch (Misread e) {
      UnreadableModelException unreadable = unreadable(name, bytes, e);
      hash.close();
      channel.close();
      throw unreadable;
    } catch (IOException | RuntimeException | Error e) {
      hash.close();
      channel.close();
      throw e;
    }
  }

  public Header header() {
    return header;
  }

  /** The file's length in bytes. */
  public long size() {
    return bytes.size();
  }

  /** Of the file's bytes, in lower-case hexadecimal; of a large file it may take a while until it is known. */
  public String sha256() {
    return hash.hex();
  }

  /** Keywords of all instances, ascending. */
  public Set<String> keywords() {
    Set<String> result = new TreeSet<>();
    for (int i = 0; i < keywords.size(); i++) {
      if (records.count(i) > 0) {
        result.add(keywords.name(i));
      }
    }
    return result;
  }

  /**
   * Ids that several instances have, ascending, at most a hundred. Of each the first instance in the file counts, the others are left out.
   */
  public List<Long> repeatedIds() {
    return records.repeated();
  }

  /** Ids of an entity's instances, ascending; subtypes not included. */
  public long[] idsOf(String keyword) {
    int[] handles = handles(keyword);
    long[] ids = new long[handles.length];
    for (int i = 0; i < ids.length; i++) {
      ids[i] = records.id(handles[i]);
    }
    Arrays.sort(ids);
    return ids;
  }

  /** The keyword of an id's instance, or the empty string where no instance has that id. */
  public String keywordOf(long id) {
    int handle = records.find(id);
    return handle < 0 ? "" : keywords.name(records.keyword(handle));
  }

  /** The instance with an id. */
  public synchronized Optional<Instance> find(long id) {
    return shared.find(id);
  }

  /** Finds instances for one thread, which then waits for no other. */
  public InstanceLookup lookup() {
    return new InstanceLookup(this, records, new ScatteredBytes(bytes));
  }

  /** Decodes an entity's instances one after another in the file's order. */
  public void forEach(String keyword, Consumer<Instance> consumer) {
    RecordBytes sequence = new SequentialBytes(bytes);
    for (int handle : handles(keyword)) {
      consumer.accept(decode(handle, sequence));
    }
  }

  /** Shows the references in an entity's instances one after another in the file's order, the rest undecoded: for skimming many. */
  public void forEachReferences(String keyword, ReferenceVisitor visitor) {
    RecordBytes sequence = new SequentialBytes(bytes);
    References references = new References();
    for (int handle : handles(keyword)) {
      read(handle, sequence, (text, from, to, offset) -> {
        ReferenceReader.read(text, from, to, offset, references);
        return null;
      });
      visitor.visit(records.id(handle), references);
    }
  }

  /** The largest id of all instances; 0 where there is none. */
  public long largestId() {
    return records.largestId();
  }

  /** Offset of the word ENDSEC that ends the last data section: before it, another instance may be written. */
  public long dataEnd() {
    return dataEnd;
  }

  /** Where an instance stands: offsets of its first byte and behind its semicolon; empty where no instance has that id. */
  public synchronized Optional<Span> span(long id) {
    int handle = records.find(id);
    return handle < 0 ? Optional.empty() : Optional.of(read(handle, reading, (text, start, end, offset) -> {
      ParameterReader reader = new ParameterReader(text, start, end, offset);
      reader.instance();
      return new Span(offset, reader.offset());
    }));
  }

  /** Offsets of bytes in the file, the second one behind the last of them. */
  public record Span(long from, long to) {
  }

  /** The byte at an offset, or -1 behind the file's end. */
  public int byteAt(long offset) throws IOException {
    byte[] one = new byte[1];
    return bytes.read(offset, one, 0, 1) == 1 ? one[0] & 0xFF : -1;
  }

  /** Copies bytes as they stand, from an offset up to another one. */
  public void copy(long from, long to, OutputStream out) throws IOException {
    byte[] block = new byte[FIRST_LOOK];
    for (long at = from; at < to;) {
      int n = bytes.read(at, block, 0, (int) Math.min(block.length, to - at));
      if (n <= 0) {
        throw new EOFException(name + " ends at byte " + at + ", where it went on before");
      }
      out.write(block, 0, n);
      at += n;
    }
  }

  @Override
  public void close() throws IOException {
    hash.close();
    bytes.close();
  }

  private synchronized int[] handles(String keyword) {
    int number = keywords.number(keyword);
    return number == KeywordTable.UNKNOWN ? new int[0] : records.handles(number);
  }

  Instance decode(int handle, RecordBytes from) {
    return read(handle, from, (text, start, end, offset) -> new ParameterReader(text, start, end, offset).instance());
  }

  private interface Reading<T> {
    T read(byte[] text, int from, int to, long offset);
  }

  /**
   * Reads a record. Where it ends isn't kept, only where the next one starts, and a long comment may stand between: a long stretch is
   * looked at from its start, and whole only if the record doesn't end before.
   */
  private <T> T read(int handle, RecordBytes from, Reading<T> reading) {
    long offset = records.offset(handle);
    long whole = records.endBefore(handle) - offset;
    try {
      for (int length = (int) Math.min(whole, FIRST_LOOK);; length = (int) Math.min(Math.min(whole, LONGEST), 16L * length)) {
        int place = from.load(offset, length);
        try {
          return reading.read(from.buffer(), place, from.end(place, length), offset);
        } catch (Misread e) {
          // At the end of a first look a number may be cut, and then seem wrong.
          if (length == whole) {
            throw unreadable(name, bytes, e);
          }
          if (length == LONGEST) {
            throw unreadable(name, bytes, new Misread(offset, "an instance of at most " + LONGEST + " bytes", "a longer one"));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(name + ": " + e.getMessage(), e);
    }
  }

  private static UnreadableModelException unreadable(String name, FileBytes bytes, Misread e) throws IOException {
    Place place = Place.of(bytes, e.offset);
    return new UnreadableModelException(name, place.line(), place.column(), e.expected, e.found);
  }
}
