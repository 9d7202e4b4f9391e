package org.seamledger.http.api;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.seamledger.http.answer.HttpProblem;

/** A folder of rules as a zip archive: files {@code *.ttl} and, in {@code tests/}, their examples. */
final class RulesArchive {

  /** Of a file in an archive, so that the same rules give the same bytes: 1 January 1980, the first that archives know. */
  private static final long FIRST_DAY = 315_532_800_000L;
  /** Of files of any kind: an archive may hold a picture or a letter beside the rules, not a disk. */
  private static final int MOST_ENTRIES = 5000;

  private RulesArchive() {
  }

  /** @param texts by the file's name, as it is called in the folder */
  static byte[] written(SortedMap<String, String> texts) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
      for (Map.Entry<String, String> f : texts.entrySet()) {
        ZipEntry entry = new ZipEntry(f.getKey());
        entry.setTime(FIRST_DAY);
        zip.putNextEntry(entry);
        zip.write(f.getValue().getBytes(StandardCharsets.UTF_8));
      }
    }
    return bytes.toByteArray();
  }

  /**
   * The texts of the files of rules and examples by their names in the folder, whether the archive holds what is in the folder or the
   * folder itself.
   *
   * @throws HttpProblem where it is no such archive, or its texts have more bytes together than that
   */
  static SortedMap<String, String> read(byte[] archive, int mostBytes) {
    SortedMap<String, String> texts = new TreeMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive), StandardCharsets.UTF_8)) {
      int left = mostBytes;
      int entries = 0;
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (++entries > MOST_ENTRIES) {
          throw refused("has more than " + MOST_ENTRIES + " files");
        }
        // What another system writes beside each file has the same ending and is none.
        if (e.isDirectory() || !e.getName().endsWith(".ttl") || e.getName().matches("(?s)(.*/)?(__MACOSX/.*|\\._[^/]*)")) {
          continue;
        }
        byte[] bytes = zip.readNBytes(left + 1);
        left -= bytes.length;
        if (left < 0) {
          throw new HttpProblem(413, "body/too-large", "The files of the rules have more than " + mostBytes + " bytes together.");
        }
        texts.put(e.getName(), text(e.getName(), bytes));
      }
    } catch (IOException | IllegalArgumentException e) {
      throw refused("can't be read to its end");
    }
    if (texts.isEmpty()) {
      throw refused("holds no file of rules (*.ttl), or is no zip archive");
    }
    return withoutFolder(texts);
  }

  private static HttpProblem refused(String why) {
    return new HttpProblem(422, "rules/broken", "The archive " + why + ".");
  }

  private static String text(String name, byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new HttpProblem(422, "rules/broken", name + " is not UTF-8 text");
    }
  }

  /** Without the name of the folder that holds everything: it says nothing about the rules. */
  private static SortedMap<String, String> withoutFolder(SortedMap<String, String> texts) {
    String folder = texts.firstKey().substring(0, texts.firstKey().indexOf('/') + 1);
    if (folder.isEmpty() || folder.equals("tests/") || !texts.keySet().stream().allMatch(name -> name.startsWith(folder))) {
      return texts;
    }
    return withoutFolder(texts.entrySet().stream().collect(
        Collectors.toMap(e -> e.getKey().substring(folder.length()), Map.Entry::getValue, (a, b) -> b, TreeMap::new)));
  }
}
