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
        + "\"lengthUnit\":\"millimetre\",\"application\":\"Pencil 1\",\"bytes\":1234,\"date\":\"\"}");
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

  /** 10 m of ridge: two lines of tape on each of two faces are 40 m, 44 m with 10 %, three rolls of 50 ft. */
  @Test
  void quantitiesStandAtTheirJunctionAndTogether() throws IOException {
    JsonNode tree = tree();
    JsonNode ridge = tree.at("/junctions/2");
    assertThat(ridge.get("detail").asText()).isEqualTo("ridge-by-hand");
    assertThat(ridge.at("/metal/0").toString()).startsWith("{\"part\":\"ridge cap\",\"face\":null,\"pieces\":");
    assertThat(ridge.at("/seals/0").toString()).startsWith("{\"form\":\"tape\",\"role\":\"primary\",\"exposure\":\"concealed\","
        + "\"place\":\"under the cap\",\"face\":\"F1\",\"run\":\"continuous\",\"lines\":2,\"lengthM\":20,");
    assertThat(ridge.at("/fasteners/1/count").asInt()).isEqualTo(99);
    assertThat(tree.at("/quantities/tape/netM").asDouble()).isEqualTo(40);
    assertThat(tree.at("/quantities/tape/orderM").asDouble()).isCloseTo(44, within(1e-9));
    assertThat(tree.at("/quantities/tape/rolls").asInt()).isEqualTo(3);
    assertThat(tree.at("/quantities/fasteners/net").asInt()).isEqualTo(198);
    assertThat(tree.at("/quantities/metalFirst/share").asDouble()).isEqualTo(1);
    assertThat(tree.at("/details/0/holdPoints/0/before").asText()).isEqualTo("the cap is set");
    assertThat(tree.at("/junctions/0/detail").isNull()).isTrue();
  }

  /** Seams every 16 in over 10 m, from the left end: at 0.4064 k, k = 1 to 24, each as long as the slope, √20 m. */
  @Test
  void facesHaveTheirSeams() throws IOException {
    JsonNode seams = tree().at("/roofFaces/0/seams");
    assertThat(seams.get("count").asInt()).isEqualTo(24);
    assertThat(seams.get("lengthM").asDouble()).isCloseTo(24 * Math.sqrt(20), within(1e-3));
    assertThat(seams.get("lines")).hasSize(24);
    assertThat(tree().at("/roofFaces/0/facets/0/0")).hasSize(4);
    assertThat(tree().at("/system/panel/coverage").asText()).isEqualTo("16 in");
    assertThat(tree().at("/tolerances/gapM").asDouble()).isEqualTo(0.05);
  }

  @Test
  void findingsStandAtTheirJunctionsAndTogether() throws IOException {
    JsonNode tree = tree();
    JsonNode rake = tree.at("/junctions/1");
    assertThat(rake.get("id").asText()).isEqualTo("rake1");
    assertThat(rake.get("findings").toString()).isEqualTo("[\"kind/unclassified\"]");
    assertThat(tree.at("/findings/0/junction").asText()).isEqualTo("rake1");
    assertThat(tree.at("/findings/0/severity").asText()).isEqualTo("warning");
    assertThat(tree.at("/findings/0/action").asText()).startsWith("No shape, or more than one,");
    assertThat(tree.at("/findings/1/reason").asText()).isEqualTo("water may stand");
    assertThat(tree.at("/findings/1/action").asText()).isEqualTo("look at it");
    assertThat(tree.at("/findings/2/junction").isNull()).isTrue();
    assertThat(tree.at("/findings/2/elements/0").asText()).isEqualTo("0roof");
  }

  @Test
  void namesFromAModelStayText() throws IOException {
    String name = "\"},<script>\u0007\u2028 Käsekuchen \uD83C\uDFE0";
    JsonNode tree = new ObjectMapper().readTree(text(Takeoffs.boatHouse(name)));
    assertThat(tree.at("/elements/0/name").asText()).isEqualTo(name);
  }
}
