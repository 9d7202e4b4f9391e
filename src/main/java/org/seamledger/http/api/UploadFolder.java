package org.seamledger.http.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.SyncedFiles;

/** The folder of what clients sent, a folder for each analysis, and the one for what is being written. */
public record UploadFolder(Path folder, Path scratch) {

  /** Writes a roof system beside the models of a new analysis that reads another's files again. */
  StoredFile writeSystem(String analysis, byte[] json) {
    try {
      Path target = Files.createDirectories(folder.resolve(analysis));
      Path file = target.resolve("system.json").toAbsolutePath();
      Files.write(file, json);
      SyncedFiles.sync(file);
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
