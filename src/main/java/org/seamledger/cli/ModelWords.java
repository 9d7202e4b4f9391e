package org.seamledger.cli;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * Models that a command line names, one by one, by folders, or by patterns: {@code *} and {@code ?} stand for characters of one name,
 * {@code **} for any folders, {@code [ab]} and <code>{a,b}</code> for one of several. Folders count with all that is below them, hidden
 * ones left out.
 */
final class ModelWords {

  private static final Pattern MODEL = Pattern.compile(".*\\.(ifc|ifczip|ifc\\.gz)");
  private static final Pattern WILD = Pattern.compile(".*[*?\\[{].*");

  private ModelWords() {
  }

  /**
   * The models, each once, in the order of the words; those of one folder or pattern by their paths.
   *
   * @throws UsageException where a folder or pattern has none
   */
  static List<String> expand(List<String> words) {
    Set<String> all = new LinkedHashSet<>();
    for (String word : words) {
      Path path = path(word);
      if (path != null && Files.isDirectory(path)) {
        all.addAll(found(path, file -> true, holdsNone(word)));
      } else if (!word.startsWith(ChosenModels.PREFIX) && WILD.matcher(word).matches() && (path == null || !Files.exists(path))) {
        all.addAll(matching(word));
      } else {
        all.add(word);
      }
    }
    return List.copyOf(all);
  }

  /** Whether a file's name, with or without folders before it, is that of a model and not hidden. */
  static boolean isModel(String name) {
    String last = name.substring(name.lastIndexOf('/') + 1).toLowerCase(Locale.ROOT);
    return !last.startsWith(".") && MODEL.matcher(last).matches();
  }

  static String holdsNone(String folder) {
    return "the folder " + folder + " holds no model (.ifc, .ifc.gz, .ifczip)";
  }

  private static Path path(String word) {
    try {
      return word.startsWith(ChosenModels.PREFIX) ? null : Path.of(word);
    } catch (InvalidPathException e) {
      return null;
    }
  }

  private static Set<String> matching(String pattern) {
    String plain = pattern.replace('\\', '/');
    int wild = plain.length() - plain.replaceFirst("^[^*?\\[{]*", "").length();
    int slash = plain.lastIndexOf('/', wild);
    Path root = Path.of(slash < 0 ? "" : slash == 0 ? "/" : plain.substring(0, slash));
    try {
      // A pattern that begins with any folders matches what stands in none, too.
      String rest = plain.substring(slash + 1);
      PathMatcher whole = FileSystems.getDefault().getPathMatcher("glob:" + rest);
      PathMatcher inNone = FileSystems.getDefault().getPathMatcher("glob:" + rest.replace("**/", ""));
      return found(root, file -> whole.matches(root.relativize(file)) || inNone.matches(root.relativize(file)),
          "no model matches " + pattern);
    } catch (PatternSyntaxException e) {
      throw new UsageException(pattern + " is no pattern: " + e.getDescription());
    }
  }

  private static Set<String> found(Path root, Predicate<Path> isMeant, String none) {
    Set<String> files = new TreeSet<>();
    try {
      Files.walkFileTree(root, EnumSet.of(FileVisitOption.FOLLOW_LINKS), Integer.MAX_VALUE, new SimpleFileVisitor<>() {
        @Override
        public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
          boolean isHidden = !folder.equals(root) && folder.getFileName().toString().startsWith(".");
          return isHidden ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
          if (isModel(file.getFileName().toString()) && isMeant.test(file)) {
            files.add(file.normalize().toString());
          }
          return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException e) {
          // A folder that may not be read, or a link back to one above: what can be had is taken.
          return FileVisitResult.CONTINUE;
        }
      });
    } catch (IOException e) {
      throw new UsageException(root + " can't be read: " + e.getMessage());
    }
    if (files.isEmpty()) {
      throw new UsageException(none);
    }
    return files;
  }
}
