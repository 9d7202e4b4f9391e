package org.seamledger.http.api;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.seamledger.ledger.ModelFolder;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.SyncedFiles;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The folder of what clients sent, a folder for each analysis, and the one for what is being written.
 *
 * @param models the folder that is shared with workers and keeps files by their hash, where there is one
 */
public record UploadFolder(Path folder, Path scratch, Optional<ModelFolder> models) {

  private static final Logger LOG = LoggerFactory.getLogger(UploadFolder.class);

  /** That of a storage. */
  public static UploadFolder of(Store store, Path scratch) {
    return new UploadFolder(store.uploads(), scratch, store.isShared() ? Optional.of(store.models()) : Optional.empty());
  }

  /**
   * Keeps a file of an analysis.
   *
   * @param name of the file, chosen by the program
   */
  Path keep(String analysis, String name, InputStream in) throws IOException {
    if (models.isPresent()) {
      return models.get().keep(in, scratch);
    }
    Path file = Files.createDirectories(folder.resolve(analysis)).resolve(name).toAbsolutePath();
    Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
    SyncedFiles.sync(file);
    return file;
  }

  /** A file of this machine, where whoever analyses it finds it: workers may be on others. */
  public StoredFile within(StoredFile file) {
    if (models.isEmpty()) {
      return file;
    }
    try (InputStream in = Files.newInputStream(Path.of(file.path()))) {
      String path = models.get().keep(in, scratch).toString();
      return new StoredFile(file.name(), path, file.bytes(), file.role(), file.origin(), file.placement());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Takes in what this machine has of models from before the folder was shared. */
  public void adopt(Store store) {
    store.queue().outside().forEach((path, name) -> {
      try (InputStream in = Files.newInputStream(Path.of(path))) {
        store.queue().moved(path, store.models().keep(in, scratch).toString());
      } catch (IOException e) {
        LOG.atWarn().addKeyValue("name", name).log("model from before is not on this machine, workers won't find it");
      }
    });
  }

  /** Writes a roof system beside the models of a new analysis that reads another's files again. */
  StoredFile writeSystem(String analysis, byte[] json) {
    try {
      Path file = keep(analysis, "system.json", new ByteArrayInputStream(json));
      return new StoredFile("system.json", file.toString(), json.length, "system");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  void remove(String analysis) {
    delete(folder.resolve(analysis));
  }

  /** Removes what no analysis refers to: uploads that were cut off, results that were being written. */
  public void sweep(List<StoredAnalysis> all) throws IOException {
    if (models.isPresent()) {
      // The workers clean, and others may be writing now.
      Files.createDirectories(scratch);
      return;
    }
    Set<String> wanted = new HashSet<>();
    all.forEach(a -> a.files().forEach(f -> {
      Path parent = Path.of(f.path()).getParent();
      if (parent != null) {
        wanted.add(parent.getFileName() + "");
      }
    }));
    Files.createDirectories(folder);
    delete(scratch);
    Files.createDirectories(scratch);
    try (Stream<Path> found = Files.list(folder)) {
      found.filter(p -> !wanted.contains(p.getFileName().toString())).forEach(UploadFolder::delete);
    }
  }

  private static void delete(Path root) {
    if (!Files.exists(root)) {
      return;
    }
    try (Stream<Path> files = Files.walk(root)) {
      for (Path p : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(p);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
