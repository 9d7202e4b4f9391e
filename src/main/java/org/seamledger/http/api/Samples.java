package org.seamledger.http.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.ledger.StoredFile;

/** The sample models that the page offers: those that lay in their folder when the server started. */
public final class Samples {

  private static final Pattern ROW = Pattern.compile("^\\|[^|]*\\]\\(([^)]+)\\)\\s*\\|([^|]*)\\|");

  private final Map<String, Path> files = new TreeMap<>();
  private final Map<String, String> about = new TreeMap<>();

  public Samples(Optional<Path> folder) {
    if (folder.isPresent() && Files.isDirectory(folder.get())) {
      try (Stream<Path> found = Files.list(folder.get())) {
        found.filter(Files::isRegularFile).filter(f -> f.toString().toLowerCase(Locale.ROOT).matches(".*\\.(ifc|ifczip|ifc\\.gz)"))
            .forEach(f -> files.put(f.getFileName().toString(), f.toAbsolutePath()));
        readAbout(folder.get().resolve("README.md"));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** Name, size, and what the folder's README says of it. */
  List<Map<String, Object>> list() {
    return files.entrySet().stream().map(e -> JsonBodies.object("name", e.getKey(), "bytes", e.getValue().toFile().length(),
        "about", about.getOrDefault(e.getKey(), ""), "thumbnail", Files.isRegularFile(thumbnail(e.getKey())))).toList();
  }

  /** The second cell of each row of a table whose first cell links to a model: {@code | [`barn`](barn.ifc) | Barn: a gambrel … |}. */
  private void readAbout(Path readme) throws IOException {
    if (Files.isRegularFile(readme)) {
      for (String line : Files.readAllLines(readme, StandardCharsets.UTF_8)) {
        Matcher row = ROW.matcher(line);
        if (row.find()) {
          about.put(row.group(1), row.group(2).strip());
        }
      }
    }
  }

  /** The small picture of a sample's roof that stands beside it, where there is one: {@code thumbnails/barn.svg} for {@code barn.ifc}. */
  Path thumbnail(String name) {
    Path file = Path.of(file(name).path());
    return file.resolveSibling("thumbnails").resolve(name.replaceAll("(?i)\\.(ifc|ifczip|ifc\\.gz)$", "") + ".svg");
  }

  StoredFile file(String name) {
    Path file = files.get(name);
    if (file == null) {
      throw HttpProblem.notFound("There is no such sample.");
    }
    return new StoredFile(name, file.toString(), file.toFile().length(), "model");
  }
}
