package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The launcher for Windows, as far as can be told without Windows: it has what the other one has, in the form that cmd.exe reads. */
class WindowsLauncherTest {

  private static String unix() throws IOException {
    return Files.readString(Path.of("seamledger"));
  }

  private static String windows() throws IOException {
    return Files.readString(Path.of("seamledger.cmd"));
  }

  private static Set<String> found(String regex, String text) {
    Set<String> found = new TreeSet<>();
    for (Matcher m = Pattern.compile(regex).matcher(text); m.find();) {
      found.add(m.group(1));
    }
    return found;
  }

  /** Options of Java and Maven, without the paths and numbers of one system. */
  private static Set<String> options(String launcher) {
    return found("[ (\"=](-[XD][^\\s\"=$)]+(?:=[^\\s\"$%)]*)?)", launcher.replaceAll("(?m)^(#|rem ).*", ""));
  }

  @Test
  void bothPassTheSameOptions() throws IOException {
    assertThat(options(unix())).hasSizeGreaterThan(12).contains("-Xshare:auto", "-Dseamledger.shapes=", "-Dseamledger.samples=",
        "-Dmaven.test.skip=true", "-XX:TieredStopAtLevel=1").isEqualTo(options(windows()));
  }

  @Test
  void bothSayTheSameOfWhatFails() throws IOException {
    Set<String> messages = found("fail \"([^\"$]+)\"", unix());
    assertThat(messages).hasSizeGreaterThanOrEqualTo(3);
    assertThat(windows()).contains(messages).contains("exit /b 70");
    assertThat(unix()).contains("exit 70");
  }

  @Test
  void bothKnowTheSameSourcesModelsAndVariables() throws IOException {
    for (String name : List.of("pom.xml", "src/main", "web", "ifc-samples/school.ifc", "ifc-samples/granary.ifc", "ifc-samples/stable.ifc",
        "target/seamledger.jar", "target/seamledger.jsa", "JAVA_HOME", "SEAMLEDGER_JAVA_OPTS", ".gz", ".zip", ".ifczip", "warm-up", "serve",
        "watch")) {
      assertThat(unix()).contains(name);
      assertThat(windows().replace('\\', '/')).contains(name);
    }
  }

  @Test
  void wordsAndStatusArePassedOn() throws IOException {
    assertThat(windows()).containsPattern("%SEAMLEDGER_JAVA_OPTS% -jar \"%jar%\" %\\*\r\nexit /b %errorlevel%\r\n");
  }

  @Test
  void everyJumpHasItsLabel() throws IOException {
    Set<String> jumps = found("(?:goto |call :)(\\w+)", windows());
    assertThat(jumps).hasSizeGreaterThan(5).isEqualTo(found("(?m)^:(\\w+)\r?$", windows()));
  }

  /** cmd.exe takes text as in the code page of the day, and loses its place in files with other ends of lines. */
  @Test
  void linesEndAsCmdExpects() throws IOException {
    assertThat(StandardCharsets.US_ASCII.newEncoder().canEncode(windows())).isTrue();
    assertThat(windows().replace("\r\n", "")).doesNotContain("\n", "\r");
    assertThat(Files.readString(Path.of(".gitattributes")).toLowerCase(Locale.ROOT)).contains("*.cmd text eol=crlf",
        "seamledger text eol=lf");
  }
}
