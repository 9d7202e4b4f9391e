package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Benchmarks are no part of the build, and compiled only when somebody measures: they shall not fall behind the program meanwhile. */
class BenchSourcesTest {

  @Test
  void benchmarksFitTheProgram(@TempDir Path out) throws IOException {
    List<Path> sources;
    try (Stream<Path> all = Files.walk(Path.of("src", "bench"))) {
      sources = all.filter(p -> p.toString().endsWith(".java")).sorted().toList();
    }
    assertThat(sources).isNotEmpty();
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter said = new StringWriter();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      boolean compiled = compiler.getTask(said, files, null,
          List.of("-proc:none", "-d", out.toString(), "-cp", System.getProperty("java.class.path")), null,
          files.getJavaFileObjectsFromPaths(sources)).call();
      assertThat(compiled).as(said.toString()).isTrue();
    }
  }
}
