package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ImportTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** The size and form of sources, as the habits in DEVELOPERS.md state them; what the formatter does not look after. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SourceFormTest {

  private static final int LONGEST_LINE = 140;
  private static final int LONGEST_METHOD = 40;
  private static final int LONG_FILE = 200;

  private record Method(String place, long lines) {
  }

  private record TopLevel(String name, Path file) {
  }

  private final List<Method> methods = new ArrayList<>();
  private final List<TopLevel> topLevels = new ArrayList<>();
  private final List<String> idleImports = new ArrayList<>();

  private static List<Path> files(String folder, String ending) {
    try (Stream<Path> all = Files.walk(Path.of(folder))) {
      return all.filter(p -> p.toString().endsWith(ending)).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> lines(Path file) {
    try {
      return Files.readAllLines(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @BeforeAll
  void parse() throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, null)) {
      List<Path> all = Stream.concat(files("src/main/java", ".java").stream(), files("src/test/java", ".java").stream()).toList();
      JavacTask task = (JavacTask) compiler.getTask(null, manager, null, null, null, manager.getJavaFileObjectsFromPaths(all));
      SourcePositions positions = Trees.instance(task).getSourcePositions();
      for (CompilationUnitTree unit : task.parse()) {
        boolean isProgram = unit.getSourceFile().toUri().getPath().contains("/src/main/java/");
        measure(unit, positions, isProgram);
        importsOf(unit);
      }
    }
  }

  private void measure(CompilationUnitTree unit, SourcePositions positions, boolean isProgram) {
    if (!isProgram) {
      return;
    }
    Path file = Path.of(unit.getSourceFile().getName());
    new TreeScanner<Void, Void>() {
      @Override
      public Void visitMethod(MethodTree method, Void none) {
        if (method.getBody() != null && positions.getStartPosition(unit, method) >= 0) {
          long from = unit.getLineMap().getLineNumber(positions.getStartPosition(unit, method));
          long to = unit.getLineMap().getLineNumber(positions.getEndPosition(unit, method));
          methods.add(new Method(file.getFileName() + ":" + from + " " + method.getName(), to - from + 1));
        }
        return super.visitMethod(method, none);
      }
    }.scan(unit, null);
    unit.getTypeDecls().stream().filter(ClassTree.class::isInstance)
        .forEach(t -> topLevels.add(new TopLevel(((ClassTree) t).getSimpleName().toString(), file)));
  }

  /** A name counts as used in Javadoc too. */
  private void importsOf(CompilationUnitTree unit) throws IOException {
    String text = unit.getSourceFile().getCharContent(true).toString().replaceAll("(?m)^import [^\\n]*", "");
    for (ImportTree imported : unit.getImports()) {
      String name = imported.getQualifiedIdentifier().toString().replaceFirst(".*\\.", "");
      if (!name.equals("*") && !Pattern.compile("\\b" + name + "\\b").matcher(text).find()) {
        idleImports.add(unit.getSourceFile().getName() + ": " + name);
      }
    }
  }

  @Test
  void linesFitOnAScreen() {
    List<String> tooLong = new ArrayList<>();
    for (Path file : Stream.of(files("src", ".java"), files("web", ".js"), files("web", ".css")).flatMap(List::stream).toList()) {
      int number = 0;
      for (String line : lines(file)) {
        number++;
        if (line.codePointCount(0, line.length()) > LONGEST_LINE) {
          tooLong.add(file + ":" + number);
        }
      }
    }
    assertThat(tooLong).isEmpty();
  }

  @Test
  void methodsFitOnAScreen() {
    assertThat(methods).hasSizeGreaterThan(1000);
    assertThat(methods.stream().filter(m -> m.lines() > LONGEST_METHOD)).isEmpty();
  }

  @Test
  void nineInTenFilesAreShort() {
    List<Path> all = files("src/main/java", ".java");
    List<Path> tooLong = all.stream().filter(f -> lines(f).size() > LONG_FILE).toList();
    assertThat(tooLong.size()).as("%s", tooLong).isLessThanOrEqualTo(all.size() / 10);
  }

  @Test
  void oneNameOneClass() {
    Map<String, List<Path>> byName = new HashMap<>();
    topLevels.forEach(t -> byName.computeIfAbsent(t.name(), n -> new ArrayList<>()).add(t.file()));
    assertThat(byName).hasSizeGreaterThan(400);
    assertThat(byName.values().stream().filter(files -> files.size() > 1)).isEmpty();
  }

  @Test
  void everyImportIsUsed() {
    assertThat(idleImports).isEmpty();
  }
}
