package org.seamledger.shacl;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The examples that stand beside rules: Turtle files in a folder {@code tests} and its folders. */
public final class ExampleFiles {

  private static final String FOLDER = "tests";
  private static final Pattern NAME =
      Pattern.compile(FOLDER + "/((?:[A-Za-z0-9][A-Za-z0-9._-]{0,80}/){0,2}[A-Za-z0-9][A-Za-z0-9._-]{0,80}\\.ttl)");
  private static final int MOST = 1000;
  private static final long LARGEST_BYTES = 1 << 20;

  private ExampleFiles() {
  }

  /**
   * The texts of those of a folder of rules by their names; none where it has none.
   *
   * @throws BrokenRulesException where a file can't be read
   */
  public static SortedMap<String, String> in(Path rules) {
    SortedMap<String, String> own = new TreeMap<>();
    read(rules.resolve(FOLDER), own);
    return own;
  }

  /**
   * What a file beside the rules is called as an example, such as {@code kinds/ridge.ttl} for {@code tests/kinds/ridge.ttl}; empty where it
   * is no example's file.
   */
  public static Optional<String> example(String name) {
    Matcher m = NAME.matcher(name);
    return m.matches() ? Optional.of(m.group(1)) : Optional.empty();
  }

  /** The name of the file of an example beside the rules. */
  public static String file(String example) {
    return FOLDER + "/" + example;
  }

  /** The texts of the program's own by their names, such as {@code kinds/ridge.ttl}. */
  public static SortedMap<String, String> packaged() {
    SortedMap<String, String> all = new TreeMap<>();
    URL beside = ExampleFiles.class.getResource("/shapes/kinds.ttl");
    try {
      if (beside != null && beside.getProtocol().equals("file")) {
        read(Path.of(beside.toURI()).resolveSibling(FOLDER), all);
      } else if (beside != null && beside.openConnection() instanceof JarURLConnection jar) {
        try (FileSystem files = FileSystems.newFileSystem(Path.of(jar.getJarFileURL().toURI()))) {
          read(files.getPath("/shapes", FOLDER), all);
        }
      }
      return all;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void read(Path folder, SortedMap<String, String> all) {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> found = Files.walk(folder, 3)) {
      List<Path> files = found.filter(f -> f.toString().endsWith(".ttl")).sorted().limit(MOST).toList();
      for (Path f : files) {
        String name = folder.relativize(f).toString().replace('\\', '/');
        if (Files.size(f) > LARGEST_BYTES) {
          throw new BrokenRulesException(name, 0, 0, "is too large for an example");
        }
        all.put(name, RuleFile.decode(name, Files.readAllBytes(f)));
      }
    } catch (IOException e) {
      throw new BrokenRulesException(folder.toString(), 0, 0, "can't be read (" + e.getClass().getSimpleName() + ")");
    }
  }
}
