package org.seamledger.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamledger.detail.Decision;
import org.seamledger.detail.KindBook;
import org.seamledger.shacl.Rules;

/**
 * Results made up for tests of the service and the page, in an invented scenario: the community hall of a hill village. The roof is a true
 * roof (planes meet where they say), the sealing is plausible, and no quantity here checks any formula of the program.
 */
final class LedgerFixtures {

  static final ObjectMapper MAPPER = new ObjectMapper();
  private static final double INCH = 0.0254;

  private static final String CHIMNEY = "1hOSvn6df7F8_7GcBWlRrM";

  private final double t;
  private final double width;
  private final String chimneyName;
  private final ObjectNode root = MAPPER.createObjectNode();
  private final ArrayNode faces = MAPPER.createArrayNode();
  private final ArrayNode junctions = MAPPER.createArrayNode();
  private final ArrayNode findings = MAPPER.createArrayNode();
  private final Map<String, double[]> planes = new LinkedHashMap<>();
  private double tape;
  private double bead;
  private double inSeam;
  private int fasteners;
  private int pieces;
  private double waste = 0.10;

  private LedgerFixtures(double pitch, double width, String chimneyName) {
    this.t = pitch;
    this.width = width;
    this.chimneyName = chimneyName;
  }

  /**
   * An L-shaped house with hips, valleys, a chimney, a pipe, and a flat lean-to against its west wall.
   *
   * @param pitch rise over run of all main faces
   * @param width length of the main body, metres, at least 13
   */
  static ObjectNode house(double pitch, double width, boolean pipe, String chimneyName, String system) {
    LedgerFixtures f = new LedgerFixtures(pitch, width, chimneyName);
    if (!system.isEmpty()) {
      f.waste = waste(system);
    }
    f.buildHouse(pipe);
    return f.finish("village-hall.ifc");
  }

  /** The same with kinds and details chosen by hand; made-up quantities stay. */
  static ObjectNode decided(List<Decision> decisions, ObjectNode result) {
    for (Decision d : decisions) {
      for (JsonNode j : result.path("junctions")) {
        if (j.path("id").textValue().equals(d.junction())) {
          decide(d, (ObjectNode) j);
        }
      }
    }
    return result;
  }

  private static void decide(Decision d, ObjectNode junction) {
    ObjectNode decided = junction.putObject("decided").put("kind", d.kind().isEmpty() ? null : d.kind())
        .put("detail", d.detail().isEmpty() ? null : d.detail()).put("reason", d.reason());
    decided.putObject("byRules").put("kind", junction.path("kind").textValue()).put("detail", junction.path("detail").textValue());
    if (!d.kind().isEmpty()) {
      junction.put("kind", d.kind());
    }
    if (!d.detail().isEmpty()) {
      junction.put("detail", d.detail());
    }
  }

