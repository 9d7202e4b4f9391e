package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamledger.export.JsonLedger;
import org.seamledger.ledger.RoofThumbnail;
import org.seamledger.ledger.StoredLedger;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;

/**
 * The small pictures of the samples that the start page shows are what the program draws of them. With {@code -Dthumbnails.write=true} they
 * are drawn anew.
 */
@Tag("slow")
class ThumbnailsTest {

  private static final Path SAMPLES = Path.of("ifc-samples");

  static List<Path> samples() throws IOException {
    try (Stream<Path> files = Files.list(SAMPLES)) {
      return files.filter(f -> f.toString().endsWith(".ifc")).sorted().toList();
    }
  }

  private static String drawn(Path model) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      JsonLedger.write(Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE), out);
    }
    return RoofThumbnail.svg(new StoredLedger("", 0, bytes.toByteArray()));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void pictureIsWhatTheProgramDraws(Path model) throws IOException {
    Path file = SAMPLES.resolve("thumbnails").resolve(model.getFileName().toString().replace(".ifc", ".svg"));
    String svg = drawn(model);
    if (Boolean.getBoolean("thumbnails.write")) {
      Files.createDirectories(file.getParent());
      Files.writeString(file, svg);
    }
    assertThat(svg).isEqualTo(Files.readString(file));
  }

  /** The gatehouse is 10 m by 7 m with four faces that meet in a ridge of 3 m: they fill the height, and what falls south is darker. */
  @Test
  void aHipRoofIsAsItLies() throws IOException {
    String svg = drawn(SAMPLES.resolve("gatehouse.ifc"));
    assertThat(svg).contains("viewBox=\"0 0 160 100\"");
    assertThat(svg.split("<path ")).as("faces").hasSize(5);
    assertThat(svg).contains(" 4", " 96");
    List<String> fills = Stream.of(svg.split("fill=\"#")).skip(1).map(s -> s.substring(0, 6)).distinct().toList();
    assertThat(fills).as("south and east faces in the shade, north and west ones in the light").hasSizeGreaterThan(1);
  }

  /** Two facets of a vault, one that falls north and one that falls south: each in its own light, no line between them. */
  @Test
  void aCurvedFaceIsLitByItsFacets() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write("""
          {"roofFaces": [{"curved": true, "slopeDegrees": 0, "fallAzimuthDegrees": 0, "facets": [
            [[[0, 0, 1], [9, 0, 1], [9, 5, 0], [0, 5, 0]]], [[[0, -5, 0], [9, -5, 0], [9, 0, 1], [0, 0, 1]]]]}]}"""
          .getBytes(StandardCharsets.UTF_8));
    }
    List<String> fills = Stream.of(RoofThumbnail.svg(new StoredLedger("", 0, bytes.toByteArray())).split("fill=\"#")).skip(1).toList();
    assertThat(fills).hasSize(2).allSatisfy(f -> assertThat(f).contains("stroke=\"#" + f.substring(0, 6)));
    // By Lambert's law: slope atan(1/5), light from the north-west at 45°; the share of light is 0.45 and half of the cosine.
    double up = Math.cos(Math.atan(0.2)) * 0.707;
    double north = Math.sin(Math.atan(0.2)) * 0.5;
    assertThat(fills.get(0)).startsWith(Integer.toHexString((int) (216 * (0.45 + 0.5 * (up + north)))));
    assertThat(fills.get(1)).startsWith(Integer.toHexString((int) (216 * (0.45 + 0.5 * (up - north)))));
  }
}
