package org.seamledger.ledger;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.Deflater;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Junctions, joints and nodes of a result, each whole, as JSON that is compressed by the chunk. */
final class WholeItems {

  private static final int CHUNK = 1 << 18;
  private static final JsonFactory JSON = LedgerReader.PLAIN.getFactory().copy().setRootValueSeparator("").setCodec(LedgerReader.PLAIN);

  private record Place(int chunk, int from, int to) {
  }

  /** Compressed quickly: chunks live in memory, and time counts more there than a tenth of their size. */
  private static final class Quick extends GZIPOutputStream {
    Quick(OutputStream out) throws IOException {
      super(out);
      def.setLevel(Deflater.BEST_SPEED);
    }
  }

  private final List<byte[]> chunks = new ArrayList<>();
  private final Map<String, Place> places = new HashMap<>();
  private final ByteArrayOutputStream open = new ByteArrayOutputStream();
  private final JsonGenerator out;
  private int begun;

  WholeItems() throws IOException {
    out = JSON.createGenerator(open);
  }

  /** Takes the next item, an object, which is written to its end before {@link #written}. */
  JsonGenerator next() {
    begun = open.size();
    return out;
  }

  /** The item is written. */
  void written(String id) throws IOException {
    out.flush();
    places.put(id, new Place(chunks.size(), begun, open.size()));
    if (open.size() > CHUNK) {
      close();
    }
  }

  /** Compresses what is written so far. */
  void close() throws IOException {
    if (open.size() > 0) {
      ByteArrayOutputStream packed = new ByteArrayOutputStream();
      try (OutputStream gzip = new Quick(packed)) {
        open.writeTo(gzip);
      }
      chunks.add(packed.toByteArray());
      open.reset();
    }
  }

  /** An item's JSON; empty where there is none of that id. */
  Optional<byte[]> of(String id) {
    return Optional.ofNullable(places.get(id)).map(p -> Arrays.copyOfRange(unpacked(chunks.get(p.chunk())), p.from(), p.to()));
  }

  private static byte[] unpacked(byte[] gzip) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(gzip))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
