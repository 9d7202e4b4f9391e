package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The whole story against a real BIMserver, told by the program as it is packaged: each command a process of its own, started by the
 * launcher.
 */
@Tag("packaged")
class PackagedWatchTest extends WatchStoryTest {

  @Override
  Said program(String... words) {
    InstalledProgram.Ended ended = InstalledProgram.run(folder, words);
    return new Said(ended.status(), ended.err());
  }

  @Override
  RunningService serve() throws IOException {
    return InstalledProgram.serve(folder, "--data", folder.resolve("data").toString(), "--servers", list.toString(), "--watch", "--every",
        "1");
  }

  @Test
  void projectsAreListedAndARevisionIsAnalysedByName() {
    InstalledProgram.Ended projects = InstalledProgram.run(folder, "projects", "--servers", list.toString());
    assertThat(projects.status()).as(projects.err()).isZero();
    assertThat(projects.out()).contains(name).doesNotContain(real.password());
    InstalledProgram.Ended ledger =
        InstalledProgram.run(folder, "analyze", "server:site/" + name + "@1", "--servers", list.toString(), "--format", "csv");
    assertThat(ledger.status()).as(ledger.err()).isZero();
    assertThat(ledger.out().lines()).as("a head and 14 junctions").hasSize(15);
    assertThat(List.of(projects, ledger)).extracting(InstalledProgram.Ended::err)
        .allSatisfy(err -> assertThat(err).doesNotContain("Exception", "Error", "building"));
  }
}
