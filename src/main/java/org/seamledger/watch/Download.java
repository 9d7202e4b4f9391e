package org.seamledger.watch;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.SyncedFiles;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ModelSource;
import org.seamledger.source.OpenModel;
import org.seamledger.source.ServedRevision;

/** Brings models from servers into the data folder, where a half of one never counts: each appears whole or not at all. */
public final class Download {

  private static final int BLOCK = 1 << 16;
  private static final int LONGEST_NAME = 100;

  private final Path uploads;
  private final Path scratch;
  private final long most;

  /**
   * @param uploads folder of the models of analyses
   * @param scratch folder for what is being written, on the same disk
   * @param most the most bytes of one model
   */
  public Download(Path uploads, Path scratch, long most) {
    this.uploads = uploads;
    this.scratch = scratch;
    this.most = most;
  }

  /** The file that holds, or will hold, the only model of an analysis. */
  public StoredFile file(String analysis, Origin origin) {
    return file(analysis, 0, origin);
  }

  /**
   * The file that holds, or will hold, a model of an analysis; its name is the program's own, the project's name is only shown.
   *
   * @param place among the models of the analysis, from 0
   */
  public StoredFile file(String analysis, int place, Origin origin) {
    return new StoredFile(name(origin), uploads.resolve(analysis).resolve(place + ".ifc").toAbsolutePath().toString(), 0, "model");
  }

  /** What people see as the model's name: without anything that is special in a path or a log. */
  static String name(Origin origin) {
    String plain = origin.projectName().replaceAll("[^\\p{L}\\p{N} ._+-]", " ").replaceAll("\\s+", " ").strip();
    String name = plain.isEmpty() ? "project " + origin.project() : plain;
    return name.substring(0, Math.min(LONGEST_NAME, name.length())) + ", revision " + origin.number();
  }

  /**
   * Fetches the model of a revision.
   *
   * @return the file with its size
   * @throws ModelServerException where the server doesn't give it
   * @throws UnreadableModelException where it gives something that is no model, or one that is too large
   */
  public StoredFile fetch(ModelServer server, String analysis, Origin origin) {
    return fetch(server, file(analysis, origin), origin);
  }

  /**
   * As {@link #fetch(ModelServer, String, Origin)}, into one of several files of an analysis.
   *
   * @param file as {@link #file(String, int, Origin)} gave it
   */
  public StoredFile fetch(ModelServer server, StoredFile file, Origin origin) {
    ModelSource source = server.model(revision(server, origin));
    Path target = Path.of(file.path());
    Path part = scratch.resolve(target.getParent().getFileName() + "-" + target.getFileName() + ".part");
    try {
      Files.createDirectories(part.getParent());
      Files.createDirectories(target.getParent());
      long bytes = copy(source, part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      SyncedFiles.sync(target);
      return file.sized(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      // Where it was moved nothing is left to remove.
      removeQuietly(part);
    }
  }

  /** A revision as its server lists it now. */
  static ServedRevision revision(ModelServer server, Origin origin) {
    return server.revisions(origin.project()).stream().filter(r -> r.id() == origin.revision()).findFirst().orElseThrow(
        () -> new ModelServerException(ModelServerException.Reason.NOT_FOUND,
            "The server has no revision " + origin.number() + " of this project any more."));
  }

  private long copy(ModelSource source, Path target) throws IOException {
    try (OpenModel model = source.open();
        FileChannel out =
            FileChannel.open(target, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
      if (model.bytes() > most) {
        throw new UnreadableModelException(source.name(), 0, 0, "a model of at most " + most + " bytes", "one of " + model.bytes());
      }
      return copy(model.channel(), out);
    }
  }

  private static long copy(SeekableByteChannel in, FileChannel out) throws IOException {
    ByteBuffer block = ByteBuffer.allocate(BLOCK);
    long total = 0;
    while (in.read(block.clear()) >= 0) {
      block.flip();
      while (block.hasRemaining()) {
        total += out.write(block);
      }
    }
    return total;
  }

  /** Removes what there is of the model of an analysis that did not come to be. */
  public void forget(String analysis) {
    removeQuietly(uploads.resolve(analysis).resolve("0.ifc"));
    removeQuietly(uploads.resolve(analysis));
  }

  /** Removes what there is of one model that did not come to be; what else its folder holds stays. */
  public void forget(StoredFile file) {
    removeQuietly(Path.of(file.path()));
    removeQuietly(Path.of(file.path()).getParent());
  }

  private static void removeQuietly(Path path) {
    try {
      Files.deleteIfExists(path);
    } catch (IOException e) {
      // What is left behind has no analysis; the next start of the service removes it.
    }
  }
}
