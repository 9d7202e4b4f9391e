package org.seamledger.bcf;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.seamledger.finding.TopicAnswer;

/**
 * Reads topics of BCF 2.0, 2.1 and 3.0. Only {@code bcf.version} and each {@code markup.bcf} are opened; pictures, viewpoints and documents
 * stay packed. It asks for no more than it needs: a file that other programs would refuse for what we don't read is read.
 */
public final class BcfReader {

  private static final String VERSION = "bcf.version";
  private static final String MARKUP = "/markup.bcf";
  private static final Set<String> KNOWN = Set.of("2.0", "2.1", "3.0");
  private static final int MOST_ENTRIES = 500_000;
  private static final int LONGEST_ENTRY = 8 << 20;
  private static final long LONGEST_IN_ALL = 512L << 20;

  private final ZipFile zip;
  private final String name;
  private long taken;

  private BcfReader(ZipFile zip, String name) {
    this.zip = zip;
    this.name = name;
  }

  /**
   * @param name what users call the file
   * @throws BcfFormatException where it is no BCF file, or can't be read
   */
  public static BcfFile read(Path file, String name) {
    try (ZipFile zip = new ZipFile(file.toFile())) {
      return new BcfReader(zip, name).read();
    } catch (ZipException e) {
      throw new BcfFormatException(name, "a BCF file, which is a ZIP archive", isEmpty(file) ? "an empty file" : "something else");
    } catch (NoSuchFileException e) {
      throw new BcfFormatException(name, "a BCF file", "no such file");
    } catch (IOException | IllegalArgumentException e) {
      throw new BcfFormatException(name, "a BCF file that can be read to its end", String.valueOf(e.getMessage()));
    }
  }

  private static boolean isEmpty(Path file) {
    try {
      return Files.size(file) == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private BcfFile read() throws IOException {
    if (zip.size() > MOST_ENTRIES) {
      throw new BcfFormatException(name, "at most " + MOST_ENTRIES + " files in the package", zip.size() + " files");
    }
    ZipEntry entry = zip.getEntry(VERSION);
    if (entry == null) {
      throw new BcfFormatException(name, "a BCF file with " + VERSION + " in it", "a ZIP archive without it");
    }
    String version = XmlWalk.read(bytes(entry), place(VERSION), new VersionFields()).version();
    if (!KNOWN.contains(version)) {
      throw new BcfFormatException(place(VERSION), "VersionId 2.0, 2.1 or 3.0", version.isEmpty() ? "none" : "\"" + shown(version) + "\"");
    }
    List<? extends ZipEntry> markups = zip.stream().filter(e -> e.getName().replace('\\', '/').endsWith(MARKUP))
        .sorted(Comparator.comparing(ZipEntry::getName)).toList();
    List<TopicAnswer> topics = new ArrayList<>();
    for (ZipEntry markup : markups) {
      topics.add(XmlWalk.read(bytes(markup), place(markup.getName()), new MarkupFields(place(markup.getName()))).topic());
    }
    return new BcfFile(version, topics);
  }

  private String place(String entry) {
    return name + ": " + shown(entry);
  }

  /** One line of a foreign text, for a message. */
  static String shown(String text) {
    String line = text.codePoints().map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? ' ' : c).limit(120)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
    return line.strip();
  }

  private byte[] bytes(ZipEntry entry) throws IOException {
    try (InputStream in = zip.getInputStream(entry)) {
      byte[] bytes = in.readNBytes(LONGEST_ENTRY + 1);
      taken += bytes.length;
      if (bytes.length > LONGEST_ENTRY) {
        throw new BcfFormatException(place(entry.getName()), "at most " + (LONGEST_ENTRY >> 20) + " MiB when unpacked", "more");
      }
      if (taken > LONGEST_IN_ALL) {
        throw new BcfFormatException(name, "at most " + (LONGEST_IN_ALL >> 20) + " MiB of topics when unpacked", "more");
      }
      return bytes;
    } catch (ZipException e) {
      throw new BcfFormatException(place(entry.getName()), "an entry that can be unpacked", "a broken one");
    }
  }
}
