package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SuggestionTest {

  @ParameterizedTest
  @CsvSource(delimiter = '|', textBlock = """
      analyse a.ifc               | there is no command analyse; did you mean analyze?; seamledger --help tells more
      comapre a.ifc b.ifc         | there is no command comapre; did you mean compare?; seamledger --help tells more
      server                      | there is no command server; did you mean serve?; seamledger --help tells more
      a.ifc                       | there is no command a.ifc; seamledger --help tells more
      analyze a.ifc --fale-on x   | Unknown option: '--fale-on'; did you mean --fail-on?; seamledger analyze --help tells more
      analyze a.ifc --out=x       | Unknown option: '--out=x'; did you mean --output?; seamledger analyze --help tells more
      analyze a.ifc --quietly     | Unknown option: '--quietly'; seamledger analyze --help tells more
      """)
  void namesWhatWasMeant(String words, String message) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status = new Cli(null, Environment.PLAIN).run(words.split(" "), OutputStream.nullOutputStream(),
        new PrintStream(err, true, StandardCharsets.UTF_8));
    assertThat(status).isEqualTo(ExitStatus.USAGE);
    assertThat(err.toString(StandardCharsets.UTF_8)).startsWith("seamledger: " + message).hasLineCount(1);
  }
}
