package org.seamledger.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.seamledger.finding.Sha256;

/**
 * The folder of models that several processes share, maybe of several machines: each file by the SHA-256 of its bytes, so that the same
 * model sent twice is one file, and a file never changes. Storage has paths below the folder, since it may be mounted anywhere. Or a folder
 * of one machine, with copies of models that are in the database.
 */
public final class ModelFolder {

  /** Holds the name of the database that the folder belongs to: no other may clean it, and an empty mount point is no such folder. */
  private static final String MARK = "seamledger-models";
  private static final String BY_HASH = "sha256";
  private static final String SERVED = "served";
  private static final String SCRATCH = "scratch";
  private static final int FAN = 2;
  private static final Duration SCRATCH_KEPT = Duration.ofDays(2);
  /** Longer than any analysis takes: a copy that nobody used since is fetched again where it is wanted. */
  private static final Duration COPY_KEPT = Duration.ofDays(1);
  private static final Duration BETWEEN_LOOKS = Duration.ofHours(1);

  private final Path folder;
  private final String storage;
  /** Where the models are that the folder has copies of; empty where it has the models themselves. */
  private final Optional<ModelObjects> objects;
  private final CautiousClock clock = new CautiousClock();
  /** When it was tidied last, by {@link System#nanoTime}; null before the first time. */
  private final AtomicReference<Long> tidied = new AtomicReference<>();

  private ModelFolder(Path folder, String storage, Optional<ModelObjects> objects) {
    this.folder = folder.toAbsolutePath().normalize();
    this.storage = storage;
    this.objects = objects;
  }

  /** A folder of this machine's for copies, which is made where there is none. */
  static ModelFolder ofCopies(Path folder, String storage, ModelObjects objects) {
    try {
      FolderGuard.createPrivate(folder);
    } catch (IOException e) {
      throw unusable(folder, e);
    }
    return open(new ModelFolder(folder, storage, Optional.of(objects)), true);
  }

  private static LedgerException unusable(Path folder, IOException e) {
    return new LedgerException(LedgerException.Reason.STORAGE, "The folder of models " + folder + " cannot be used: " + fault(e) + ".", e);
  }

  /**
   * @param storage the name of the database
   * @param make whether a folder that is empty becomes this database's
   * @throws LedgerException where it is another's, or can't be used
   */
  static ModelFolder open(Path folder, String storage, boolean make) {
    return open(new ModelFolder(folder, storage, Optional.empty()), make);
  }

  private static ModelFolder open(ModelFolder models, boolean make) {
    Path folder = models.folder;
    try {
      if (make) {
        models.make();
      }
    } catch (IOException e) {
      throw unusable(folder, e);
    }
    if (!models.isThere()) {
      throw new LedgerException(LedgerException.Reason.STORAGE, "The folder of models " + folder + (Files.exists(models.mark())
          ? " belongs to another database; each needs one of its own."
          : " is not the one that serve uses with this database; name that folder, where this machine has it mounted."));
    }
    return models;
  }

  private void make() throws IOException {
    Files.createDirectories(folder);
    if (!Files.exists(mark())) {
      Path fresh = folder.resolve(Analyses.newId() + ".new");
      Files.writeString(fresh, storage);
      Files.move(fresh, mark(), StandardCopyOption.ATOMIC_MOVE);
    }
  }

  private static String fault(IOException e) {
    String kind = e.getClass().getSimpleName().replaceAll("Exception$", "").replaceAll("(?<=[a-z])(?=[A-Z])", " ");
    return kind.toLowerCase(Locale.ROOT) + " " + e.getMessage();
  }

  private Path mark() {
    return folder.resolve(MARK);
  }

  /** Whether the folder is there now, and still this database's: a disk of another machine may come and go. */
  public boolean isThere() {
    try {
      return Files.readString(mark()).strip().equals(storage);
    } catch (IOException e) {
      return false;
    }
  }

  /** The folder for models that are fetched from servers, a folder for each analysis. */
  Path served() {
    return folder.resolve(SERVED);
  }

  /** A folder for what a process is writing, on the same disk. */
  public Path scratch(String process) {
    return folder.resolve(SCRATCH).resolve(process);
  }

  /** The form in which storage has a path. */
  String stored(String path) {
    Path p = Path.of(path);
    return p.startsWith(folder) ? folder.relativize(p).toString().replace('\\', '/') : path;
  }

