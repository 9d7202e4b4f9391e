package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

class JsonLedgerTest {

  private static String text(Takeoff takeoff) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JsonLedger.write(takeoff, out);
    return out.toString(StandardCharsets.UTF_8);
  }

  private static JsonNode tree() throws IOException {
    return new ObjectMapper().readTree(text(Takeoffs.boatHouse()));
  }

  @Test
  void oneDocumentAndALineEnd() throws IOException {
    String text = text(Takeoffs.boatHouse());
    assertThat(text).startsWith("{\n  \"contract\" : 1,").endsWith("}\n").doesNotContain("\r");
    assertThat(text(Takeoffs.boatHouse())).isEqualTo(text);
  }

  @Test
  void programAndModels() throws IOException {
    JsonNode tree = tree();
    assertThat(tree.at("/contract").asInt()).isEqualTo(1);
    assertThat(tree.at("/program").toString()).isEqualTo("{\"name\":\"seamledger\",\"version\":\"1.2.3\",\"shapes\":\"abc123\"}");
    assertThat(tree.at("/models/0").toString()).isEqualTo("{\"file\":\"boat-house.ifc\",\"sha256\":\"00ff\",\"schema\":\"IFC4\","
        + "\"lengthUnit\":\"millimetre\",\"application\":\"Pencil 1\",\"bytes\":1234}");
  }

  /** Slope and area by the framing-square table: 6 in 12 is 26.565° and 1.11803 of the plan. */
  @Test
  void facesHaveSlopeFallAndArea() throws IOException {
    JsonNode face = tree().at("/roofFaces/0");
    assertThat(face.get("id").asText()).isEqualTo("F1");
    assertThat(face.get("slopeDegrees").asDouble()).isCloseTo(26.565, within(0.0005));
    assertThat(face.get("risePer12").asDouble()).isCloseTo(6, within(1e-6));
    assertThat(face.get("fallAzimuthDegrees").asDouble()).isEqualTo(180);
    assertThat(face.get("planAreaM2").asDouble()).isCloseTo(40, within(1e-5));
    assertThat(face.get("areaM2").asDouble()).isCloseTo(40 * 1.11803, within(5e-4));
    assertThat(face.get("perimeterM").asDouble()).isCloseTo(20 + 2 * Math.sqrt(20), within(1e-5));
  }

  @Test
  void placesAreInTheModelsCoordinates() throws IOException {
    JsonNode ridge = tree().at("/junctions").findParents("id").stream().filter(j -> j.get("id").asText().equals("ridge1")).findFirst()
        .orElseThrow();
    assertThat(ridge.get("path").toString()).isEqualTo("[[450000,5100000,14.5],[450010,5100000,14.5]]");
    assertThat(ridge.get("lengthM").asDouble()).isEqualTo(10);
    assertThat(ridge.get("faces").toString()).isEqualTo("[\"F1\",\"F2\"]");
    assertThat(ridge.at("/facts/foldDegrees").decimalValue().toPlainString()).isEqualTo("53.130102");
    assertThat(ridge.at("/facts/faceCount").asInt()).isEqualTo(2);
  }

  @Test
  void findingsStandAtTheirJunctionsAndTogether() throws IOException {
    JsonNode tree = tree();
    JsonNode rake = tree.at("/junctions/1");
    assertThat(rake.get("id").asText()).isEqualTo("rake1");
    assertThat(rake.get("findings").toString()).isEqualTo("[\"kind/unclassified\"]");
    assertThat(tree.at("/findings/0/junction").asText()).isEqualTo("rake1");
    assertThat(tree.at("/findings/0/severity").asText()).isEqualTo("warning");
    assertThat(tree.at("/findings/1/junction").isNull()).isTrue();
    assertThat(tree.at("/findings/1/elements/0").asText()).isEqualTo("0roof");
  }

  @Test
  void namesFromAModelStayText() throws IOException {
    String name = "\"},<script>\u0007\u2028 Käsekuchen \uD83C\uDFE0";
    JsonNode tree = new ObjectMapper().readTree(text(Takeoffs.boatHouse(name)));
    assertThat(tree.at("/elements/0/name").asText()).isEqualTo(name);
  }
}
