package org.seamledger.watch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.seamledger.source.Attachment;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelSource;
import org.seamledger.source.OpenModel;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;

/**
 * One server with one project, kept in a folder, so that it outlives whoever asks it: {@code N.ifc} is revision N, and every document that
 * was left with it is a file of its own in {@code N}, twice where it was left twice.
 */
public record FolderServers(Path folder) implements Servers {

  public static final String NAME = "office";
  public static final ServedProject PROJECT = new ServedProject(100, "School", "IFC4");
  private static final String ENDING = ".ifc";
  /** Hexadecimal digits and strokes of a UUID, and a blank. */
  private static final int MARK = 37;

  /** Puts a model there as the next revision; returns its number. */
  public int checkIn(String model) throws IOException {
    int number = numbers().size() + 1;
    Path whole = Files.writeString(folder.resolve("new"), model);
    Files.move(whole, folder.resolve(number + ENDING), StandardCopyOption.ATOMIC_MOVE);
    return number;
  }

  private List<Integer> numbers() {
    return names(folder).stream().filter(f -> f.endsWith(ENDING)).map(f -> Integer.valueOf(f.replace(ENDING, ""))).sorted().toList();
  }

  private static List<String> names(Path of) {
    if (!Files.isDirectory(of)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(of)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What was left with a revision, by title, as often as it was left. */
  public List<Attachment> left(int number) {
    Path with = folder.resolve(String.valueOf(number));
    return names(with).stream().filter(f -> !f.startsWith("part")).map(f -> new Attachment(f.substring(MARK), "", bytes(with.resolve(f))))
        .toList();
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public List<String> names() {
    return List.of(NAME);
  }

  @Override
  public ModelServer connect(String name) {
    return new Connection(this);
  }

  private record Connection(FolderServers servers) implements ModelServer {

    @Override
    public List<ServedProject> projects() {
      return List.of(PROJECT);
    }

    @Override
    public List<ServedRevision> revisions(long project) {
      return servers.numbers().stream().map(n -> new ServedRevision(project, n, n, "", Instant.EPOCH.plusSeconds(n))).toList();
    }

    @Override
    public ModelSource model(ServedRevision revision) {
      return new Held(servers.folder.resolve(revision.number() + ENDING));
    }

    @Override
    public void attach(ServedRevision revision, Attachment document) {
      try {
        Path with = Files.createDirectories(servers.folder.resolve(String.valueOf(revision.number())));
        String mark = UUID.randomUUID().toString();
        Path part = Files.write(with.resolve("part " + mark), document.content());
        Files.move(part, with.resolve(mark + " " + document.title()), StandardCopyOption.ATOMIC_MOVE);
        // So long an answer is on its way: who asked may be dead when it arrives.
        Thread.sleep(10);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    @Override
    public List<Attachment> attachments(ServedRevision revision) {
      return servers.left(revision.number());
    }

    @Override
    public void close() {
      // Nothing is held.
    }
  }

  private record Held(Path file) implements ModelSource {

    @Override
    public String name() {
      return file.getFileName().toString();
    }

    @Override
    public OpenModel open() throws IOException {
      return new OpenModel(name(), FileChannel.open(file), Files.size(file));
    }
  }
}
