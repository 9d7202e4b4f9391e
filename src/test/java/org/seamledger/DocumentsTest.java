package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the documents say is so: links lead somewhere, commands run, and what they show is what the program prints. */
class DocumentsTest {

  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)[^)]*\\)");
  private static final String OMITTED = "…";

  private static String text(String name) throws IOException {
    return Files.readString(Path.of(name));
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.ValueSource(
      strings = {"README.md", "DEVELOPERS.md", "ifc-samples/README.md", "src/operators/sizing.md"})
  void linksLeadSomewhere(String document) throws IOException {
    Path folder = Path.of(document).toAbsolutePath().getParent();
    Matcher link = LINK.matcher(text(document));
    int links = 0;
    for (; link.find(); links++) {
      assertThat(folder.resolve(link.group(1))).exists();
    }
    assertThat(links).isPositive();
  }

  @Test
  void theGateIsTheSameCommandEverywhere() throws IOException {
    assertThat(text("README.md")).contains("```sh\nmvn verify\n```");
    assertThat(text("DEVELOPERS.md")).contains("The gate is one command, `mvn verify`");
    assertThat(text(".ci/run")).contains("\nmvn -B verify ");
  }

  @Test
  void theTableOfImportsNamesEveryPackage() throws IOException {
    String table = text("DEVELOPERS.md");
    assertThat(ArchitectureTest.packages()).allSatisfy(name -> assertThat(table).containsPattern("\\| .*`" + name + "`.* \\|"));
  }

  @Test
  void theDrawingOfTheWalkFollowsTheTable() throws IOException {
    WalkDrawing drawing = WalkDrawing.read(text("DEVELOPERS.md"));
    assertThat(drawing.nodes()).containsExactlyInAnyOrderElementsOf(ArchitectureTest.packages());
    assertThat(drawing.arrows()).hasSizeGreaterThan(ArchitectureTest.packages().size() / 2)
        .allSatisfy(arrow -> assertThat(ArchitectureTest.mayImport(arrow.importing(), arrow.imported())).as("%s", arrow).isTrue());
    assertThat(drawing.arrows().stream().flatMap(arrow -> Stream.of(arrow.from(), arrow.to()))).as("packages that an arrow touches")
        .containsAll(drawing.nodes().stream().filter(name -> !name.matches("finding|progress")).toList());
  }

  @Test
  void linesOfTheGuideFitOnAScreen() throws IOException {
    assertThat(text("DEVELOPERS.md").lines().filter(line -> line.codePointCount(0, line.length()) > 140)).isEmpty();
  }

  @Test
  void theWalkNamesEveryStage() throws IOException {
    String walk = text("DEVELOPERS.md");
    try (Stream<Path> packages = Files.list(Path.of("src/main/java/org/seamledger"))) {
      assertThat(packages.filter(Files::isDirectory).map(p -> p.getFileName().toString()).filter(name -> !name.matches("measure|finding")))
          .allSatisfy(name -> assertThat(walk).contains("](src/main/java/org/seamledger/" + name + "/"));
    }
  }

  /** A command of the README and what the README shows of its output. */
  record Example(String command, String shown) {
  }

  static List<Example> examples() throws IOException {
    List<Example> examples = new ArrayList<>();
    String command = "";
    String language = "";
    StringBuilder shown = new StringBuilder();
    for (String line : text("README.md").lines().toList()) {
      if (!line.startsWith("```")) {
        command = language.equals("sh") ? line : command;
        shown.append(language.equals("text") ? line + "\n" : "");
      } else if (line.equals("```") && language.equals("text")) {
        examples.add(new Example(command, shown.toString()));
        shown.setLength(0);
        language = "";
      } else {
        language = line.substring(3);
      }
    }
    return examples;
  }

  @Test
  void theReadmeHasExamples() throws IOException {
    assertThat(examples()).hasSize(2).allSatisfy(example -> assertThat(example.command()).startsWith("./seamledger "));
  }

  /** Each shown line is a line of the output, in the output's order; between two omissions marked … nothing is left out. */
  @Tag("packaged")
  @ParameterizedTest
  @MethodSource("examples")
  void commandsPrintWhatTheReadmeShows(Example example) throws Exception {
    Process process = new ProcessBuilder("bash", "-c", example.command()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    List<String> output = new String(process.getInputStream().readAllBytes()).lines().toList();
    assertThat(process.waitFor(5, TimeUnit.MINUTES)).isTrue();
    assertThat(process.exitValue()).isZero();
    Iterator<String> printed = output.iterator();
    boolean maySkip = true;
    for (String line : example.shown().lines().toList()) {
      if (line.equals(OMITTED)) {
        maySkip = true;
        continue;
      }
      String next = printed.hasNext() ? printed.next() : null;
      while (maySkip && next != null && !next.equals(line)) {
        next = printed.hasNext() ? printed.next() : null;
      }
      assertThat(next).as("in the output of %s", example.command()).isEqualTo(line);
      maySkip = false;
    }
  }
}
