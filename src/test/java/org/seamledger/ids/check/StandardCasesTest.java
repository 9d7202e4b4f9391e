package org.seamledger.ids.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.seamledger.SharedModels;
import org.seamledger.ids.IdsDocument;
import org.seamledger.ids.IdsReader;
import org.seamledger.progress.Progress;
import org.seamledger.source.ModelFile;

/**
 * The test cases of the standard's own body (buildingSMART, IDS 1.0, Documentation/testcases), each with the verdict in its file's name.
 */
@Tag("slow")
class StandardCasesTest {

  static String verdict(Path ids) throws IOException {
    IdsDocument document;
    try (InputStream in = Files.newInputStream(ids)) {
      document = IdsReader.read(in, ids.toString());
    }
    if (!document.valid()) {
      return "invalid";
    }
    Path model = ids.resolveSibling(ids.getFileName().toString().replaceFirst("\\.ids$", ".ifc"));
    return IdsCheck.run(List.of(new ModelFile(model)), List.of(document), Progress.NONE).get(0).passes() ? "pass" : "fail";
  }

  @Test
  void everyCaseHasItsVerdict() throws IOException {
    Path folder = SharedModels.folder().resolve("../standards/ids/testcases").normalize();
    Assumptions.assumeTrue(Files.isDirectory(folder), "no test cases of the standard here");
    Map<String, Integer> counts = new TreeMap<>();
    List<String> wrong = new ArrayList<>();
    List<Path> cases;
    try (Stream<Path> files = Files.walk(folder)) {
      cases = files.filter(f -> f.getFileName().toString().endsWith(".ids")).sorted().toList();
    }
    for (Path ids : cases) {
      String expected = ids.getFileName().toString().replaceFirst("-.*", "");
      String found = verdict(ids);
      counts.merge(ids.getParent().getFileName() + " " + expected, 1, Integer::sum);
      if (!found.equals(expected)) {
        wrong.add(found + ": " + folder.relativize(ids));
      }
    }
    System.out.println("IDS cases by facet: " + counts);
    assertThat(cases).hasSizeGreaterThan(200);
    assertThat(wrong).isEmpty();
  }
}
