package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The launcher's own decisions: a copy of it in a checkout of nothing, with stand-ins for Maven and Java that note their calls. */
@Tag("slow")
class LauncherTest {

  private static final String MAVEN = """
      #!/bin/sh
      echo built >> "$CALLS"
      echo "mvn says hello"
      sleep "${BUILD_SECONDS:-0}"
      test -z "$BUILD_FAILS" || { echo "no such symbol"; exit 1; }
      touch target/seamledger.jar
      """;
  private static final String JAVA = """
      #!/bin/sh
      for word in "$@"; do
        case $word in -XX:ArchiveClassesAtExit=*) echo archive > "${word#*=}"; echo archived >> "$CALLS"; exit 0;; esac
      done
      printf '%s\\n' "$@"
      """;

  @TempDir
  private Path folder;

  private Path checkout;
  private Path calls;

  @BeforeEach
  void layOut() throws IOException {
    checkout = folder.resolve("check out");
    calls = folder.resolve("calls");
    for (String name : List.of("src/main/java", "web", "shapes", "ifc-samples")) {
      Files.createDirectories(checkout.resolve(name));
    }
    Files.createFile(calls);
    Files.writeString(checkout.resolve("pom.xml"), "<project/>");
    Files.writeString(checkout.resolve("ifc-samples/school.ifc"), "ISO-10303-21;");
    Files.writeString(checkout.resolve("src/main/java/A.java"), "class A {}");
    script(checkout.resolve("seamledger"), Files.readString(Path.of("seamledger")));
    script(folder.resolve("bin/mvn"), MAVEN);
    script(folder.resolve("bin/java"), JAVA);
  }

  private static void script(Path file, String text) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private record Ended(int status, String out, String err) {
    List<String> javaWords() {
      return out.lines().toList();
    }
  }

