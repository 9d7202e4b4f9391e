package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Who pulls a mended pom gets what it mends at the next start. The launcher, this build's pom and Maven are the real ones; the program is
 * one class, which says whether a library is there, and one that the build starts.
 */
@Tag("packaged")
class RepackingTest {

  private static final String PROGRAM = """
      package org.seamledger.cli;
      public final class Main {
        public static void main(String[] words) {
          String found;
          try {
            Class.forName("com.google.common.base.Charsets");
            found = "there";
          } catch (ClassNotFoundException e) {
            found = "missing";
          }
          System.out.println(found + (Main.class.getResource("/web/old.js") == null ? "" : ", old page"));
        }
      }
      """;
  private static final String STORED_RULES = """
      package org.seamledger.shacl;
      public final class StoredRules {
        public static void main(String[] words) {
        }
      }
      """;
  private static final String GUAVA = "<artifactId>guava</artifactId>\n      <version>([^<]+)</version>\n";

  @TempDir
  private Path checkout;

  private void write(String name, String text) throws IOException {
    Files.createDirectories(checkout.resolve(name).getParent());
    Files.writeString(checkout.resolve(name), text);
  }

  private String start() {
    InstalledProgram.Ended ended = InstalledProgram.run(checkout, List.of("env",
        "MAVEN_OPTS=-XX:TieredStopAtLevel=1" + repository().map(r -> " -Dmaven.repo.local=" + r).orElse(""),
        checkout.resolve("seamledger").toString()));
    assertThat(ended.status()).as(ended.err()).isZero();
    return ended.out();
  }

  /** Where the Maven that runs this keeps artifacts: all that is needed is there. */
  private static Optional<String> repository() {
    return Optional.ofNullable(System.getProperty("localRepository"));
  }

  private boolean hasGuava() throws IOException {
    try (Stream<Path> files = Files.list(checkout.resolve("target/lib"))) {
      return files.anyMatch(f -> f.getFileName().toString().startsWith("guava-"));
    }
  }

  @Test
  void aMendedScopeReachesWhoPullsIt() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    String broken = pom.replaceFirst(GUAVA, "$0      <scope>test</scope>\n");
    assertThat(broken).isNotEqualTo(pom);
    Files.copy(Path.of("seamledger"), checkout.resolve("seamledger"), StandardCopyOption.COPY_ATTRIBUTES);
    write("src/main/java/org/seamledger/cli/Main.java", PROGRAM);
    write("src/main/java/org/seamledger/shacl/StoredRules.java", STORED_RULES);
    write("web/index.js", "");
    write("web/old.js", "");
    write("pom.xml", broken);
    assertThat(start()).isEqualTo("missing, old page\n");
    assertThat(hasGuava()).isFalse();

    write("pom.xml", pom);
    assertThat(start()).isEqualTo("there, old page\n");
    assertThat(hasGuava()).isTrue();

    write("pom.xml", broken);
    Files.delete(checkout.resolve("web/old.js"));
    assertThat(start()).isEqualTo("missing\n");
    assertThat(hasGuava()).as("what is needed no more goes").isFalse();
  }
}
