package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.finding.SmallDisk;

/** A packed model that finds no room to be unpacked is not a broken one, nor a fault of the program. */
class FullTemporaryFolderTest {

  private static final int ROOM = 16 << 10;

  @TempDir
  private Path folder;

  @Test
  void saysThatThereIsNoRoomAndWhere() throws Exception {
    byte[] model = Files.readAllBytes(Path.of("ifc-samples", "lodge.ifc"));
    assertThat(model.length).isGreaterThan(ROOM);
    Path packed = folder.resolve("lodge.ifczip");
    try (OutputStream out = Files.newOutputStream(packed); ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.putNextEntry(new ZipEntry("lodge.ifc"));
      zip.write(model);
    }
    Path small = Files.createDirectory(folder.resolve("small"));
    Process ended = analyze(packed, SmallDisk.at(small, Integer.toString(ROOM)), small);
    String said = new String(ended.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(ended.waitFor()).as(said).isEqualTo(ExitStatus.OUTPUT);
    assertThat(said.lines().toList()).last().asString().contains("no room left", small.toString());
    assertThat(analyze(packed, List.of(), small).waitFor()).as("where there is room").isZero();
  }

  private Process analyze(Path model, List<String> before, Path temporary) throws IOException {
    List<String> command = new ArrayList<>(before);
    command.addAll(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
        "-Djava.io.tmpdir=" + temporary, "-cp", System.getProperty("java.class.path"), Main.class.getName(), "analyze", model.toString(),
        "--output", folder.resolve("result.txt").toString()));
    return new ProcessBuilder(command).start();
  }
}
