package org.seamledger.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.seamledger.samples.House.at;
import static org.seamledger.samples.Pitch.per12;
import static org.seamledger.samples.Pitch.pitch;
import static org.seamledger.samples.Roofs.DEPTH;
import static org.seamledger.samples.Roofs.EAVE;
import static org.seamledger.samples.Roofs.risingNorth;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.export.JsonLedger;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.House.Through;
import org.seamledger.takeoff.Takeoff;

/** Findings and drainage of houses that are built to have them, and of the same just short of it, from the file to the JSON ledger. */
@Tag("slow")
class ReviewedHousesTest {

  @TempDir
  Path folder;

  private static JsonNode ledger(House house) throws IOException {
    return json(Pipeline.analyse(house, Form.PLAIN));
  }

  private static JsonNode json(Takeoff takeoff) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    JsonLedger.write(takeoff, out);
    return new ObjectMapper().readTree(out.toByteArray());
  }

  private static List<String> codes(JsonNode ledger) {
    return ledger.get("findings").findValuesAsText("code");
  }

  private static JsonNode finding(JsonNode ledger, String code) {
    List<JsonNode> found = new ArrayList<>();
    ledger.get("findings").forEach(f -> {
      if (f.get("code").asText().equals(code)) {
        found.add(f);
      }
    });
    assertThat(found).as(code + " in " + codes(ledger)).hasSize(1);
    return found.get(0);
  }

  private static List<String> junctions(JsonNode ledger, String kind) {
    List<String> ids = new ArrayList<>();
    ledger.get("junctions").forEach(j -> {
      if (j.get("kind").asText().equals(kind)) {
        ids.add(j.get("id").asText());
      }
    });
    return ids;
  }

  private static double sum(JsonNode places) {
    return places.findValues("planAreaM2").stream().mapToDouble(JsonNode::asDouble).sum();
  }

  private static Extrusion box(double x0, double y0, double x1, double y1, double bottom, double top) {
    return Extrusion.upright(List.of(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)), bottom, top);
  }

  /** A level valley of 14 m between two walls. */
  private static House trough() {
    return Roofs.butterfly(10, 14, per12(1)).wall("west", -0.3, 0, 0, 10, 0, EAVE + 2).wall("east", 14, 0, 14.3, 10, 0, EAVE + 2);
  }

  @Test
  void waterOfALevelValleyLeavesByItsOutlet() throws IOException {
    JsonNode shut = ledger(trough());
    assertThat(sum(shut.at("/drainage/trapped"))).isCloseTo(140, within(0.14));
    assertThat(shut.at("/drainage/leaves")).isEmpty();
    assertThat(codes(shut)).contains("drainage/no-outlet");

    JsonNode open = ledger(trough().thing("drain", Thing.Role.OUTLET,
        new Cylinder(new Vec3(7, 5, EAVE - 0.5), new Vec3(0, 0, 0.65), 0.1)));
    // What the drain itself covers is no roof: π·0.1² m².
    assertThat(sum(open.at("/drainage/leaves"))).isCloseTo(140 - Math.PI * 0.01, within(0.14));
    assertThat(sum(open.at("/drainage/trapped"))).isCloseTo(0, within(0.05));
    assertThat(codes(open)).doesNotContain("drainage/no-outlet");
  }

  @Test
  void kickOutsAreOrdered() throws IOException {
    // Two walls beside two slopes: four feet.
    JsonNode walled = ledger(WalledRoofs.parapetGables(8, 12, pitch(35), 0.4));
    assertThat(ordered(walled, "piece:kick-out")).isEqualTo(4);
    assertThat(finding(walled, "drainage/kick-out").get("severity").asText()).isEqualTo("warning");
    JsonNode plain = ledger(Roofs.gable(8, 12, pitch(35)));
    assertThat(ordered(plain, "piece:kick-out")).isZero();
    assertThat(codes(plain)).doesNotContain("drainage/kick-out");
  }

  private static double ordered(JsonNode ledger, String id) {
    double net = 0;
    for (JsonNode line : ledger.get("order")) {
      net += line.get("id").asText().equals(id) ? line.get("net").asDouble() : 0;
    }
    return net;
  }

  @Test
  void aLevelFaceAndItsEdgesAreOneFinding() throws IOException {
    JsonNode ledger = ledger(Roofs.mansardWithLevelTop(10, 15, pitch(68), 1.1));
    JsonNode found = finding(ledger, "slope/level-face");
    assertThat(found.get("severity").asText()).isEqualTo("violation");
    List<String> places = new ArrayList<>();
    found.get("junctions").forEach(j -> places.add(j.asText()));
    assertThat(places).containsExactlyInAnyOrderElementsOf(junctions(ledger, "flat-edge")).hasSize(4);
    assertThat(codes(ledger)).doesNotContain("kind/flat-edge");
  }

  @Test
  void notesForPeopleAreSaidOnceAndOnlyOfARoof() throws IOException {
    JsonNode hip = ledger(Roofs.hip(7, 11, per12(6)));
    for (String code : List.of("safety/edges", "safety/anchors", "safety/lightning")) {
      assertThat(finding(hip, code).get("severity").asText()).isEqualTo("info");
    }
    JsonNode walls = ledger(new House("walls").wallsUnder("", 0, 0, 8, 6, 0.3, 0, 2.8));
    assertThat(codes(walls)).contains("roof/none").noneMatch(c -> c.startsWith("safety/"));
  }

  @Test
  void aWideOpeningWithNothingInItGetsNoCricket() throws IOException {
    JsonNode wide = ledger(Roofs.gable(8, 12, pitch(30)).hatch("terrace", "south", 6, 2, 4, 1.5, Through.OPENING));
    assertThat(codes(wide)).contains("penetration/open-to-sky").doesNotContain("drainage/no-cricket");
    JsonNode narrow = ledger(Roofs.gable(8, 12, pitch(30)).hatch("shaft", "south", 6, 2, 2.4, 1.5, Through.OPENING));
    assertThat(codes(narrow)).contains("drainage/no-cricket").doesNotContain("penetration/open-to-sky");
  }

  /** Flashings need 12 in: (4 − 3.75) / cos 30° = 0.289 m, (4 − 3.7) / cos 30° = 0.346 m below the ridge; 0.25 and 0.35 m from a wall. */
  @Test
  void thingsStandTooNearARidgeOrAWall() throws IOException {
    House near = Roofs.gable(8, 12, pitch(30)).chimney("stack", "south", 6, 3.45, 0.6, 0.6, 1, Through.OPENING);
    assertThat(codes(ledger(near))).contains("penetration/near-ridge").doesNotContain("penetration/near-wall");
    House below = Roofs.gable(8, 12, pitch(30)).chimney("stack", "south", 6, 3.4, 0.6, 0.6, 1, Through.OPENING);
    assertThat(codes(ledger(below))).doesNotContain("penetration/near-ridge");
    House beside = WalledRoofs.parapetGables(8, 12, pitch(30), 0.4).chimney("stack", "south", 11.45, 2, 0.6, 0.6, 1, Through.OPENING);
    assertThat(codes(ledger(beside))).contains("penetration/near-wall").doesNotContain("penetration/near-ridge");
    House away = WalledRoofs.parapetGables(8, 12, pitch(30), 0.4).chimney("stack", "south", 11.35, 2, 0.6, 0.6, 1, Through.OPENING);
    assertThat(codes(ledger(away))).doesNotContain("penetration/near-wall");
  }

  /** A door 0.3 m inside an eave; in the gable's wall nothing slides on whoever goes through it. */
  @Test
  void snowSlidesOnADoorUnderTheEave() throws IOException {
    JsonNode under = ledger(walled().thing("door", Thing.Role.DOOR, box(5, 0.3, 6, 0.6, 0, 2.1)));
    JsonNode found = finding(under, "snow/over-entry");
    assertThat(junctions(under, "eave")).contains(found.get("junction").asText());
    assertThat(found.get("elements").toString()).contains(GlobalIds.of("gable/door"));
    JsonNode beside = ledger(walled().thing("door", Thing.Role.DOOR, box(0.3, 3, 0.6, 4, 0, 2.1)));
    assertThat(codes(beside)).doesNotContain("snow/over-entry");
  }

  private static House walled() {
    return Roofs.gable(8, 12, pitch(30)).wallsUnder("", 0.3, 0.3, 11.7, 7.7, 0.3, 0, 2.75);
  }

  @Test
  void aChannelAndAGutterOverARoom() throws IOException {
    JsonNode inner = ledger(Roofs.butterfly(10, 14, per12(1)).thing("hall", Thing.Role.SPACE, box(1, 1, 13, 9, 0, 2.7)));
    assertThat(finding(inner, "drainage/over-room").get("junction").asText()).isEqualTo(junctions(inner, "level-valley").get(0));
    assertThat(finding(inner, "drainage/over-room").get("elements").toString()).contains(GlobalIds.of("butterfly/hall"));
    // Under one slope only, short of the valley.
    assertThat(codes(ledger(Roofs.butterfly(10, 14, per12(1)).thing("hall", Thing.Role.SPACE, box(1, 1, 13, 4.5, 0, 2.7)))))
        .doesNotContain("drainage/over-room");
    Extrusion gutter = box(0, -0.15, 12, -0.02, EAVE - 0.2, EAVE - 0.08);
    assertThat(codes(ledger(Roofs.gable(8, 12, pitch(30)).thing("gutter", Thing.Role.GUTTER, gutter)
        .thing("porch", Thing.Role.SPACE, box(0, -2, 12, 7, 0, 2.7))))).contains("drainage/over-room");
    assertThat(codes(ledger(Roofs.gable(8, 12, pitch(30)).thing("gutter", Thing.Role.GUTTER, gutter)
        .thing("hall", Thing.Role.SPACE, box(0, 0.5, 12, 7, 0, 2.7))))).doesNotContain("drainage/over-room");
  }

  /** A roof whose eave drops on a lower one; one of them is of copper by its material's name. */
  @Test
  void copperAboveAnotherMetal() throws IOException {
    JsonNode above = json(analyse(twoRoofs(), "upper"));
    JsonNode found = finding(above, "metal/copper-upstream");
    assertThat(found.get("severity").asText()).isEqualTo("violation");
    assertThat(found.get("elements").toString()).contains(GlobalIds.of("two roofs/lower")).doesNotContain(GlobalIds.of("two roofs/upper"));
    assertThat(codes(json(analyse(twoRoofs(), "lower")))).doesNotContain("metal/copper-upstream");
  }

  private static House twoRoofs() {
    Vec2[] lower = {at(0, -3), at(10, -3), at(10, 3), at(0, 3)};
    Vec2[] upper = {at(0, 2.6), at(10, 2.6), at(10, 8), at(0, 8)};
    return new House("two roofs").roof("lower", risingNorth(-3, EAVE, pitch(20)), DEPTH, lower)
        .roof("upper", risingNorth(2.6, EAVE + 5, pitch(20)), DEPTH, upper)
        .wall("between", 0, 3, 10, 3.3, 0, EAVE + 4.9);
  }

  private Takeoff analyse(House house, String copper) throws IOException {
    String text = Files.readString(IfcWriter.write(house, Form.PLAIN, folder.resolve(copper + ".ifc")));
    Matcher slab = Pattern.compile("(#\\d+) ?= ?IFCSLAB\\('" + Pattern.quote(GlobalIds.of(house.name() + "/" + copper))).matcher(text);
    assertThat(slab.find()).isTrue();
    Path file = folder.resolve(copper + " of copper.ifc");
    Files.writeString(file, text.replace("ENDSEC;\nEND-ISO", "#900001=IFCMATERIAL('Copper',$,$);\n#900002=IFCRELASSOCIATESMATERIAL('"
        + GlobalIds.of("copper") + "',$,$,$,(" + slab.group(1) + "),#900001);\nENDSEC;\nEND-ISO"));
    return Pipeline.analyse(file);
  }
}