  private Process start(Path launcher, Map<String, String> environment, String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(launcher.toString()));
    command.addAll(List.of(words));
    ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
    builder.environment().remove("JAVA_HOME");
    builder.environment().remove("SEAMLEDGER_JAVA_OPTS");
    builder.environment().put("PATH", folder.resolve("bin") + ":" + System.getenv("PATH"));
    builder.environment().put("CALLS", calls.toString());
    builder.environment().putAll(environment);
    return builder.start();
  }

  private static Ended end(Process process) throws Exception {
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes());
    String err = new String(process.getErrorStream().readAllBytes());
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return new Ended(process.exitValue(), out, err);
  }

  private Ended run(String... words) throws Exception {
    return end(start(checkout.resolve("seamledger"), Map.of(), words));
  }

  private void age(String name, int seconds) throws IOException {
    Files.setLastModifiedTime(checkout.resolve(name), FileTime.from(Instant.now().minusSeconds(seconds)));
  }

  @Test
  void buildsTheFirstTimeOnly() throws Exception {
    Ended first = run("analyze", "house.ifc");
    assertThat(first.status()).isZero();
    assertThat(first.err()).contains("building").contains("mvn says hello");
    assertThat(first.out()).doesNotContain("mvn says hello");
    assertThat(run("analyze", "house.ifc").err()).isEmpty();
    assertThat(calls).hasContent("built\narchived\n");
  }

  @Test
  void buildsAgainWhereASourceIsNewer() throws Exception {
    run("--version");
    age("target/seamledger.jar", 60);
    age("target/seamledger.jsa", 60);
    run("--version");
    assertThat(calls).hasContent("built\narchived\nbuilt\narchived\n");
  }

  @Test
  void editedShapesNeedNoBuild() throws Exception {
    run("--version");
    for (String name : List.of("src/main/java/A.java", "src/main/java", "src/main", "pom.xml", "web", "target/seamledger.jar")) {
      age(name, 60);
    }
    Files.writeString(checkout.resolve("shapes/kinds.ttl"), "# edited");
    assertThat(run("--version").javaWords()).contains("-Dseamledger.shapes=" + checkout.toRealPath().resolve("shapes"));
    assertThat(calls).hasContent("built\narchived\n");
  }

  @Test
  void aBuildThatFailsIsSaidInOneLineBelowMavens() throws Exception {
    Ended failed = end(start(checkout.resolve("seamledger"), Map.of("BUILD_FAILS", "1"), "--version"));
    assertThat(failed.status()).isEqualTo(70);
    assertThat(failed.out()).isEmpty();
    assertThat(failed.err()).contains("no such symbol").endsWith("seamledger: the build failed; what Maven said stands above\n");
  }

  @Test
  void worksThroughALinkFromAnywhereWithWordsAsTheyAre() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("bin/roof"), Path.of("../check out/seamledger"));
    Ended ended = end(start(link, Map.of(), "analyze", "my house.ifc", "--output", "*"));
    assertThat(ended.status()).isZero();
    assertThat(ended.javaWords()).endsWith("-jar", checkout.toRealPath().resolve("target/seamledger.jar").toString(), "analyze",
        "my house.ifc", "--output", "*");
  }

  @Test
  void twoFirstStartsBuildOnce() throws Exception {
    Map<String, String> slow = Map.of("BUILD_SECONDS", "1");
    Process one = start(checkout.resolve("seamledger"), slow, "--version");
    Process two = start(checkout.resolve("seamledger"), slow, "--version");
    assertThat(end(one).status()).isZero();
    assertThat(end(two).status()).isZero();
    assertThat(calls).hasContent("built\narchived\n");
  }

  @Test
  void theSmallCompilerIsForSmallModels() throws Exception {
    Path small = Files.writeString(folder.resolve("small.ifc"), "ISO-10303-21;");
    Path large = folder.resolve("large.ifc");
    try (var file = new java.io.RandomAccessFile(large.toFile(), "rw")) {
      file.setLength(100_000_000);
    }
    assertThat(run("analyze", small.toString()).javaWords()).contains("-XX:TieredStopAtLevel=1");
    assertThat(run("analyze", large.toString()).javaWords()).doesNotContain("-XX:TieredStopAtLevel=1");
    assertThat(run("serve").javaWords()).doesNotContain("-XX:TieredStopAtLevel=1");
  }

  @Test
  void passesOnWhatJavaShallGet() throws Exception {
    Ended ended = end(start(checkout.resolve("seamledger"), Map.of("SEAMLEDGER_JAVA_OPTS", "-Xmx2g -Xss4m"), "--version"));
    assertThat(ended.javaWords()).containsSubsequence("-Xmx2g", "-Xss4m", "-jar");
  }

  /** A search path that has these tools, the stand-ins, and nothing else. */
  private String only(String... tools) throws IOException {
    Path bin = folder.resolve("few");
    for (String tool : tools) {
      script(bin.resolve(tool), "#!/bin/sh\nexec " + toolOfThisSystem(tool) + " \"$@\"\n");
    }
    return folder.resolve("bin") + ":" + bin;
  }

  private static Path toolOfThisSystem(String tool) {
    return Stream.of(System.getenv("PATH").split(":")).map(place -> Path.of(place, tool)).filter(Files::isExecutable).findFirst()
        .orElseThrow();
  }

  /** What POSIX has, and no more: no flock, stat, readlink, realpath, find, mktemp, dirname, sed. */
  private String posixOnly() throws IOException {
    return only("bash", "find", "mkdir", "mv", "rm", "sleep", "touch", "ls");
  }

  @Test
  void buildsThroughALinkWithPosixToolsOnly() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("bin/roof"), Path.of("../check out/seamledger"));
    Map<String, String> few = Map.of("PATH", posixOnly());
    Ended first = end(start(link, few, "analyze", "house.ifc"));
    assertThat(first.status()).as(first.err()).isZero();
    assertThat(first.err()).contains("building").doesNotContain("not found");
    Ended second = end(start(link, few, "analyze", "house.ifc"));
    assertThat(second.err()).isEmpty();
    assertThat(second.javaWords()).contains("-XX:TieredStopAtLevel=1").endsWith("-jar",
        checkout.toRealPath().resolve("target/seamledger.jar").toString(),
        "analyze", "house.ifc");
    assertThat(calls).hasContent("built\narchived\n");
    age("target/seamledger.jar", 60);
    assertThat(end(start(link, few, "--version")).err()).contains("building");
    assertThat(checkout.resolve("target/lock.d")).doesNotExist();
  }

  @Test
  void withPosixToolsOnlyALargeModelIsSeenToBeOne() throws Exception {
    Path large = folder.resolve("a large model.ifc");
    try (var file = new java.io.RandomAccessFile(large.toFile(), "rw")) {
      file.setLength(100_000_000);
    }
    Ended ended = end(start(checkout.resolve("seamledger"), Map.of("PATH", posixOnly()), "analyze", large.toString()));
    assertThat(ended.javaWords()).contains("-jar").doesNotContain("-XX:TieredStopAtLevel=1");
  }

  @Test
  void twoFirstStartsBuildOnceWithoutFlock() throws Exception {
    Map<String, String> slow = Map.of("BUILD_SECONDS", "2", "PATH", posixOnly());
    Process one = start(checkout.resolve("seamledger"), slow, "--version");
    Process two = start(checkout.resolve("seamledger"), slow, "--version");
    List<Ended> both = List.of(end(one), end(two));
    assertThat(both).extracting(Ended::status).containsExactly(0, 0);
    assertThat(both).filteredOn(ended -> ended.err().contains("is building;")).as("who waits says so").hasSize(1);
    assertThat(calls).hasContent("built\narchived\n");
  }

  /** A number that no process has; none at all, where the power went before it was written. */
  @ParameterizedTest
  @ValueSource(strings = {"999999999\n", ""})
  void aLockOfAProcessThatIsNoMoreIsTakenAway(String holder) throws Exception {
    Files.createDirectories(checkout.resolve("target/lock.d"));
    Files.writeString(checkout.resolve("target/lock.d/process"), holder);
    Ended ended = end(start(checkout.resolve("seamledger"), Map.of("PATH", posixOnly()), "--version"));
    assertThat(ended.status()).as(ended.err()).isZero();
    assertThat(calls).hasContent("built\narchived\n");
    assertThat(checkout.resolve("target/lock.d")).doesNotExist();
  }

  @Test
  void aFailedBuildLeavesNoLock() throws Exception {
    Map<String, String> fails = Map.of("BUILD_FAILS", "1", "PATH", posixOnly());
    assertThat(end(start(checkout.resolve("seamledger"), fails, "--version")).status()).isEqualTo(70);
    assertThat(checkout.resolve("target")).isDirectoryNotContaining("glob:**lock.d*");
  }

  @ParameterizedTest
  @ValueSource(strings = {"pom.xml", "src/main/java/A.java", "web/index.html"})
  void whateverIsPackedCountsAsASource(String name) throws Exception {
    run("--version");
    for (String old : List.of("src/main/java/A.java", "src/main/java", "src/main", "pom.xml", "web")) {
      age(old, 120);
    }
    age("target/seamledger.jar", 60);
    Files.writeString(checkout.resolve(name), "changed");
    run("--version");
    assertThat(Files.readString(calls)).startsWith("built\narchived\nbuilt\n");
  }

  @Test
  void aSourceThatWasTakenAwayCountsToo() throws Exception {
    run("--version");
    Files.delete(checkout.resolve("src/main/java/A.java"));
    for (String old : List.of("src/main", "pom.xml", "web")) {
      age(old, 120);
    }
    age("target/seamledger.jar", 60);
    run("--version");
    assertThat(Files.readString(calls)).startsWith("built\narchived\nbuilt\n");
  }

  @Test
  void withNeitherABuildNorSourcesSaysSo() throws Exception {
    Path alone = folder.resolve("alone");
    script(alone.resolve("seamledger"), Files.readString(Path.of("seamledger")));
    Ended ended = end(start(alone.resolve("seamledger"), Map.of(), "--version"));
    assertThat(ended.status()).isEqualTo(70);
    assertThat(ended.err())
        .isEqualTo("seamledger: there is neither a build in " + alone.toRealPath() + "/target nor the sources to make one\n");
  }

  /** Java reads names of files by the locale; in POSIX's own it would know none beyond ASCII. */
  @Test
  void javaGetsALocaleThatKnowsEveryLetter() throws Exception {
    script(folder.resolve("bin/java"), "#!/bin/sh\necho \"${LC_ALL:-$LC_CTYPE}\"\n");
    assertThat(end(start(checkout.resolve("seamledger"), Map.of("LC_ALL", "C"), "--version")).out()).isEqualTo("C.UTF-8\n");
    assertThat(end(start(checkout.resolve("seamledger"), Map.of("LC_ALL", "", "LC_CTYPE", "", "LANG", "POSIX"), "--version")).out())
        .isEqualTo("C.UTF-8\n");
    assertThat(end(start(checkout.resolve("seamledger"), Map.of("LC_ALL", "de_DE.utf8"), "--version")).out()).isEqualTo("de_DE.utf8\n");
  }

  @Test
  void theLauncherKeepsToTheBashOfMacOs() throws IOException {
    assertThat(Files.readString(Path.of("seamledger"))).as("what came after bash 3.2")
        .doesNotContainPattern("declare -A|local -n|mapfile|readarray|\\$\\{\\w+(,,|\\^\\^|@)|&>>|\\|&|globstar|coproc|EPOCH|wait -n");
  }
}
