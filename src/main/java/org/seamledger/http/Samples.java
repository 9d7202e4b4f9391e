package org.seamledger.http;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.seamledger.ledger.StoredFile;

/** The sample models that the page offers: those that lay in their folder when the server started. */
final class Samples {

  private final Map<String, Path> files = new TreeMap<>();

  Samples(Optional<Path> folder) {
    if (folder.isPresent() && Files.isDirectory(folder.get())) {
      try (Stream<Path> found = Files.list(folder.get())) {
        found.filter(Files::isRegularFile).filter(f -> f.toString().toLowerCase(Locale.ROOT).matches(".*\\.(ifc|ifczip|ifc\\.gz)"))
            .forEach(f -> files.put(f.getFileName().toString(), f.toAbsolutePath()));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** Name, size and, where a text file of the same name lies beside the model, its first line. */
  List<Map<String, Object>> list() {
    return files.entrySet().stream().map(e -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("name", e.getKey());
      m.put("bytes", e.getValue().toFile().length());
      m.put("about", about(e.getValue()));
      return m;
    }).toList();
  }

  private static String about(Path model) {
    Path text = model.resolveSibling(model.getFileName().toString().replaceFirst("\\.[^.]+$", ".txt"));
    try {
      return Files.exists(text) ? Files.readString(text, StandardCharsets.UTF_8).lines().findFirst().orElse("") : "";
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  StoredFile file(String name) {
    Path file = files.get(name);
    if (file == null) {
      throw Problem.notFound("There is no such sample.");
    }
    return new StoredFile(name, file.toString(), file.toFile().length(), "model");
  }
}
