package org.seamledger.queue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The simulation behind the table of machines, against the mathematics of queues where that has an answer. */
@Tag("slow")
class QueueSimulationTest {

  private static String simulate(String... words) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(
        List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:TieredStopAtLevel=1",
            "src/bench/QueueSimulation.java"));
    command.addAll(List.of(words));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  /**
   * Mean time of waiting where times are exponential: {@code C(c, A) · s / (c − A)} with Erlang's second formula {@code C = B' / (Σ + B')},
   * {@code B' = A^c / c! · c / (c − A)}, {@code Σ = Σ A^k / k!} for k below c (A. K. Erlang 1917; Teletraffic Engineering Handbook of the
   * ITU, chapter on delay systems; from memory). By hand: c = 1, A = 1/2, C = 1/2; c = 2, A = 1, C = 1/3.
   */
  private static double erlang(int c, double offered, double seconds) {
    double term = 1;
    double sum = 0;
    for (int k = 0; k < c; k++) {
      sum += term;
      term *= offered / (k + 1);
    }
    double all = term * c / (c - offered);
    return all / (sum + all) * seconds / (c - offered);
  }

  @Test
  void theFormulaGivesWhatIsWorkedByHand() {
    assertThat(erlang(1, 0.5, 2)).isEqualTo(2, within(1e-12));
    assertThat(erlang(2, 1, 3)).isEqualTo(1, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({"1, 0.5, 1", "4, 3, 1", "16, 26, 0.5"})
  void waitsAsErlangsFormulaSays(int workers, double perSecond, double seconds) throws Exception {
    double expected = erlang(workers, perSecond * seconds, seconds);
    double mean = Double.parseDouble(simulate("" + workers, "" + perSecond, "" + seconds, "exponential").strip());
    assertThat(mean).isEqualTo(expected, within(0.05 * expected));
  }

  /** One worker, each model the same time: {@code ρ s / (2 (1 − ρ))} (Pollaczek 1930, Khinchine 1932; from memory). */
  @Test
  void waitsAsPollaczekAndKhinchineSay() throws Exception {
    double expected = 0.8 * 1 / (2 * (1 - 0.8));
    assertThat(Double.parseDouble(simulate("1", "0.8", "1", "constant").strip())).isEqualTo(expected, within(0.05 * expected));
  }

  @Test
  void theDocumentShowsWhatItPrints() throws Exception {
    assertThat(Files.readString(Path.of("src", "operators", "sizing.md"))).contains(simulate().replace("\r\n", "\n"));
  }
}
