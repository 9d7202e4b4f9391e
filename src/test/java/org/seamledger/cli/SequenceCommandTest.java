package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.takeoff.Analysis;

/** The order of work from the command line. */
class SequenceCommandTest {

  private static final String MODEL = "ifc-samples/worked/regular-hip.ifc";
  private static final String WEATHER = "ifc-samples/weather.csv";

  @TempDir
  private Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... words) {
    out.reset();
    err.reset();
    String[] all = new String[words.length + 2];
    all[0] = "sequence";
    all[1] = MODEL;
    System.arraycopy(words, 0, all, 2, words.length);
    int status = new Cli(Analysis::run, Environment.PLAIN).run(all, out, new PrintStream(err, true, StandardCharsets.UTF_8));
    assertThat(err()).doesNotContain("fault");
    return status;
  }

  private String out() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  private JsonNode json() throws IOException {
    return new ObjectMapper().readTree(out.toByteArray());
  }

  /** Hip by hand: 18 closures and 126 rivets, E3 of the worked examples; they are carried up on the day on which they are set. */
  @Test
  void daysSayWhatIsCarriedUp() {
    assertThat(run()).isZero();
    assertThat(out()).contains("Work       33 steps", "Day 1\n", "18 × closure", "126 × closed-end rivet", "look !    ");
    String once = out();
    run();
    assertThat(out()).isEqualTo(once);
    assertThat(run("--crew", "8")).isZero();
    assertThat(out()).contains("Crew       8, ").isNotEqualTo(once);
  }

  /** In the demo weather no task that seals begins in an hour that is shut for what it seals, and no locked one before it is ready. */
  @Test
  void weatherPutsOffWhatIsSealed() throws IOException {
    assertThat(run("--weather", WEATHER, "--format", "json")).isZero();
    JsonNode json = json();
    Map<String, JsonNode> steps = new HashMap<>();
    json.path("steps").forEach(s -> steps.put(s.path("id").textValue(), s));
    Map<String, Double> ready = new HashMap<>();
    json.path("holds")
        .forEach(h -> ready.put(h.path("step").textValue(), (h.path("readyDay").intValue() - 1) * 24 + h.path("ready").doubleValue()));
    JsonNode hours = json.path("weather").path("hours");
    assertThat(hours).hasSize(120);
    int sealed = 0;
    for (JsonNode day : json.path("days")) {
      for (JsonNode task : day.path("tasks")) {
        JsonNode step = steps.get(task.path("step").textValue());
        double at = (day.path("day").intValue() - 1) * 24 + task.path("from").doubleValue();
        for (JsonNode seal : step.path("seals")) {
          if (task.path("begins").booleanValue() && at < 120) {
            assertThat(hours.get((int) (at + 1e-6)).path("against-" + seal.path("class").textValue())).as(step.path("id").textValue())
                .isEmpty();
            sealed++;
          }
        }
        if (task.path("begins").booleanValue()) {
          assertThat(at).isGreaterThanOrEqualTo(ready.getOrDefault(step.path("id").textValue(), 0.0) - 1e-6);
        }
      }
    }
    assertThat(sealed).isGreaterThan(10);
    assertThat(ready).hasSize(4);
    assertThat(json.path("waits")).anySatisfy(w -> assertThat(w.path("for").textValue()).isEqualTo("weather"));
  }

  @Test
  void windowsOfNow() {
    assertThat(run("--air", "3C", "--humidity", "95", "--sun", "none")).isZero();
    assertThat(out()).contains("beads of gun sealant: NO: ", "metal too near the dew point", "air too humid", "estimated");
    assertThat(run("--air", "68F", "--humidity", "50", "--metal", "75F")).isZero();
    assertThat(out()).contains("beads of gun sealant: yes", "23.9 °C (75 °F), measured", "dew point 9.3 °C");
  }

  @Test
  void picture() {
    assertThat(run("--weather", WEATHER, "--format", "svg", "--from", "04-14", "--days", "2")).isZero();
    // Two days of 24 hours and three classes.
    assertThat(out().split("class=\"(open|shut)\"", -1)).hasSize(1 + 2 * 24 * 3 + 2);
    assertThat(out()).contains("04-14", "04-15").doesNotContain("04-13", "04-16");
  }

  @Test
  void whatCannotBe() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.csv"), "time,air_C,humidity_%\n2026-01-01T00:00,warm,50\n");
    assertThat(run("--weather", bad.toString())).isEqualTo(2);
    assertThat(err()).contains("bad.csv: line 2, column 18: expected °C from -90 to 130, found \"warm\"");
    assertThat(run("--weather", WEATHER, "--from", "05-01")).isEqualTo(2);
    assertThat(err()).contains("weather.csv has no hour of the day 05-01");
    assertThat(run("--air", "warm", "--humidity", "50")).isEqualTo(2);
    assertThat(err()).contains("--air is a temperature from -90 to 70 °C such as 12C or 54F, not \"warm\"");
    assertThat(run("--air", "12C", "--humidity", "50", "--weather", WEATHER)).isEqualTo(2);
    assertThat(run("--crew", "0")).isEqualTo(2);
    assertThat(run("--crew", "101")).isEqualTo(2);
    assertThat(run("--format", "svg")).isEqualTo(2);
    assertThat(err()).contains("--format svg draws the sealing windows of a weather");
    assertThat(run("--weather", "no-such.epw")).isEqualTo(2);
    assertThat(err()).contains("no-such.epw: no such file");
  }
}
