package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.takeoff.Program;

/** What operators get: the release in an empty folder whose path has spaces and letters beyond ASCII, with a Java and no more. */
@Tag("packaged")
class ReleaseArchiveTest {

  private static final int ANY_EXECUTE = 0111;

  @TempDir
  private static Path folder;

  private static Path root;

  @BeforeAll
  static void unpack() throws IOException {
    Path place = Files.createDirectory(folder.resolve("Dächer & Söhne 屋根"));
    Path archive = Path.of("target", "seamledger-" + Program.version() + ".zip");
    try (ZipFile zip = ZipFile.builder().setPath(archive).get()) {
      for (ZipArchiveEntry entry : java.util.Collections.list(zip.getEntries())) {
        Path file = place.resolve(entry.getName());
        assertThat(file.normalize()).startsWithRaw(place);
        if (entry.isDirectory()) {
          Files.createDirectories(file);
          continue;
        }
        Files.createDirectories(file.getParent());
        try (InputStream in = zip.getInputStream(entry)) {
          Files.copy(in, file);
        }
        if ((entry.getUnixMode() & ANY_EXECUTE) != 0) {
          Set<PosixFilePermission> permissions = new TreeSet<>(Files.getPosixFilePermissions(file));
          permissions.add(PosixFilePermission.OWNER_EXECUTE);
          Files.setPosixFilePermissions(file, permissions);
        }
      }
    }
    root = place.resolve("seamledger-" + Program.version());
  }

  /** Before the folder goes: links that lead out of it are not followed, but warned of. */
  @AfterAll
  static void unlink() throws IOException {
    try (Stream<Path> links = Files.list(folder.resolve("bin"))) {
      for (Path link : links.toList()) {
        Files.delete(link);
      }
    }
  }

  /** A process that finds a Java, the tools of POSIX, and no Maven. */
  private static ProcessBuilder process(String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of(root.resolve("seamledger").toString()));
    command.addAll(List.of(words));
    ProcessBuilder builder = InstalledProgram.process(folder, command);
    Map<String, String> environment = builder.environment();
    Path bin = Files.createDirectories(folder.resolve("bin"));
    for (String tool : "bash env mkdir mv rm sleep touch ls flock readlink ps".split(" ")) {
      Path real = Path.of("/usr/bin", tool);
      if (Files.exists(real) && !Files.exists(bin.resolve(tool))) {
        Files.createSymbolicLink(bin.resolve(tool), real);
      }
    }
    environment.put("PATH", bin.toString());
    environment.put("JAVA_HOME", System.getProperty("java.home"));
    environment.put("LC_ALL", "C");
    return builder;
  }

  @Test
  void startsWithoutAnythingElse() throws Exception {
    Path result = folder.resolve("ledger.csv");
    Process process = process("analyze", root.resolve("ifc-samples/gatehouse.ifc").toString(), "--format", "csv", "--output",
        result.toString()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    assertThat(process.waitFor(3, TimeUnit.MINUTES)).isTrue();
    assertThat(process.exitValue()).as(said).isZero();
    // The gatehouse has 14 lines, as its table in the readme says.
    assertThat(Files.readAllLines(result)).hasSize(15);
  }

  @Test
  void servesThePage() throws Exception {
    Path log = folder.resolve("serve.log");
    Process process = process("serve", "--port", "0", "--data", folder.resolve("data").toString()).redirectErrorStream(true)
        .redirectOutput(log.toFile()).start();
    try {
      Pattern open = Pattern.compile("open (http://\\S+) in a browser");
      Matcher said = open.matcher("");
      while (!said.find() && process.isAlive()) {
        Thread.sleep(50);
        said = open.matcher(Files.readString(log));
      }
      assertThat(process.isAlive()).as(Files.readString(log)).isTrue();
      for (String path : List.of("", "api/health", "api/samples")) {
        HttpResponse<String> answer = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(said.group(1) + path)).build(),
            HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        assertThat(answer.body()).as(path).contains(path.equals("api/samples") ? "gatehouse" : "seamledger");
      }
    } finally {
      process.destroy();
    }
    assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
  }

  @Test
  void holdsWhatItSays() throws IOException {
    try (Stream<Path> all = Files.list(root)) {
      assertThat(all.map(f -> f.getFileName().toString())).containsExactlyInAnyOrder("seamledger", "seamledger.cmd", "README.md",
          "DEVELOPERS.md", "LICENSE", "shapes", "ifc-samples", "target", "src");
    }
    for (String file : new String[] {"target/seamledger.jar", "shapes/kinds.ttl", "shapes/ids/roof-model.ids", "ifc-samples/school.ifc",
        "src/operators/seamledger.service", "src/operators/seamledger-work.service", "src/operators/Containerfile",
        "src/operators/sizing.md", "src/pipelines/gate.sh"}) {
      assertThat(root.resolve(file)).isNotEmptyFile();
    }
    assertThat(root.resolve("src/main")).as("or the launcher would want to build").doesNotExist();
    assertThat(root.resolve("pom.xml")).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"README.md", "ifc-samples/README.md", "src/operators/sizing.md"})
  void linksOfWhatUsersReadLeadSomewhere(String document) throws IOException {
    Matcher link = Pattern.compile("\\]\\(([^)#:]+)[^):]*\\)").matcher(Files.readString(root.resolve(document)));
    int links = 0;
    for (; link.find(); links++) {
      assertThat(root.resolve(document).getParent().resolve(link.group(1))).as(document).exists();
    }
    assertThat(links).isPositive();
  }

  /** The unit starts what the archive holds, with options that the program has. */
  @Test
  void unitAndImageStartTheProgramWithItsOwnOptions() throws IOException {
    String unit = Files.readString(root.resolve("src/operators/seamledger.service"));
    String image = Files.readString(root.resolve("src/operators/Containerfile"));
    requireOptions("serve", unit.replaceAll("(?m)^#.*|.*--now.*", "") + image.substring(image.indexOf("ENTRYPOINT")));
    assertThat(unit).contains("ExecStart=/opt/seamledger/seamledger serve");
    String worker = Files.readString(root.resolve("src/operators/seamledger-work.service"));
    requireOptions("work", worker.replaceAll("(?m)^#.*", ""));
    requireOptions("serve", worker.substring(worker.indexOf("ExecStart=/opt/seamledger/seamledger serve"), worker.indexOf("[Unit]")));
    assertThat(worker).contains("\nExecStart=/opt/seamledger/seamledger work --models ");
  }

  private static void requireOptions(String command, String text) throws IOException {
    Process help = process(command, "--help").redirectErrorStream(true).start();
    String options = new String(help.getInputStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    for (Matcher m = Pattern.compile("(--[a-z]+)").matcher(text); m.find();) {
      assertThat(options).contains(m.group(1));
    }
  }
}
