package org.seamledger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.SharedModels;
import org.seamledger.takeoff.Analysis;

/**
 * Bad input ends in a result or in one clear line, within 5 s of processor time and 256 MB: models that once did not, and inputs damaged
 * by chance. By hand, for hours: {@code mvn test -Dtest=HostileInputTest -Dfuzz.inputs=100000 -Dfuzz.seed=7 -Dbimserver.skip}.
 */
@Tag("slow")
class HostileInputTest {

  private static final int INPUTS = Integer.getInteger("fuzz.inputs", 40);
  private static final long SEED = Long.getLong("fuzz.seed", 20_261_129L);

  @TempDir
  private Path folder;

  @Test
  void modelsThatBrokeTheReaderEndInTime() throws Exception {
    Path hostile = SharedModels.folder().resolveSibling("hostile");
    Assumptions.assumeTrue(Files.isDirectory(hostile), "no hostile models here");
    List<String> words = new ArrayList<>(List.of("files"));
    words.addAll(listed(hostile, ".ifc"));
    assertTrue(words.size() > 18, "all eighteen are there");
    ordeal(words);
  }

  /** The kinds of damage that those models have, done to a sample. */
  @Test
  void kindsOfModelsThatBrokeTheReaderEndInTime() throws Exception {
    String house = Files.readString(Path.of("ifc-samples", "gatehouse.ifc"));
    String loop = "(#26,#27,#28,#29,#26)";
    Map<String, String> damaged = new LinkedHashMap<>();
    damaged.put("far", house.replace("((10000.,0.))", "((1.E15,0.))"));
    damaged.put("farther", house.replace("((10000.,0.))", "((1.E300,0.))"));
    damaged.put("huge-extrusion", house.replaceFirst("(IFCEXTRUDEDAREASOLID\\([^)]*,)[\\d.]+\\)", "$11.E12)"));
    damaged.put("repeated-points", house.replace(loop, "(" + "#26,#26,#27,#27,".repeat(1500) + "#28,#29,#26)"));
    damaged.put("going-round", house.replace(loop, "(" + "#26,#27,#28,#29,".repeat(1500) + "#26)"));
    damaged.put("zero-direction", house.replace("IFCDIRECTION((0.,0.,1.))", "IFCDIRECTION((0.,0.,0.))"));
    damaged.put("tiny-direction", house.replace("IFCDIRECTION((0.,0.,1.))", "IFCDIRECTION((0.,0.,4.9E-324))"));
    damaged.put("endless-direction", house.replace("IFCDIRECTION((1.,0.,0.))", "IFCDIRECTION((1.E400,0.,0.))"));
    List<String> words = new ArrayList<>(List.of("files"));
    for (Map.Entry<String, String> d : damaged.entrySet()) {
      assertTrue(!d.getValue().equals(house), d.getKey());
      words.add(Files.writeString(folder.resolve(d.getKey() + ".ifc"), d.getValue()).toString());
    }
    ordeal(words);
  }

  @Test
  void damagedModelsEndInTime() throws Exception {
    fuzz("model", INPUTS * 2, listed(Path.of("ifc-samples"), ".ifc"));
  }

  @Test
  void damagedSettingsEndInTime() throws Exception {
    fuzz("system", INPUTS, List.of("ifc-samples/roof-system.json", "ifc-samples/roof-system-metric.json"));
    fuzz("ids", INPUTS, List.of("shapes/ids/roof-model.ids"));
    Path decisions = Files.writeString(folder.resolve("decisions.json"), "{\"decisions\": [{\"junction\": \"Jexwx7h7k\", \"detail\":"
        + " \"ridge-vented\", \"reason\": \"the attic is vented\"}], \"accepted\": [{\"finding\": {\"code\": \"drainage/no-cricket\","
        + " \"junction\": \"J0xcbxgtm\", \"elements\": [\"0hGinPNwiSDrAurecV39RR\"]}, \"by\": \"A\", \"reason\": \"b\"}]}");
    fuzz("decisions", INPUTS, List.of(decisions.toString()));
  }

  @Test
  void damagedFilesBesideAModelEndInTime() throws Exception {
    Path prices = Files.writeString(folder.resolve("prices.csv"), """
        id,unit,price,labourHours,currency,note
        trim:*,m,12.5,0.1,EUR,"a, b"
        panel*,m,30,0.2,EUR,
        *,piece,1.5,,EUR,x
        """);
    int few = Math.max(1, INPUTS / 4);
    fuzz("prices", few, List.of(prices.toString()));
    fuzz("weather", few, List.of("ifc-samples/weather.csv"));
    fuzz("query", few, listed(Path.of("shapes", "queries"), ".rq"));
    Path reviews = folder.resolve("reviews.bcf");
    new Cli(Analysis::run, Environment.PLAIN).run(new String[] {"analyze", "ifc-samples/gatehouse.ifc", "--format", "bcf", "--output",
        reviews.toString()}, OutputStream.nullOutputStream(), new PrintStream(OutputStream.nullOutputStream()));
    fuzz("reviews", few, List.of(reviews.toString()));
  }

  @Test
  void damagedShapesEndInTime() throws Exception {
    List<String> shapes = listed(Path.of("shapes"), ".ttl");
    Files.createDirectories(folder.resolve("shapes"));
    for (String s : shapes) {
      Files.copy(Path.of(s), folder.resolve("shapes").resolve(Path.of(s).getFileName()));
    }
    fuzz("shapes", INPUTS, shapes);
  }

  private void fuzz(String kind, int count, List<String> files) throws Exception {
    System.out.println("fuzzing " + kind + ": " + count + " inputs from seed " + SEED + " (-Dfuzz.seed, -Dfuzz.inputs)");
    List<String> words = new ArrayList<>(List.of("fuzz", String.valueOf(SEED), String.valueOf(count), folder.toString(), kind));
    words.addAll(files);
    ordeal(words);
  }

  private static List<String> listed(Path in, String ending) throws IOException {
    try (Stream<Path> files = Files.list(in)) {
      return files.map(Path::toString).filter(f -> f.endsWith(ending)).sorted().toList();
    }
  }

  private void ordeal(List<String> words) throws Exception {
    List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m",
        "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"), Ordeal.class.getName()));
    command.addAll(words);
    Path log = folder.resolve("log");
    Process p = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    int status = p.waitFor();
    String said = Files.readString(log, StandardCharsets.UTF_8);
    System.out.println(said.lines().reduce((a, b) -> b).orElse(""));
    assertEquals(0, status, () -> String.join(" ", Arrays.asList(words.get(0), String.valueOf(SEED))) + "\n" + said);
  }
}
