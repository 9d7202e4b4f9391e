package org.seamledger.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.seamledger.run.Analyzer;
import org.seamledger.takeoff.Analysis;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.source.ModelSource;
import org.seamledger.source.ServedOffice;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.Takeoffs;

/** Commands on models that servers keep. */
@Tag("slow")
class ServerModelsTest {

  @TempDir
  private Path folder;

  private final ServedOffice office = new ServedOffice();
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private final List<String> asked = new ArrayList<>();
  private final Map<Integer, String> places = new TreeMap<>();
  private Path list;

  @BeforeEach
  void write() throws IOException {
    list = office.list(folder);
  }

  @AfterEach
  void stop() {
    office.close();
  }

  private int run(String... words) {
    Analyzer<Takeoff> analyzer = (inputs, progress) -> {
      inputs.models().stream().map(ModelSource::name).forEach(asked::add);
      inputs.places().forEach((model, movement) -> places.put(model, movement.argument()));
      return Takeoffs.boatHouse();
    };
    String[] all = Stream.concat(Stream.of(words), Stream.of("--servers", list.toString())).toArray(String[]::new);
    return new Cli(analyzer, Environment.PLAIN).run(all, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  private String err() {
    return err.toString(StandardCharsets.UTF_8);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|',
      value = {"server:office/Boat house | Boat house, revision 2", "server:office/Boat house@1 | Boat house, revision 1",
          "server:office/131073@2 | Boat house, revision 2", "server:office/a/b@home | a-b@home, revision 2",
          "server:office/a/b@home@1 | a-b@home, revision 1"})
  void aRevisionIsNamedByItsProject(String word, String name) {
    assertThat(run("analyze", word)).as(err()).isZero();
    assertThat(asked).containsExactly(name);
    assertThat(err()).isEmpty();
  }

  @Test
  void filesAndServersMixInEveryCommand() {
    assertThat(run("analyze", "pipes.ifc", "server:office/Boat house", "server:office/Boat house@1")).as(err()).isZero();
    assertThat(asked).containsExactly("pipes.ifc", "Boat house, revision 2", "Boat house, revision 1");
    for (String[] words : List.of(new String[] {"plan", "server:office/Boat house"},
        new String[] {"explain", "server:office/Boat house", "rak"},
        new String[] {"section", "server:office/Boat house", "rid"})) {
      assertThat(run(words)).as(err()).isZero();
    }
    assertThat(asked).hasSize(6);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {"server:office/Barn | 3 | office has no project Barn; it has Boat house, a/b@home",
      "server:office/Boat house@7 | 3 | office has no revision 7 of Boat house; it has 1 to 2",
      "server:home/Barn | 2 | the list of servers has none named home; it has office",
      "server:office | 2 | expected server:NAME/PROJECT or server:NAME/PROJECT@REVISION, found server:office",
      "server:office/ | 2 | expected server:NAME/PROJECT"})
  void whatIsNotThereIsOneLine(String word, int status, String said) {
    assertThat(run("analyze", word)).isEqualTo(status);
    assertThat(err()).hasLineCount(1).startsWith("seamledger: " + said);
    assertThat(asked).isEmpty();
  }

  /** As it was typed, as the finding calls it, or by its file's name. */
  @ParameterizedTest
  @ValueSource(strings = {"server:office/Boat house@1", "Boat house, revision 1"})
  void aModelOfAServerIsPlacedByItsName(String name) {
    assertThat(run("analyze", "a/pipes.ifc", "server:office/Boat house@1", "--place", name + "=1,2,3", "--place", "pipes.ifc=4,5,6,90"))
        .as(err()).isZero();
    assertThat(places.get(1)).isEqualTo("1,2,3");
    assertThat(places.get(0)).isEqualTo("4,5,6,90");
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "server:office/Boat house@2=1,2,3 | no model is named 'server:office/Boat house@2'; there are a/pipes.ifc, b/pipes.ifc, "
          + "server:office/Boat house@1",
      "pipes.ifc=1,2,3 | more than one model is named 'pipes.ifc'; say which: a/pipes.ifc, b/pipes.ifc",
      "a/pipes.ifc | expected MODEL=dx,dy,dz, found 'a/pipes.ifc'",
      "a/pipes.ifc=1,2 | expected dx,dy,dz in metres and perhaps degrees and a factor, found '1,2'"})
  void placesThatFitNoOneModelAreOneLine(String word, String said) {
    assertThat(run("analyze", "a/pipes.ifc", "b/pipes.ifc", "server:office/Boat house@1", "--place", word)).isEqualTo(2);
    assertThat(err()).isEqualTo("seamledger: --place: " + said + "\n");
    assertThat(run("analyze", "a/pipes.ifc", "b/pipes.ifc", "--place", "b/pipes.ifc=1,2,3")).isZero();
    assertThat(places).containsOnlyKeys(1);
  }

  @Test
  void projectsAreListedForPeople() {
    assertThat(run("projects")).as(err()).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("office, " + office.url() + """

          Boat house, IFC4, number 131073
              1  1970-01-01 00:00 UTC  first
              2  1970-01-01 00:00 UTC  second
          a/b@home, IFC4, number 131074
              1  1970-01-01 00:00 UTC  first
              2  1970-01-01 00:00 UTC  second
        """);
  }

  @Test
  void projectsAreListedForPrograms() throws IOException {
    assertThat(run("projects", "office", "--format", "json")).as(err()).isZero();
    JsonNode first = new ObjectMapper().readTree(out.toByteArray()).at("/servers/0/projects/0");
    assertThat(first.path("name").textValue()).isEqualTo("Boat house");
    assertThat(first.path("schema").textValue()).isEqualTo("IFC4");
    assertThat(first.at("/revisions/1/number").intValue()).isEqualTo(2);
    assertThat(first.at("/revisions/1/created").textValue()).isEqualTo("1970-01-01T00:00:00Z");
  }

  @Test
  void oneServerThatIsDownDoesNotHideTheOthers() throws IOException {
    Files.writeString(list, Files.readString(list) + "away.url=http://127.0.0.1:1\naway.user=a\naway.password=secret-of-away\n");
    assertThat(run("projects")).isEqualTo(3);
    assertThat(err()).isEqualTo("seamledger: away (http://127.0.0.1:1) can't be reached: nobody answers at that address\n");
    assertThat(out.toString(StandardCharsets.UTF_8)).startsWith("office, ");
  }

  @Test
  void noProjectsAreSaidInWordsWithWhoAsked() {
    office.hideProjects();
    assertThat(run("projects")).as(err()).isZero();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .isEqualTo("office, " + office.url() + ": no projects that roofer@example.org may see\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"projects", "analyze server:office/Barn", "watch office --once", "serve"})
  void aListWithoutServersIsSaidInWords(String words) throws IOException {
    Files.writeString(list, "# none yet\n");
    assertThat(run(words.split(" "))).isEqualTo(2);
    assertThat(err())
        .isEqualTo("seamledger: " + list + ": expected at least one server, such as office.url=https://models.example.org, found none\n");
  }

  @ParameterizedTest
  @ValueSource(strings = {"projects", "analyze server:office/Barn", "watch office --once"})
  void aListThatLacksTheUserIsAWrongListAndNoServersFault(String words) throws IOException {
    Files.writeString(list, "# ours\noffice.url=" + office.url() + "\n");
    String[] all = Stream
        .concat(Stream.of(words.split(" ")), Stream.of("--data", folder.resolve("data").toString()).filter(w -> words.startsWith("watch")))
        .toArray(String[]::new);
    assertThat(run(all)).as(err()).isEqualTo(2);
    assertThat(err()).hasLineCount(1)
        .contains(list.getFileName() + ":2: expected a user for server office, as office.user here or as SEAMLEDGER_USER_OFFICE"
            + " in the environment, found neither");
  }

  /** A step in the middle of a watch that fails as after an update that left a jar out: whoever tells the time. */
  private static final class BrokenClock extends Clock {
    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      throw new NoClassDefFoundError("org/example/Missing");
    }
  }

  private int watch(Clock clock, Environment environment, String... more) {
    String[] all = Stream
        .concat(Stream.of("watch", "office", "--servers", list.toString(), "--data", folder.resolve("data").toString()), Stream.of(more))
        .toArray(String[]::new);
    return new Cli(Analysis::run, environment, clock, Optional.empty()).run(all, out, new PrintStream(err, true, StandardCharsets.UTF_8));
  }

  @Test
  void aFaultOfTheProgramInAWatchIsOneLineAndSeventy() {
    assertThat(watch(new BrokenClock(), Environment.PLAIN, "--once")).isEqualTo(70);
    assertThat(err())
        .isEqualTo("seamledger: internal fault: java.lang.NoClassDefFoundError: org/example/Missing; please report it with the output under"
            + " SEAMLEDGER_TRACE=1\n");
    err.reset();
    watch(new BrokenClock(), new Environment(Optional.empty(), Optional.empty(), Optional.empty(), Map.of(), true), "--once");
    assertThat(err()).contains("\tat org.seamledger.cli.ServerModelsTest");
  }

  @Test
  void aWatchThatCantGoOnDoesNotStayUpDoingNothing() {
    assertThat(watch(new BrokenClock(), Environment.PLAIN)).isEqualTo(70);
    assertThat(err().lines().reduce((a, b) -> b)).hasValueSatisfying(l -> assertThat(l).startsWith("seamledger: internal fault: ")
        .contains("the watch on office has ended by itself"));
  }

  @Test
  void whatAWatchTellsHasTheTimeAsALineOrAnObject() throws IOException {
    Clock clock = Clock.fixed(Instant.parse("2026-03-02T08:00:00.250Z"), ZoneOffset.UTC);
    watch(clock, Environment.PLAIN, "--once");
    assertThat(err().lines().findFirst())
        .contains("2026-03-02T08:00:00.250Z INFO  Watching: watch event=found server=office project=\"Boat house\" revision=2"
            + " detail=\"second\"");
    err.reset();
    Files.writeString(list, "office.url=http://127.0.0.1:1\noffice.user=a\noffice.password=b\n");
    assertThat(watch(clock, Environment.PLAIN, "--once", "--log", "json")).isEqualTo(3);
    JsonNode event = new ObjectMapper().readTree(err());
    assertThat(event.path("time").textValue()).isEqualTo("2026-03-02T08:00:00.250Z");
    assertThat(event.path("event").textValue()).isEqualTo("trouble");
    assertThat(event.path("server").textValue()).isEqualTo("office");
    assertThat(event.path("detail").textValue()).startsWith("server/unreachable: ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"projects", "analyze server:office/Barn"})
  void aBrokenListIsAWrongCommandLine(String words) throws IOException {
    Files.writeString(list, "office.url=ftp://models.example.org\n");
    assertThat(run(words.split(" "))).isEqualTo(2);
    assertThat(err()).hasLineCount(1).contains(list + ":1: expected an address");
  }
}
