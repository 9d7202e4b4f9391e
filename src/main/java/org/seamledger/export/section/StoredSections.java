package org.seamledger.export.section;

import com.fasterxml.jackson.core.JacksonException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
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
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SystemFormatException;
import org.seamledger.takeoff.Takeoff;

/**
 * What the sections of a result show, in a form that can be kept: a section that is drawn from it is the same text as one from the takeoff.
 * Part 0 has what all sections have in common, the others the lines, about a hundred each: to draw one, two parts are read. Each part is
 * compressed JSON. Of records that have changed since nothing is drawn.
 */
public final class StoredSections {

  private static final ObjectMapper MAPPER = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
      .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES);
  private static final int LINES_PER_PART = 100;

  private StoredSections() {
  }

  /**
   * What all sections of a result have in common.
   *
   * @param parts of lines
   * @param system as text with units
   */
  record Common(int parts, SheetSubject sheet, Map<String, Object> system, List<Kind> kinds, List<Detail> details) {

    RoofSystem roofSystem() throws JacksonException {
      return RoofSystem.parse(MAPPER.writeValueAsString(system), "system");
    }
  }

  /** All parts, in their order. */
  public static List<byte[]> write(Takeoff takeoff) {
    List<SectionSubject> subjects = SectionSubject.all(takeoff);
    Map<Kind, Integer> kinds = new LinkedHashMap<>();
    Map<Detail, Integer> details = new LinkedHashMap<>();
    List<Map<String, StoredLine>> lines = new ArrayList<>();
    for (int i = 0; i <= subjects.size() / LINES_PER_PART; i++) {
      lines.add(new LinkedHashMap<>());
    }
    for (SectionSubject s : subjects) {
      int kind = kinds.computeIfAbsent(s.line().junction().type(), k -> kinds.size());
      int detail = details.computeIfAbsent(s.line().detail(), d -> details.size());
      String id = s.line().junction().junction().id();
      lines.get(part(id, lines.size())).put(id, StoredLine.of(s, kind, detail));
    }
    List<byte[]> parts = new ArrayList<>();
    parts.add(compressed(new Common(lines.size(), SheetSubject.of(takeoff), takeoff.system().toMap(), List.copyOf(kinds.keySet()),
        List.copyOf(details.keySet()))));
    lines.forEach(l -> parts.add(compressed(l)));
    return parts;
  }

  private static int part(String id, int parts) {
    return Math.floorMod(id.hashCode(), parts);
  }

  private static byte[] compressed(Object value) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(bytes)) {
      MAPPER.writeValue(out, value);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
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
      Common common = MAPPER.readValue(new GZIPInputStream(new ByteArrayInputStream(first.get())), Common.class);
      Optional<byte[]> part = kept.apply(1 + part(line, common.parts()));
      return part.isEmpty() ? Optional.empty() : find(part.get(), line, common);
    } catch (IOException | IndexOutOfBoundsException | SystemFormatException e) {
      // Another program's: whoever asks has it from the models.
      return Optional.empty();
    }
  }

  private static Optional<SectionSubject> find(byte[] part, String line, Common common) throws IOException {
    try (JsonParser in = MAPPER.createParser(new GZIPInputStream(new ByteArrayInputStream(part)))) {
      in.nextToken();
      while (in.nextToken() == JsonToken.FIELD_NAME) {
        boolean found = in.currentName().equals(line);
        in.nextToken();
        if (found) {
          return Optional.of(MAPPER.readValue(in, StoredLine.class).subject(line, common));
        }
        in.skipChildren();
      }
      return Optional.empty();
    }
  }
}
