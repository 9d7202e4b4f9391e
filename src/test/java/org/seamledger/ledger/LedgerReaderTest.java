package org.seamledger.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Stored results, read in one pass; sums by hand. */
class LedgerReaderTest {

  private static final String RESULT = """
      {"contract":1,"later":{"deep":[1,[2]]},"junctions":[
      {"id":"J1","kind":"eave","lengthM":2.5,"path":[[0,0,0],[2.5,0,0]],"steps":["long"],"seals":[
      {"form":"tape","exposure":"covered","lengthM":0.1,"widthMm":9},{"form":"bead","exposure":"covered","lengthM":1},
      {"form":"tape","exposure":"covered","lengthM":0.2}],"fasteners":[{"count":3},{"count":4}],"metal":[{},{}],
      "facts":{"upstandM":0.15,"against":"wall"},"novel":"kept"}],
      "roofFaces":null,"quantities":{"panels":[{"count":2,"lengthM":3.1,"areaM2":1.5},{"count":1,"lengthM":0.2,"areaM2":0.1}],"order":[]}}
      """;

  private static ResultOutline outline(String json) throws IOException {
    return ResultOutline.read(new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)));
  }

  private static byte[] gzip(String json) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(bytes)) {
      out.write(json.getBytes(StandardCharsets.UTF_8));
    }
    return bytes.toByteArray();
  }

  @Test
  void comparingReadsJunctionsAndSkipsTheRest() throws IOException {
    ResultOutline outline = outline(RESULT);
    assertThat(outline.contract()).isEqualTo(1);
    assertThat(outline.roofFaces()).isEmpty();
    assertThat(outline.junctions()).singleElement().satisfies(l -> {
      assertThat(l.id()).isEqualTo("J1");
      assertThat(l.end()).containsExactly(2.5, 0, 0);
      assertThat(l.seals()).hasSize(3);
    });
  }

  @Test
  void theOutlineSumsSealsFastenersAndPanelsAndAJunctionStaysWhole() throws IOException {
    LedgerParts parts = LedgerParts.of(gzip(RESULT));
    String outline = new String(new GZIPInputStream(new ByteArrayInputStream(parts.outline())).readAllBytes(), StandardCharsets.UTF_8);
    assertThat(outline)
        .isEqualTo("{\"contract\":1,\"later\":{\"deep\":[1,[2]]},\"junctions\":[{\"id\":\"J1\",\"kind\":\"eave\",\"lengthM\":2.5,"
            + "\"path\":[[0,0,0],[2.5,0,0]],\"novel\":\"kept\",\"seals\":[{\"form\":\"tape\",\"exposure\":\"covered\",\"lengthM\":0.3},"
            + "{\"form\":\"bead\",\"exposure\":\"covered\",\"lengthM\":1.0}],"
            + "\"fasteners\":7,\"metalParts\":2,\"facts\":{\"upstandM\":0.15}}],"
            + "\"roofFaces\":null,\"quantities\":{\"order\":[],\"panelSum\":{\"kinds\":2,\"count\":3,\"lengthM\":6.4,\"areaM2\":3.1}}}");
    assertThat(new String(parts.junction("J1").orElseThrow(), StandardCharsets.UTF_8)).contains("\"steps\":[\"long\"]")
        .contains("\"widthMm\":9");
    assertThat(parts.junction("J2")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "[1, 2", "{\"junctions\":[", "{\"junctions\":[3]}", "{\"junctions\":[{\"id\":\"a\"}]}", "{\"findings\":[{}"})
  void whatIsNoResultIsRefused(String json) {
    assertThatThrownBy(() -> outline(json)).isInstanceOf(IOException.class);
  }
}
