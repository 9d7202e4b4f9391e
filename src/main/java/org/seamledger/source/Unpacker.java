package org.seamledger.source;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipMethod;
import org.seamledger.finding.FullDisk;
import org.seamledger.finding.UnreadableModelException;

/** Unpacks a model into a temporary file that goes when its channel is closed. */
final class Unpacker {

  private static final int BLOCK = 64 * 1024;

  private final String name;
  private final UnpackLimits limits;

  private Unpacker(String name, UnpackLimits limits) {
    this.name = name;
    this.limits = limits;
  }

  static SeekableByteChannel gunzip(Path path, String name, UnpackLimits limits) throws IOException {
    Unpacker unpacker = new Unpacker(name, limits);
    try (InputStream packed = Files.newInputStream(path); InputStream in = new GZIPInputStream(packed, BLOCK)) {
      return unpacker.unpack(in, Files.size(path));
    } catch (ZipException | EOFException e) {
      throw unpacker.broken("gzip", e);
    }
  }

  static SeekableByteChannel unzip(Path path, String name, UnpackLimits limits) throws IOException {
    Unpacker unpacker = new Unpacker(name, limits);
    try (ZipFile zip = new ZipFile(path.toFile())) {
      ZipEntry entry = unpacker.model(Collections.list(zip.entries()));
      try (CheckedInputStream in = new CheckedInputStream(zip.getInputStream(entry), new CRC32())) {
        SeekableByteChannel unpacked = unpacker.unpack(in, Math.max(1, entry.getCompressedSize()));
        if (in.getChecksum().getValue() != entry.getCrc()) {
          unpacked.close();
          throw new ZipException("checksum of " + entry.getName() + " differs");
        }
        return unpacked;
      }
    } catch (ZipException | EOFException | IllegalArgumentException e) {
      Optional<SeekableByteChannel> other = unpacker.unzipDeflate64(path);
      if (other.isPresent()) {
        return other.get();
      }
      throw unpacker.broken("zip", e);
    }
  }

  /** Reads an archive whose one model is packed by Deflate64, which the platform refuses; empty where it is not. */
  private Optional<SeekableByteChannel> unzipDeflate64(Path path) throws IOException {
    try (org.apache.commons.compress.archivers.zip.ZipFile zip =
        org.apache.commons.compress.archivers.zip.ZipFile.builder().setPath(path).get()) {
      ZipEntry entry = model(Collections.list(zip.getEntries()));
      if (entry.getMethod() != ZipMethod.ENHANCED_DEFLATED.getCode()) {
        return Optional.empty();
      }
      try (CheckedInputStream in = new CheckedInputStream(zip.getInputStream((ZipArchiveEntry) entry), new CRC32())) {
        SeekableByteChannel unpacked = unpack(in, Math.max(1, entry.getCompressedSize()));
        if (in.getChecksum().getValue() != entry.getCrc()) {
          unpacked.close();
          return Optional.empty();
        }
        return Optional.of(unpacked);
      }
    } catch (IOException | IllegalArgumentException e) {
      if (FullDisk.causes(e)) {
        throw e;
      }
      // Broken in a way that says nothing more than what the platform said.
      return Optional.empty();
    }
  }

  /**
   * The one model in an archive.
   *
   * @param name of the archive, for messages
   */
  static ZipEntry model(String name, List<? extends ZipEntry> entries) {
    return new Unpacker(name, UnpackLimits.DEFAULT).model(entries);
  }

  private ZipEntry model(List<? extends ZipEntry> entries) {
    List<ZipEntry> models = new ArrayList<>();
    boolean xml = false;
    for (ZipEntry entry : entries) {
      String file = entry.getName().toLowerCase(Locale.ROOT);
      xml |= file.endsWith(".ifcxml");
      if (file.endsWith(".ifc") && !entry.isDirectory() && !isShadow(file)) {
        models.add(entry);
      }
    }
    if (models.size() == 1) {
      return models.get(0);
    }
    String found = models.isEmpty() ? xml ? "ifcXML, which is not supported (export the model as STEP text, .ifc)" : none(entries)
        : models.size() + " of them (name one .ifc file)";
    throw new UnreadableModelException(name, 0, 0, "a zip that holds one .ifc file", found);
  }

  /** Zips that are documents of other programs, by the files that their formats ask for. */
  private static String none(List<? extends ZipEntry> entries) {
    Set<String> names = entries.stream().map(ZipEntry::getName).collect(Collectors.toSet());
    if (names.contains("[Content_Types].xml") || names.contains("mimetype")) {
      return "none: it is an office document (export the building itself as IFC, .ifc)";
    }
    if (names.contains("bcf.version")) {
      return "none: it is a BCF file, issues about a model, not the model (name the .ifc file itself)";
    }
    return names.isEmpty() ? "none: it is empty" : "none (export IFC from the program that wrote it)";
  }

  /** Some archivers put a second file of attributes beside each. */
  private static boolean isShadow(String file) {
    return file.startsWith("__macosx/") || file.substring(file.lastIndexOf('/') + 1).startsWith("._");
  }

  private SeekableByteChannel unpack(InputStream in, long packed) throws IOException {
    Path file = Files.createTempFile("seamledger", ".ifc");
    FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    try {
      copy(in, Channels.newOutputStream(channel), packed);
      return channel;
    } catch (IOException | RuntimeException e) {
      channel.close();
      throw e;
    }
  }

  private void copy(InputStream in, OutputStream out, long packed) throws IOException {
    byte[] block = new byte[BLOCK];
    long total = 0;
    for (int n; (n = in.read(block)) >= 0;) {
      total += n;
      if (total > limits.bytes()) {
        throw tooBig("at most " + limits.bytes() + " bytes after unpacking");
      }
      if (total > UnpackLimits.RATIO_FROM && total / packed > limits.ratio()) {
        throw tooBig("at most " + limits.ratio() + " bytes after unpacking for each packed one");
      }
      out.write(block, 0, n);
    }
  }

  private UnreadableModelException tooBig(String expected) {
    return new UnreadableModelException(name, 0, 0, expected, "more");
  }

  private UnreadableModelException broken(String kind, Exception e) {
    String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage().replaceAll("\\s+", " ");
    return new UnreadableModelException(name, 0, 0, "a whole " + kind + " file", "a broken one (" + why + ")");
  }
}