  private static double waste(String system) {
    try {
      return Double.parseDouble(MAPPER.readTree(system).path("waste").path("tape").asText("10 %").replace(" %", "")) / 100;
    } catch (IOException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** Rows of small gables: five junctions each (a ridge, two eaves, two rakes of two lines). */
  static ObjectNode many(int count) {
    LedgerFixtures f = new LedgerFixtures(0.5, 14, "");
    int houses = (count + 6) / 7;
    int columns = (int) Math.ceil(Math.sqrt(houses * 1.4));
    for (int i = 0; i < houses; i++) {
      f.gable(i, (i % columns) * 11.0, (i / columns) * 9.0);
    }
    while (f.junctions.size() > count) {
      f.junctions.remove(f.junctions.size() - 1);
    }
    return f.finish("estate.ifc");
  }

  private void buildHouse(boolean pipe) {
    double w = width;
    double e = w - 6;
    double z = 3;
    double x = w - 3;
    plane("F1", 0, -1);
    plane("F2", -1, 0);
    plane("F3", 0, 1);
    plane("F4", -1, 0);
    plane("F5", 0, 1);
    plane("F6", 1, 0);
    double h4 = z + 4 * t;
    double h3 = z + 3 * t;
    double[] sw = {0, 0, z};
    double[] se = {w, 0, z};
    double[] ne = {w, 14, z};
    double[] nw = {e, 14, z};
    double[] re = {e, 8, z};
    double[] wn = {0, 8, z};
    double[] r1 = {4, 4, h4};
    double[] r2 = {w - 4, 4, h4};
    double[] k = {x, 5, h3};
    double[] g = {x, 11, h3};
    double zc = z + 2 * t;
    double zd = z + 2.6 * t;
    double[][] chimney = {{6, 2, zc}, {6.9, 2, zc}, {6.9, 2.6, zd}, {6, 2.6, zd}};
    face("F1", 180, t, List.of(sw, se, r2, r1), List.of(chimney[0], chimney[1], chimney[2], chimney[3]));
    face("F2", 270, t, List.of(wn, sw, r1), null);
    face("F3", 0, t, List.of(re, wn, r1, r2, k), null);
    face("F4", 270, t, List.of(nw, re, k, g), null);
    face("F5", 0, t, List.of(ne, nw, g), null);
    face("F6", 90, t, List.of(se, ne, g, k, r2), null);
    line("ridge", r1, r2, "F1", "F3");
    line("ridge", k, g, "F4", "F6");
    line("hip", sw, r1, "F1", "F2");
    line("hip", wn, r1, "F2", "F3");
    line("hip", se, r2, "F1", "F6");
    line("hip", r2, k, "F3", "F6");
    line("hip", ne, g, "F5", "F6");
    line("hip", nw, g, "F4", "F5");
    line("valley", re, k, "F3", "F4");
    line("eave", sw, se, "F1");
    line("eave", wn, sw, "F2");
    line("eave", re, wn, "F3");
    line("eave", nw, re, "F4");
    line("eave", ne, nw, "F5");
    line("eave", se, ne, "F6");
    String name = line("curb-upslope", chimney[3], chimney[2], "F1");
    line("curb-downslope", chimney[1], chimney[0], "F1");
    line("curb-side", chimney[2], chimney[1], "F1");
    line("curb-side", chimney[0], chimney[3], "F1");
    finding("penetration/no-cricket", "warning", "The chimney is 900 mm wide across the fall; a cricket is usual above 762 mm.", name);
    leanTo();
    if (pipe) {
      pipe();
    }
  }

  private void leanTo() {
    double[] a = {-3, 2, 2.0};
    double[] b = {-3, 6, 2.0};
    double[] c = {0, 6, 2.6};
    double[] d = {0, 2, 2.6};
    face("F7", 270, 0.2, List.of(a, d, c, b), null);
    line("headwall", d, c, "F7");
    line("eave", a, b, "F7");
    line("rake", a, d, "F7");
    String rake = line("rake", c, b, "F7");
    finding("kind/near-tolerance", "info", "The rake lies 0.4° off the fall of the face; check its kind by eye.", rake);
    finding("slope/low-for-unsealed-seams", "violation", "F7 falls 2.4:12, less than 3:12: its seams need sealant.", "");
    inSeam += 10 * 3.06;
  }

  private void pipe() {
    List<double[]> ring = new ArrayList<>();
    for (int i = 0; i <= 24; i++) {
      double u = 2 * Math.PI * i / 24;
      double y = 6 + 0.055 * Math.sin(u);
      ring.add(new double[] {5 + 0.055 * Math.cos(u), y, 3 + (8 - y) * t});
    }
    add("pipe", ring, List.of("F3"));
  }

  private void gable(int i, double x, double y) {
    String south = "F" + (2 * i + 1);
    String north = "F" + (2 * i + 2);
    plane(south, 0, -1);
    plane(north, 0, 1);
    double[] a = {x, y, 3};
    double[] b = {x + 10, y, 3};
    double[] c = {x + 10, y + 8, 3};
    double[] d = {x, y + 8, 3};
    double[] r1 = {x, y + 4, 5};
    double[] r2 = {x + 10, y + 4, 5};
    face(south, 180, t, List.of(a, b, r2, r1), null);
    face(north, 0, t, List.of(c, d, r1, r2), null);
    line("ridge", r1, r2, south, north);
    line("eave", a, b, south);
    line("eave", c, d, north);
    line("rake", a, r1, south);
    line("rake", b, r2, south);
    line("rake", d, r1, north);
    String last = line("rake", c, r2, north);
    if (i % 10 == 0) {
      finding("junction/near-tolerance", "info", "A measured value lies close to the limit that decides.", last);
    }
  }

  private void plane(String id, double dx, double dy) {
    planes.put(id, new double[] {dx, dy});
  }

  private void face(String id, double azimuth, double slope, List<double[]> outer, List<double[]> hole) {
    ObjectNode f = faces.addObject();
    double plan = area(outer) - (hole == null ? 0 : area(hole));
    double area = plan * Math.sqrt(1 + slope * slope);
    f.put("id", id).putArray("elements").add(guid(id));
    f.put("slopeDegrees", Math.toDegrees(Math.atan(slope))).put("risePer12", 12 * slope).put("fallAzimuthDegrees", azimuth)
        .put("areaM2", area).put("planAreaM2", plan).put("perimeterM", length(closed(outer)) + (hole == null ? 0 : length(closed(hole))));
    f.putObject("seams").put("count", (int) (Math.sqrt(plan) / (16 * INCH))).put("lengthM", area / (16 * INCH));
    ArrayNode facet = f.putArray("facets").addArray();
    path(facet.addArray(), outer);
    if (hole != null) {
      List<double[]> clockwise = new ArrayList<>(hole);
      Collections.reverse(clockwise);
      path(facet.addArray(), clockwise);
    }
  }

  private static void path(ArrayNode into, List<double[]> points) {
    points.forEach(p -> into.addArray().add(p[0]).add(p[1]).add(p[2]));
  }

  private static double area(List<double[]> ring) {
    double sum = 0;
    for (int i = 0; i < ring.size(); i++) {
      double[] p = ring.get(i);
      double[] q = ring.get((i + 1) % ring.size());
      sum += p[0] * q[1] - q[0] * p[1];
    }
    return Math.abs(sum) / 2;
  }

  private static List<double[]> closed(List<double[]> ring) {
    List<double[]> all = new ArrayList<>(ring);
    all.add(ring.get(0));
    return all;
  }

  private static double length(List<double[]> path) {
    double sum = 0;
    for (int i = 1; i < path.size(); i++) {
      double[] a = path.get(i - 1);
      double[] b = path.get(i);
      sum += Math.sqrt(Math.pow(a[0] - b[0], 2) + Math.pow(a[1] - b[1], 2) + Math.pow(a[2] - b[2], 2));
    }
    return sum;
  }

  private String line(String kind, double[] a, double[] b, String... of) {
    return add(kind, List.of(a, b), List.of(of));
  }

  private String add(String kind, List<double[]> points, List<String> of) {
    double l = length(points);
    String id = String.format(Locale.ROOT, "J%07x", (kind + Arrays.deepToString(points.toArray())).hashCode() & 0xfffffff);
    ObjectNode j = junctions.addObject();
    j.put("id", id).put("kind", kind).put("lengthM", l);
    path(j.putArray("path"), points);
    ArrayNode f = j.putArray("faces");
    of.forEach(f::add);
    ArrayNode e = j.putArray("elements");
    of.forEach(o -> e.add(guid(o)));
    if (kind.startsWith("curb")) {
      e.add(CHIMNEY);
    }
    facts(j.putObject("facts"), kind, points, l);
    j.put("detail", detail(kind));
    ObjectNode why = j.putObject("explanation");
    why.putArray("shapes").add("kinds/" + kind);
    why.put("nearest", "").putArray("missed");
    sealing(j, kind, l, of.size());
    j.putArray("findings");
    return id;
  }

  private void facts(ObjectNode f, String kind, List<double[]> points, double l) {
    double dz = Math.abs(points.get(points.size() - 1)[2] - points.get(0)[2]);
    f.put("inclinationDegrees", Math.toDegrees(Math.asin(Math.min(1, dz / l)))).put("slopeDegrees", Math.toDegrees(Math.atan(t)));
    switch (kind) {
      case "ridge" -> f.put("foldDegrees", 2 * Math.toDegrees(Math.atan(t))).put("against", "face");
      case "hip" -> f.put("foldDegrees", Math.toDegrees(Math.acos(1 / (1 + t * t)))).put("against", "face");
      case "valley" -> f.put("foldDegrees", -Math.toDegrees(Math.acos(1 / (1 + t * t)))).put("against", "face");
      case "headwall" -> f.put("upstandM", 0.9).put("neighbourClass", "IfcWall").put("against", "wall");
      case "pipe" -> f.put("diameterM", 0.11).put("upstandM", 0.6).put("neighbourClass", "IfcPipeSegment").put("against", "round");
      default -> {
        if (kind.startsWith("curb")) {
          f.put("upstandM", 1.4).put("widthAcrossFallM", 0.9).put("neighbourClass", "IfcChimney").put("neighbourName", chimneyName)
              .put("against", "penetration");
        } else {
          f.put("against", "nothing");
        }
      }
    }
  }

  private static String guid(String face) {
    return ("2O2Fr$t4X7Zf8NOew3" + face + "0000").substring(0, 22);
  }

  private static String detail(String kind) {
    return switch (kind) {
      case "ridge", "hip" -> "closure-both-sides";
      case "valley" -> "valley-pan";
      case "eave" -> "drip-edge";
      case "rake" -> "gable-trim";
      case "headwall" -> "closure-and-counterflashing";
      case "pipe" -> "boot";
      default -> kind;
    };
  }

  private void sealing(ObjectNode j, String kind, double l, int sides) {
    ArrayNode metal = j.putArray("metal");
    ArrayNode seals = j.putArray("seals");
    ArrayNode fast = j.putArray("fasteners");
    ArrayNode steps = j.putArray("steps");
    ArrayNode hold = j.putArray("holdPoints");
    switch (kind) {
      case "ridge", "hip", "headwall" -> {
        int n = Math.max(1, (int) Math.ceil(l / (16 * INCH))) * sides;
        metal.addObject().put("part", "Z closure, bent per pan").put("pieces", n).put("lengthM", l * sides);
        metal.addObject().put("part", kind.equals("headwall") ? "headwall flashing" : kind + " cap")
            .put("pieces", (int) Math.ceil(l / 3.05)).put("lengthM", l);
        seal(seals, "tape", "primary", "concealed", "under the closure foot", sides, l * sides);
        seal(seals, "tape", "primary", "concealed", "on the closure, under the cap", sides, l * sides);
        seal(seals, "bead", "secondary", "concealed", "behind the closure", sides, 2 * l * sides);
        if (kind.equals("headwall")) {
          seal(seals, "bead", "secondary", "exposed", "at the top of the counterflashing", 1, l);
        }
        fasten(fast, "closure foot", n * 5, 0.089);
        steps.addObject().put("what", "Pieces on one side").put("formula", "⌈ length ÷ coverage ⌉")
            .put("values", String.format(Locale.ROOT, "⌈ %.3f m ÷ 0.4064 m ⌉", l)).put("result", n / sides);
        steps.addObject().put("what", "Fasteners per piece").put("formula", "⌈ (ℓ − 2e) ÷ s ⌉ + 1")
            .put("values", "⌈ (16 − 2·1) ÷ 4 ⌉ + 1 in").put("result", 5);
        pieces += n;
        hold.add("Before the cap goes on: tape unbroken, screws through the tape, closures tight to the seams.");
      }
      case "valley" -> {
        metal.addObject().put("part", "valley pan, hemmed").put("pieces", (int) Math.ceil(l / 3.05)).put("lengthM", l);
        seal(seals, "tape", "primary", "concealed", "under the cleat", 2, 2 * l);
        fasten(fast, "cleat", 2 * (int) (Math.ceil((l / INCH - 2) / 4) + 1), 0.1);
        hold.add("Before panels go on: no screw in the flow width.");
      }
      case "eave" -> {
        metal.addObject().put("part", "drip edge").put("pieces", (int) Math.ceil(l / 3.05)).put("lengthM", l);
        fasten(fast, "cleat", (int) Math.ceil(l / 0.3) + 1, 0.3);
      }
      case "pipe" -> {
        metal.addObject().put("part", "boot").put("pieces", 1).put("lengthM", l);
        seal(seals, "tape", "primary", "concealed", "under the flange", 1, l);
        seal(seals, "bead", "secondary", "exposed", "at the top clamp", 1, l);
        fasten(fast, "flange", 12, 0.038);
      }
      default -> {
        metal.addObject().put("part", kind + " trim").put("pieces", (int) Math.ceil(l / 3.05)).put("lengthM", l);
        seal(seals, "tape", "primary", "concealed", "under the flange", 1, l);
        fasten(fast, "flange", (int) (Math.ceil((l / INCH - 2) / 4) + 1), 0.1);
      }
    }
  }

  private void seal(ArrayNode into, String form, String role, String exposure, String place, int lines, double l) {
    into.addObject().put("form", form).put("role", role).put("exposure", exposure).put("place", place).put("lines", lines).put("lengthM",
        l);
    if (form.equals("tape")) {
      tape += l;
    } else {
      bead += l;
    }
  }

  private void fasten(ArrayNode into, String place, int count, double spacing) {
    into.addObject().put("place", place).put("count", count).put("spacingM", spacing);
    fasteners += count;
  }

  private void finding(String code, String severity, String message, String junction) {
    ObjectNode f = findings.addObject();
    f.put("code", code).put("severity", severity).put("message", message).put("junction", junction.isEmpty() ? null : junction)
        .put("advice", "Look at the place in the model and decide with the designer.");
    f.putArray("elements").add(guid("F1"));
    junctions.forEach(j -> {
      if (j.path("id").asText().equals(junction)) {
        ((ArrayNode) j.path("findings")).add(code);
      }
    });
  }

  private ObjectNode finish(String file) {
    root.put("contract", 1);
    root.putObject("program").put("name", "seamledger").put("version", "fixture").put("shapes", "0000");
    root.putArray("models").addObject().put("file", file).put("sha256", "00").put("schema", "IFC4").put("lengthUnit", "METRE")
        .put("application", "hand-made").put("bytes", 1234);
    ObjectNode s = root.putObject("system");
    s.put("name", "Made-up system").putObject("panel").put("coverage", "16 in").put("seamHeight", "1.5 in");
    s.putObject("tape").put("thickness", "0.1875 in").put("width", "0.875 in").put("roll", "50 ft");
    s.putObject("bead").put("size", "0.25 in").put("cartridge", "10.1 fl oz");
    s.putObject("waste").put("tape", Math.round(waste * 100) + " %");
    root.set("roofFaces", faces);
    root.set("junctions", junctions);
    ArrayNode kinds = root.putArray("kinds");
    KindBook.read(Rules.packaged()).all().forEach(k -> kinds.addObject().put("id", k.id()).put("label", k.label())
        .put("meaning", k.meaning()).put("family", k.family().word()).put("planLine", k.line().word()));
    ObjectNode q = root.putObject("quantities");
    double ml = bead * Math.PI * Math.pow(0.25 * INCH, 2) / 4 * 1e6;
    q.putObject("tape").put("netM", tape).put("orderM", tape * (1 + waste)).put("rolls", (int) Math.ceil(tape * (1 + waste) / 15.24));
    q.putObject("bead").put("netM", bead).put("netMl", ml).put("orderMl", ml * (1 + waste)).put("cartridges",
        (int) Math.ceil(ml * (1 + waste) / 298.69));
    q.putObject("inSeam").put("netM", inSeam).put("orderM", inSeam * (1 + waste));
    q.putObject("fasteners").put("net", fasteners).put("order", (int) Math.ceil(fasteners * (1 + waste)));
    q.putObject("closures").put("pieces", pieces).put("lengthM", pieces * 16 * INCH);
    order(ml);
    nodes();
    panels();
    ArrayNode elements = root.putArray("elements");
    if (!chimneyName.isEmpty()) {
      elements.addObject().put("globalId", CHIMNEY).put("ifcClass", "IfcChimney").put("name", chimneyName).put("model", 0);
    }
    faces.forEach(f -> elements.addObject().put("globalId", f.path("elements").path(0).asText()).put("ifcClass", "IfcSlab")
        .put("name", "Roof slab " + f.path("id").asText()).put("model", 0));
    root.set("findings", findings);
    return root;
  }

  private void order(double ml) {
    ArrayNode order = root.putArray("order");
    orderLine(order, "tape", "sealants", "sealing tape", "3/16 in × 7/8 in", tape, "m", 15.24, "roll");
    orderLine(order, "bead-concealed", "sealants", "gun sealant, concealed beads", "cartridge of 10.1 fl oz", ml, "ml", 298.69,
        "cartridge");
    orderLine(order, "fastener:pancake", "fasteners", "pancake screw", "#10 × 1 in", fasteners, "piece", 1, "piece");
  }

  private void orderLine(ArrayNode into, String id, String group, String item, String size, double net, String unit, double pack,
      String orderUnit) {
    into.addObject().put("id", id).put("group", group).put("item", item).put("size", size).put("net", net).put("unit", unit)
        .put("wastePercent", waste * 100).put("withWaste", net * (1 + waste)).put("pack", pack)
        .put("order", (int) Math.ceil(net * (1 + waste) / pack)).put("orderUnit", orderUnit).putArray("junctions");
  }

  /** One where each end of a line lies, in the order of the lines. */
  private void nodes() {
    Map<String, ObjectNode> nodes = new LinkedHashMap<>();
    junctions.forEach(j -> {
      JsonNode path = j.path("path");
      for (JsonNode end : List.of(path.get(0), path.get(path.size() - 1))) {
        ObjectNode n = nodes.computeIfAbsent(end.toString(), at -> {
          ObjectNode fresh = MAPPER.createObjectNode();
          fresh.put("id", String.format(Locale.ROOT, "N%07x", at.hashCode() & 0xfffffff)).put("kind", "corner").set("at", end);
          fresh.putArray("junctions");
          fresh.set("faces", j.path("faces"));
          List.of("metal", "seals", "findings").forEach(fresh::putArray);
          return fresh;
        });
        ((ArrayNode) n.path("junctions")).add(j.path("id"));
      }
    });
    root.putArray("nodes").addAll(nodes.values());
    root.putArray("nodeKinds").addObject().put("id", "corner").put("label", "corner").put("meaning", "lines meet")
        .put("title", "Corner").put("note", "").put("source", "");
  }

  /** A panel up the middle of each sloping face, fixed at its upper end; half a millimetre of movement for each metre. */
  private void panels() {
    ArrayNode panels = root.putArray("panels");
    for (JsonNode face : faces) {
      JsonNode ring = face.path("facets").path(0).path(0);
      double[] low = between(ring.get(0), ring.get(1));
      double[] high = between(ring.get(ring.size() - 2), ring.get(ring.size() - 1));
      double l = length(List.of(low, high));
      ObjectNode p = panels.addObject().put("face", face.path("id").textValue()).put("pan", 1).put("lengthM", l).put("fixed", "high-end");
      path(p.putArray("line"), List.of(new double[] {high[0] - 0.2, high[1], high[2]}, new double[] {high[0] + 0.2, high[1], high[2]}));
      panelEnd(p.putObject("lowEnd"), low, l / 2000);
      panelEnd(p.putObject("highEnd"), high, 0);
    }
  }

  private static void panelEnd(ObjectNode end, double[] at, double movement) {
    end.putArray("junctions");
    end.putArray("kinds");
    path(end.putArray("at"), List.of(at));
    end.put("movementM", movement).put("gapM", movement / 2).put("opensM", movement / 2);
  }

  private static double[] between(JsonNode a, JsonNode b) {
    double[] middle = new double[3];
    for (int i = 0; i < 3; i++) {
      middle[i] = (a.path(i).doubleValue() + b.path(i).doubleValue()) / 2;
    }
    return middle;
  }
}