  /** The path that storage means. */
  String found(String stored) {
    return isBelow(stored) ? folder.resolve(stored).toString() : stored;
  }

  /** Whether a stored path is one below such a folder. */
  static boolean isBelow(String stored) {
    return stored.startsWith(BY_HASH + "/") || stored.startsWith(SERVED + "/");
  }

  /**
   * Keeps what comes out of a stream.
   *
   * @param scratch a folder on the same disk
   * @return where it is from now on, on the disk to stay
   */
  public Path keep(InputStream in, Path scratch) throws IOException {
    Files.createDirectories(scratch);
    // No temporary file of the platform's: those can be read by this user alone, and a worker may be another.
    Path fresh = scratch.resolve(Analyses.newId() + ".new");
    try {
      MessageDigest hash = Sha256.digest();
      try (InputStream hashed = new DigestInputStream(in, hash)) {
        Files.copy(hashed, fresh);
      }
      String name = HexFormat.of().formatHex(hash.digest());
      Path target = folder.resolve(BY_HASH).resolve(name.substring(0, FAN)).resolve(name);
      Files.createDirectories(target.getParent());
      if (!touched(target)) {
        SyncedFiles.sync(fresh);
        Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE);
        SyncedFiles.sync(target);
      }
      publish(target);
      return target;
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** Lets the other processes have a file of this folder, where they don't see the folder. */
  void publish(Path file) throws IOException {
    if (objects.isPresent() && file.startsWith(folder)) {
      objects.get().put(stored(file.toString()), file);
    }
  }

  /** Sees to it that a file is here, if another process has published it, and stays for some time; false where it is not. */
  boolean present(Path file) throws IOException {
    if (objects.isEmpty() || !file.startsWith(folder)) {
      return Files.isRegularFile(file);
    }
    tidy();
    return touched(file) || copied(file);
  }

  private boolean copied(Path file) throws IOException {
    Path fresh = Files.createDirectories(folder.resolve(SCRATCH)).resolve(Analyses.newId() + ".new");
    try {
      if (!objects.get().get(stored(file.toString()), fresh)) {
        return false;
      }
      Files.createDirectories(file.getParent());
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
      return true;
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** Removes copies that nobody used for long. */
  private void tidy() {
    Long last = tidied.get();
    long now = System.nanoTime();
    if ((last == null || now - last > BETWEEN_LOOKS.toNanos()) && tidied.compareAndSet(last, now)) {
      cleanFiles(Set.of(), COPY_KEPT);
    }
  }

  /** Whether a file is there; it counts as new from now on, so that nobody cleans it away before storage refers to it. */
  private static boolean touched(Path file) throws IOException {
    try {
      Files.setLastModifiedTime(file, FileTime.from(Instant.now()));
      return true;
    } catch (NoSuchFileException e) {
      return false;
    }
  }

  /**
   * Removes models that nothing refers to and that are older than a time, and what processes left behind that were writing.
   *
   * @param wanted stored paths that something refers to
   * @return how many models went
   */
  public int clean(Set<String> wanted, Duration kept) throws IOException {
    return objects.isPresent() ? objects.get().clean(kept) : cleanFiles(wanted, kept);
  }

  private int cleanFiles(Set<String> wanted, Duration kept) {
    int gone = 0;
    Instant before = clock.now().minus(kept);
    for (Path file : Stream.concat(OldFiles.below(folder.resolve(BY_HASH)).stream(), OldFiles.below(served()).stream()).toList()) {
      if (!wanted.contains(stored(file.toString())) && OldFiles.isOlder(file, before) && removed(file)) {
        gone++;
      }
    }
    Instant longAgo = clock.now().minus(SCRATCH_KEPT);
    OldFiles.below(folder.resolve(SCRATCH)).stream().filter(f -> OldFiles.isOlder(f, longAgo)).forEach(ModelFolder::removed);
    return gone;
  }

  private static boolean removed(Path file) {
    // Folders of hashes stay: another process may be about to put a file into one.
    return OldFiles.removed(file, !file.getParent().getParent().endsWith(BY_HASH));
  }

  /** Removes the folder of what a process was writing. */
  public void forget(Path scratch) {
    OldFiles.removeTree(scratch);
  }

  @Override
  public String toString() {
    return objects.isPresent() ? "in the database, copies in " + folder : folder.toString();
  }
}
