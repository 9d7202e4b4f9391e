package org.seamledger.export.section;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Kind;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.SheetSubject;
import org.seamledger.finding.Sha256;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.takeoff.Takeoff;

/**
 * What the sections of a result show, in a form that can be kept: a section that is drawn from it is the same text as one from the takeoff.
 * Part 0 has what all sections have in common, the others the lines, about a hundred each: to draw one, two parts are read, each of them
 * compressed. Of records whose shape has changed since nothing is drawn.
 */
public final class StoredSections {

  private static final int LINES_PER_PART = 100;

  private StoredSections() {
  }

  /** Part 0. The hash of the records' shape comes before all that depends on it. */
  record Head(String shape, byte[] common) {
  }

  /**
   * What all sections of a result have in common.
   *
   * @param parts of lines
   * @param details each as a {@link Detail} by itself: a section needs one of them
   */
  record Common(int parts, SheetSubject sheet, RoofSystem system, List<Kind> kinds, List<byte[]> details) {
    Detail detail(int place) throws IOException {
      return RecordCodec.read(Detail.class, details.get(place));
    }
  }

  /** Any other part: each line as a {@link StoredLine} by itself. */
  record Lines(List<Entry> entries) {
  }

  /** @param id of the line */
  record Entry(String id, byte[] line) {
  }

  private static String shape() {
    return Sha256
        .hex(RecordCodec.shape(List.of(Common.class, Detail.class, Lines.class, StoredLine.class)).getBytes(StandardCharsets.UTF_8));
  }

  /** All parts, in their order. */
  public static List<byte[]> write(Takeoff takeoff) {
    List<SectionSubject> subjects = SectionSubject.all(takeoff);
    Map<Kind, Integer> kinds = new LinkedHashMap<>();
    Map<Detail, Integer> details = new LinkedHashMap<>();
    List<Lines> lines = new ArrayList<>();
    for (int i = 0; i <= subjects.size() / LINES_PER_PART; i++) {
      lines.add(new Lines(new ArrayList<>()));
    }
    for (SectionSubject s : subjects) {
      int kind = kinds.computeIfAbsent(s.line().junction().type(), k -> kinds.size());
      int detail = details.computeIfAbsent(s.line().detail(), d -> details.size());
      String id = s.line().junction().junction().id();
      lines.get(part(id, lines.size())).entries().add(new Entry(id, RecordCodec.write(StoredLine.of(s, kind, detail))));
    }
    Common common = new Common(lines.size(), SheetSubject.of(takeoff), takeoff.system(), List.copyOf(kinds.keySet()),
        details.keySet().stream().map(RecordCodec::write).toList());
    List<byte[]> parts = new ArrayList<>(List.of(compressed(new Head(shape(), RecordCodec.write(common)))));
    lines.forEach(l -> parts.add(compressed(l)));
    return parts;
  }

  private static int part(String id, int parts) {
    return Math.floorMod(id.hashCode(), parts);
  }

  static byte[] compressed(Record value) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(RecordCodec.write(value));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  static <T extends Record> T read(Class<T> type, byte[] part) throws IOException {
    return RecordCodec.read(type, new GZIPInputStream(new ByteArrayInputStream(part)).readAllBytes());
  }

  /**
   * The section at a line, as SVG; empty where it can't be drawn from what was kept.
   *
   * @param kept a part by its number, as it was written, or nothing
   */
  public static Optional<String> svg(IntFunction<Optional<byte[]>> kept, String line, SheetSetup setup) {
    return subject(kept, line).map(s -> SectionSheet.draw(s, setup));
  }

  static Optional<SectionSubject> subject(IntFunction<Optional<byte[]>> kept, String line) {
    try {
      Optional<byte[]> first = kept.apply(0);
      if (first.isEmpty()) {
        return Optional.empty();
      }
      Head head = read(Head.class, first.get());
      if (!head.shape().equals(shape())) {
        return Optional.empty();
      }
      Common common = RecordCodec.read(Common.class, head.common());
      Optional<byte[]> part = kept.apply(1 + part(line, common.parts()));
      Optional<Entry> entry = part.isEmpty() ? Optional.empty()
          : read(Lines.class, part.get()).entries().stream().filter(e -> e.id().equals(line)).findFirst();
      return entry.isEmpty() ? Optional.empty()
          : Optional.of(RecordCodec.read(StoredLine.class, entry.get().line()).subject(line, common));
    } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException e) {
      // Nothing that this program wrote: whoever asks has it from the models.
      return Optional.empty();
    }
  }
}
