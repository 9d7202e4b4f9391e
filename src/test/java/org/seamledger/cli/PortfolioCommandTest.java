package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.takeoff.Analysis;

/** A folder of models, from the command line to tables, page and order. */
class PortfolioCommandTest {

  private static final String HOSTILE = "<b>&amp; ‘yard’.ifc";
  private static final List<String> SAMPLES = List.of("barn", "dairy", "dovecote", "forge", "gatehouse", "lodge", "stable");

  @TempDir
  private Path folder;

  private Path models;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  @BeforeEach
  void write() throws IOException {
    models = Files.createDirectories(folder.resolve("models"));
    Files.createDirectories(models.resolve("north/yard"));
    Files.copy(sample("gatehouse"), models.resolve("north/gatehouse.ifc"));
    Files.copy(sample("lodge"), models.resolve("north/yard").resolve(HOSTILE));
    try (OutputStream gz = new GZIPOutputStream(Files.newOutputStream(models.resolve("barn.ifc.gz")))) {
      Files.copy(sample("barn"), gz);
    }
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(models.resolve("dairy.ifczip")))) {
      zip.putNextEntry(new ZipEntry("dairy.ifc"));
      Files.copy(sample("dairy"), zip);
    }
  }

  private static Path sample(String name) {
    return Path.of("ifc-samples", name + ".ifc");
  }

  private int run(String... words) {
    out.reset();
    err.reset();
    return new Cli(Analysis::run, Environment.PLAIN).run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  /** Every file of the output but the lock and the marks, by its path. */
  private static Map<String, String> content(Path output) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(output)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String name = output.relativize(file).toString().replace('\\', '/');
        if (!name.equals("entries/lock")) {
          files.put(name, Files.readString(file, StandardCharsets.ISO_8859_1));
        }
      }
    }
    return files;
  }

  private List<String> rows(Path output, String table) throws IOException {
    return Files.readString(output.resolve(table)).lines().toList();
  }

  @Test
  void everyModelBelowTheFolderHasItsRowAndItsPicture() throws IOException {
    Path output = folder.resolve("out");
    assertThat(run("portfolio", models.toString(), "--output", output.toString())).as(err()).isZero();
    assertThat(out.size()).isZero();
    assertThat(rows(output, "models.csv")).hasSize(5).allMatch(r -> r.startsWith("path,state") || r.contains(",done,"));
    assertThat(rows(output, "models.csv").get(1)).startsWith("barn.ifc.gz,done,");
    // The gatehouse has 14 lines, as its table in the readme says.
    assertThat(rows(output, "junctions.csv").stream().filter(r -> r.startsWith("north/gatehouse.ifc,"))).hasSize(14);
    for (String table : new String[] {"nodes.csv", "findings.csv", "order-by-model.csv"}) {
      assertThat(rows(output, table).get(0)).startsWith("path,");
      assertThat(rows(output, table).stream().filter(r -> r.startsWith("dairy.ifczip,"))).isNotEmpty();
    }
    assertThat(rows(output, "order.csv").stream().filter(r -> r.startsWith("tape,"))).hasSize(1);
    assertThat(content(output).keySet().stream().filter(f -> f.startsWith("pictures/"))).hasSize(4);
    String page = Files.readString(output.resolve("index.html"));
    assertThat(page).contains("4 models, 4 with a result").doesNotContain("<b>&amp; ‘yard’").contains("&lt;b&gt;&amp;amp;");
  }

  /** Lengths of one kind over all models, against the sum of the rows. */
  @Test
  void sumsByKindAreThoseOfTheRows() throws IOException {
    Path output = folder.resolve("out");
    run("portfolio", models.toString(), "--output", output.toString());
    Map<String, Double> sums = new TreeMap<>();
    rows(output, "junctions.csv").stream().skip(1).map(r -> r.replaceFirst("^\"[^\"]*\"|^[^,]*", "").split(","))
        .forEach(c -> sums.merge(c[2],
            Double.parseDouble(c[3]), Double::sum));
    for (String row : rows(output, "kinds.csv").subList(1, sums.size() + 1)) {
      String[] cells = row.split(",");
      assertThat(Double.parseDouble(cells[3])).as(cells[0]).isEqualTo(sums.get(cells[0]), org.assertj.core.api.Assertions.within(1e-4));
    }
  }

  @Test
  void brokenModelIsARowAndTheRestIsThere() throws IOException {
    Path output = folder.resolve("out");
    Files.writeString(models.resolve("a.ifc"), "%PDF-1.7");
    assertThat(run("portfolio", models.toString(), "--output", output.toString())).isEqualTo(3);
    assertThat(rows(output, "models.csv").get(1)).startsWith("a.ifc,unreadable,model/unreadable,\"a.ifc:1:1: expected a STEP file");
    assertThat(err()).endsWith("5 models, 0 of them known before, 1 without a result: " + output.resolve("index.html") + "\n");
    assertThat(Files.readString(output.resolve("index.html"))).contains("Models without a result");
    Files.delete(models.resolve("a.ifc"));
    assertThat(run("portfolio", models.toString(), "--output", output.toString(), "--fail-on", "warning")).isEqualTo(1);
    assertThat(err()).contains("4 models, 4 of them known before, 0 without");
  }

  /** Threads, the order of a list, and what was known before leave no trace; nor does where the models are. */
  @Test
  void sameBytesWhateverTheWay() throws IOException {
    Path one = folder.resolve("one");
    run("portfolio", models.toString(), "--output", one.toString(), "--threads", "1");
    Path two = folder.resolve("two");
    List<String> names = new ArrayList<>(List.of("north/gatehouse.ifc", "north/yard/" + HOSTILE, "barn.ifc.gz", "dairy.ifczip"));
    Collections.shuffle(names, new Random(5));
    Files.writeString(models.resolve("list.txt"), "\ufeff# models\n\n" + String.join("\r\n", names) + "\n./barn.ifc.gz\n");
    run("portfolio", models.resolve("list.txt").toString(), "--output", two.toString(), "--threads", "4");
    assertThat(content(two)).isEqualTo(content(one));
    run("portfolio", models.toString(), "--output", two.toString());
    assertThat(content(two)).isEqualTo(content(one));
  }

  @Test
  void otherRoofSystemIsAnotherResult() throws IOException {
    Path output = folder.resolve("out");
    run("portfolio", models.toString(), "--output", output.toString());
    String before = Files.readString(output.resolve("order.csv"));
    run("portfolio", models.toString(), "--output", output.toString(), "--system", "ifc-samples/roof-system.json");
    assertThat(err()).contains(" 0 of them known before");
    assertThat(Files.readString(output.resolve("order.csv"))).isNotEqualTo(before).contains("roof-system.json");
  }

  @Test
  void wrongWordsAreToldBeforeTheWork() throws IOException {
    String output = folder.resolve("out").toString();
    Files.writeString(folder.resolve("empty.txt"), "# nothing\n");
    Files.createDirectories(folder.resolve("bare"));
    assertThat(run("portfolio", folder.resolve("none").toString(), "--output", output)).isEqualTo(2);
    assertThat(err()).contains("found nothing of that name");
    assertThat(run("portfolio", folder.resolve("bare").toString(), "--output", output)).isEqualTo(2);
    assertThat(err()).contains("holds no model");
    assertThat(run("portfolio", folder.resolve("empty.txt").toString(), "--output", output)).isEqualTo(2);
    assertThat(err()).contains("expected a path of a model in each line");
    assertThat(run("portfolio", sample("barn").toString(), "--output", output)).isEqualTo(2);
    assertThat(err()).contains("found a model; analyze takes it");
    assertThat(run("portfolio", models.toString())).isEqualTo(2);
    assertThat(run("portfolio", models.toString(), "--output", output, "--threads", "0")).isEqualTo(2);
    assertThat(run("portfolio", models.toString(), "--output", output, "--system", folder.resolve("empty.txt").toString())).isEqualTo(2);
    assertThat(run("portfolio", models.toString(), "--output", sample("barn").toString())).isEqualTo(74);
  }

  /** {@code kill -9} at random moments, again and again: the next run goes on, and the end is that of a run nobody disturbed. */
  @Test
  void killedRunsGoOnWhereTheyWere() throws Exception {
    int rounds = Integer.getInteger("seamledger.kills", 3);
    for (String name : SAMPLES) {
      Files.copy(sample(name), models.resolve("one-of-" + name + ".ifc"));
    }
    Path undisturbed = folder.resolve("undisturbed");
    run("portfolio", models.toString(), "--output", undisturbed.toString());
    long seed = Long.getLong("seamledger.seed", 1);
    Random random = new Random(seed);
    Path output = folder.resolve("out");
    for (int round = 0; round < rounds; round++) {
      Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
          "-cp",
          System.getProperty("java.class.path"), "org.seamledger.cli.Main", "portfolio", models.toString(), "--output", output.toString(),
          "--again").redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
      process.waitFor(500 + random.nextInt(6000), TimeUnit.MILLISECONDS);
      process.destroyForcibly().waitFor();
    }
    assertThat(run("portfolio", models.toString(), "--output", output.toString(), "--again")).as("seed %d: %s", seed, err()).isZero();
    assertThat(content(output)).as("seed %d", seed).isEqualTo(content(undisturbed));
  }
}
