package org.seamledger.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.bimserver.interfaces.objects.SActionState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamledger.source.ModelServerException.Reason;
import org.slf4j.LoggerFactory;

/** Against a server that behaves, and one that fails in every way that one can: whatever happens is one line, in time, without a secret. */
@Timeout(60)
@Tag("slow")
class BimServerTest {

  private static final ServedRevision FIRST = new ServedRevision(FakeBimServer.PROJECT, FakeBimServer.REVISION, 1, "first", Instant.EPOCH);

  private final FakeBimServer fake = new FakeBimServer();

  @AfterEach
  void stop() {
    fake.close();
  }

  private ModelServerException download(ServerAccess access) {
    return failure(access, server -> server.model(FIRST).open().close());
  }

  @FunctionalInterface
  private interface Work {
    void with(ModelServer server) throws IOException;
  }

  /** What is said, which is one line, holds no secret, and leaves no file open. */
  private ModelServerException failure(ServerAccess access, Work work) {
    ModelServerException said = catchThrowableOfType(ModelServerException.class, () -> {
      try (ModelServer server = BimServer.login(access)) {
        work.with(server);
      }
    });
    assertThat(said).isNotNull();
    for (Throwable t = said; t != null; t = t.getCause()) {
      assertThat(t.toString()).doesNotContain(FakeBimServer.TOKEN, FakeBimServer.PASSWORD);
    }
    assertThat(said.getMessage()).hasLineCount(1).contains("office");
    assertThat(openModels()).isEmpty();
    return said;
  }

  /** Temporary files that this process still has open; each of them goes when it is closed. */
  private static List<String> openModels() {
    List<String> open = new ArrayList<>();
    try (Stream<Path> handles = Files.list(Path.of("/proc/self/fd"))) {
      for (Path handle : handles.toList()) {
        if (Files.isSymbolicLink(handle)) {
          String file = Files.readSymbolicLink(handle).toString();
          if (file.matches(".*/seamledger\\d+\\.ifc.*")) {
            open.add(file);
          }
        }
      }
    } catch (IOException e) {
      return open;
    }
    return open;
  }

  private static ServerLimits limits(int answerMs, int downloadMs) {
    return new ServerLimits(Duration.ofSeconds(10), Duration.ofMillis(answerMs), Duration.ofMillis(downloadMs), 1 << 20);
  }

  @Test
  void listsProjectsAndRevisionsAndDownloadsOne() throws IOException {
    fake.result("getAllRevisionsOfProject", List.of(FakeBimServer.revision(FakeBimServer.REVISION + 65536, 2, "second"),
        FakeBimServer.revision(FakeBimServer.REVISION, 1, "first")));
    try (ModelServer server = BimServer.login(fake.access())) {
      assertThat(server.projects()).containsExactly(new ServedProject(FakeBimServer.PROJECT, "Boat house", "IFC4"));
      assertThat(server.revisions(FakeBimServer.PROJECT)).extracting(ServedRevision::number, ServedRevision::comment)
          .containsExactly(tuple(1, "first"), tuple(2, "second"));
      try (OpenModel model = server.model(FIRST).open()) {
        assertThat(model.file()).isEqualTo("Boat house, revision 1");
        assertThat(model.bytes()).isEqualTo(FakeBimServer.MODEL.length());
        assertThat(new String(Channels.newInputStream(model.channel()).readAllBytes(), StandardCharsets.UTF_8))
            .isEqualTo(FakeBimServer.MODEL);
        assertThat(openModels()).hasSize(1);
      }
    }
    assertThat(openModels()).isEmpty();
    assertThat(fake.called).contains("cleanupLongAction").endsWith("logout");
  }

  @Test
  void namesFromAServerAreOneLineAndNoPath() throws IOException {
    fake.result("getAllProjects", List.of(FakeBimServer.project("a/b\\c\n\u001b[31mred" + "x".repeat(500), "ifc4")));
    try (ModelServer server = BimServer.login(fake.access()); OpenModel model = server.model(FIRST).open()) {
      assertThat(model.file()).startsWith("a-b-c [31mredxxx").endsWith("…, revision 1").hasSizeLessThan(230).doesNotContain("\n", "\u001b");
    }
  }

  @Test
  void secretsStandInNoAddressAndInNoLog() throws IOException {
    Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    Level before = root.getLevel();
    ListAppender<ILoggingEvent> log = new ListAppender<>();
    log.start();
    root.addAppender(log);
    root.setLevel(Level.TRACE);
    try (ModelServer server = BimServer.login(fake.access())) {
      server.model(FIRST).open().close();
      assertThat(server.toString()).doesNotContain(FakeBimServer.PASSWORD);
      assertThat(server.model(FIRST).toString()).doesNotContain(FakeBimServer.PASSWORD, FakeBimServer.TOKEN);
    } finally {
      root.setLevel(before);
      root.detachAppender(log);
    }
    assertThat(fake.targets).contains(URI.create("/download"))
        .allSatisfy(target -> assertThat(target.toString()).doesNotContain(FakeBimServer.TOKEN, FakeBimServer.PASSWORD));
    assertThat(log.list)
        .allSatisfy(event -> assertThat(event.getFormattedMessage()).doesNotContain(FakeBimServer.TOKEN, FakeBimServer.PASSWORD));
  }

  @Test
  void aWrongPasswordIsRefused() {
    ServerAccess wrong = new ServerAccess("office", fake.access().url(), FakeBimServer.USER, "no", fake.access().limits(), "servers:1",
        Set.of());
    ModelServerException said = failure(wrong, server -> {});
    assertThat(said).hasMessage(wrong + " refuses user \"roofer@example.org\" with this password");
    assertThat(said.reason()).isEqualTo(Reason.REFUSED);
    assertThat(said.isPassing()).isFalse();
  }

  @Test
  void whatIsMissingForALoginIsSaid() {
    ServerAccess open = new ServerAccess("head-office", fake.access().url(), FakeBimServer.USER, "", fake.access().limits(), "servers:1",
        Set.of());
    assertThatThrownBy(() -> BimServer.login(open)).isInstanceOf(ModelServerException.class)
        .hasMessage(
            "servers:1: expected a password for server head-office, as head-office.password here or as"
                + " SEAMLEDGER_PASSWORD_HEAD_OFFICE in the"
                + " environment, found neither");
    assertThat(fake.targets).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {"UserException | User has insufficient rights to download revisions from this project | REFUSED",
      "AuthenticationException | This token has expired | REFUSED", "ServerException | Database error | UNUSABLE"})
  void whatTheServerSaysIsPassedOn(String type, String message, Reason reason) {
    fake.fault("download", type, message);
    ModelServerException said = download(fake.access());
    assertThat(said.getMessage()).contains(message);
    assertThat(said.reason()).isEqualTo(reason);
  }

  @Test
  void aFaultWithoutWordsIsAFault() {
    fake.fault("download", "ServerException", null);
    assertThat(download(fake.access())).hasMessageEndingWith("could not do it: it does not say why");
  }

  @Test
  void aModelThatItCannotWriteIsSaid() {
    fake.progress(SActionState.AS_ERROR, "Serialization Error", "no such type\nIfcRoof");
    assertThat(download(fake.access())).hasMessageEndingWith("can't write the model: no such type IfcRoof");
    assertThat(fake.called).contains("cleanupLongAction");
  }

  @Test
  void aServerThatTellsNoProgressIsDownloadedFromAfterAWhile() throws IOException {
    fake.nothing("getProgress");
    try (ModelServer server = BimServer.login(fake.access(limits(1500, 60_000))); OpenModel model = server.model(FIRST).open()) {
      assertThat(model.bytes()).isEqualTo(FakeBimServer.MODEL.length());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"login", "getAllProjects", "getSerializerByName", "download"})
  void nothingWhereSomethingIsNeededIsSaid(String method) {
    fake.nothing(method);
    assertThat(download(fake.access())).hasMessageContaining("gave an answer that this program does not understand");
  }

  @Test
  void aProjectThatIsNotThereIsNotFound() {
    ModelServerException said = failure(fake.access(), server -> server.revisions(5));
    assertThat(said).hasMessageContaining("has no project with the number 5");
    assertThat(said.reason()).isEqualTo(Reason.NOT_FOUND);
  }

  @Test
  void anotherSchemaIsSaidBeforeTheDownload() {
    fake.result("getAllProjects", List.of(FakeBimServer.project("Boat house", "ifc4x3")));
    assertThat(download(fake.access())).hasMessageContaining("in the schema \"IFC4X3\"");
    assertThat(fake.targets).doesNotContain(URI.create("/download"));
  }

  @Test
  void nobodyAtThatAddress() {
    fake.close();
    ModelServerException said = download(fake.access());
    assertThat(said).hasMessageEndingWith("can't be reached: nobody answers at that address");
    assertThat(said.isPassing()).isTrue();
  }

  @Test
  void noSuchHost() {
    ServerAccess nowhere =
        new ServerAccess("office", URI.create("https://no-such-host.invalid"), "a", "b", limits(20_000, 20_000), "servers:1", Set.of());
    assertThat(failure(nowhere, server -> {})).hasMessageEndingWith("can't be reached: there is no host of that name");
  }

  @Test
  void noSafeConnection() throws IOException {
    try (ServerSocket plain = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      Thread thread = new Thread(() -> speakPlainly(plain));
      thread.setDaemon(true);
      thread.start();
      ServerAccess access = new ServerAccess("office", URI.create("https://127.0.0.1:" + plain.getLocalPort()), "a", "b",
          limits(20_000, 20_000), "servers:1", Set.of());
      ModelServerException said = failure(access, server -> {});
      assertThat(said).hasMessageContaining("no safe connection can be made");
      assertThat(said.reason()).isEqualTo(Reason.UNREACHABLE);
    }
  }

  private static void speakPlainly(ServerSocket socket) {
    try (Socket asked = socket.accept()) {
      asked.getInputStream().read();
      asked.getOutputStream().write("HTTP/1.1 400 Bad Request\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
    } catch (IOException e) {
      // The test is over.
    }
  }

  @Test
  void silenceEndsInTime() {
    fake.on("getProgress", exchange -> pause(20_000));
    ModelServerException said = download(fake.access(limits(700, 60_000)));
    assertThat(said).hasMessageEndingWith("has sent nothing for 700 milliseconds");
    assertThat(said.reason()).isEqualTo(Reason.TIMED_OUT);
    assertThat(said.isPassing()).isTrue();
  }

  @Test
  void silenceInTheMiddleOfAModelEndsInTime() {
    fake.on("/download", exchange -> {
      begin(exchange, FakeBimServer.MODEL.substring(0, 50));
      pause(20_000);
    });
    assertThat(download(fake.access(limits(2_000, 60_000)))).hasMessageEndingWith("has sent nothing for 2 seconds");
  }

  @Test
  void aModelThatDripsEndsInTime() {
    fake.on("/download", exchange -> {
      begin(exchange, "ISO-10303-21;");
      for (int i = 0; i < 400; i++) {
        pause(50);
        exchange.getResponseBody().write(' ');
        exchange.getResponseBody().flush();
      }
    });
    ModelServerException said = download(fake.access(limits(10_000, 3_000)));
    assertThat(said).hasMessageEndingWith("was not done in 3 seconds");
    assertThat(said.reason()).isEqualTo(Reason.TIMED_OUT);
  }

  @Test
  void aServerThatDiesHalfWayIsUnreachable() {
    fake.on("/download", exchange -> {
      exchange.sendResponseHeaders(200, FakeBimServer.MODEL.length());
      exchange.getResponseBody().write(FakeBimServer.MODEL.substring(0, 100).getBytes(StandardCharsets.UTF_8));
      exchange.getResponseBody().flush();
      fake.close();
    });
    ModelServerException said = download(fake.access());
    assertThat(said).hasMessageEndingWith("can't be reached: the connection broke before the answer was complete");
    assertThat(said.isPassing()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 60, 100})
  void aModelThatIsCutShortIsRefused(int missing) {
    String text = FakeBimServer.MODEL.strip();
    fake.on("/download", exchange -> FakeBimServer.send(exchange, 200, text.substring(0, text.length() - missing)));
    if (missing == 0) {
      assertThat(catchThrowableOfType(Exception.class, () -> BimServer.login(fake.access()).model(FIRST).open().close())).isNull();
      return;
    }
    ModelServerException said = download(fake.access());
    assertThat(said).hasMessageContaining("cut short after " + (text.length() - missing) + " bytes");
    assertThat(said.reason()).isEqualTo(Reason.UNUSABLE);
  }

  @Test
  void aRelabelledModelIsRefused() {
    fake.on("/download", exchange -> FakeBimServer.send(exchange, 200, FakeBimServer.MODEL.replace("IFC4", "IFC2X3")));
    ModelServerException said = download(fake.access());
    assertThat(said).hasMessageContaining("labelled IFC2X3 from a project of IFC4");
    assertThat(said.reason()).isEqualTo(Reason.UNUSABLE);
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|',
      value = {"<!DOCTYPE html><html>Log in</html> | a web page", "'' | nothing", "No data found | \"No data found\""})
  void whatIsNoModelIsRefused(String sent, String said) {
    fake.on("/download", exchange -> FakeBimServer.send(exchange, 200, sent));
    assertThat(download(fake.access())).hasMessageEndingWith("sent " + said + " instead of a model");
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {"<html><body>Proxy</body></html> | a web page", "ok | something that is not JSON",
      "{\"response\":{\"result\": | something that is not JSON", "{} | JSON that is no BIMserver's", "[1] | JSON that is no BIMserver's"})
  void anAnswerOfSomebodyElseIsSaid(String sent, String said) {
    fake.on("/json", exchange -> FakeBimServer.send(exchange, 200, sent));
    assertThat(download(fake.access())).hasMessageContaining("answered with " + said);
  }

  @Test
  void aResultOfAnotherKindIsSaid() {
    fake.result("getAllProjects", "<none>");
    assertThat(download(fake.access())).hasMessageContaining("gave an answer that this program does not understand");
  }

  @ParameterizedTest
  @CsvSource({"401, REFUSED", "403, REFUSED", "404, UNUSABLE", "500, UNUSABLE", "503, UNREACHABLE"})
  void anHttpStatusIsSaid(int status, Reason reason) {
    fake.on("/download", exchange -> FakeBimServer.send(exchange, status, FakeBimServer.MODEL));
    ModelServerException said = download(fake.access());
    assertThat(said).hasMessageContaining("answered with HTTP status " + status);
    assertThat(said.reason()).isEqualTo(reason);
  }

  @ParameterizedTest
  @ValueSource(ints = {301, 302, 303, 307, 308})
  void nobodyIsSentToAnotherAddress(int status) {
    try (FakeBimServer other = new FakeBimServer()) {
      fake.on("/json", exchange -> redirect(exchange, status, other.access().url() + "/json"));
      ModelServerException said = download(fake.access());
      assertThat(said).hasMessageContaining("status " + status + ", a redirection, which is not followed");
      assertThat(other.targets).isEmpty();
    }
  }

  @Test
  void aModelThatIsTooLargeIsGivenUpAtOnce() {
    fake.on("/download", exchange -> {
      begin(exchange, "ISO-10303-21;");
      byte[] block = new byte[1 << 16];
      for (int i = 0; i < 1000; i++) {
        exchange.getResponseBody().write(block);
      }
    });
    ModelServerException said = download(fake.access());
    assertThat(said).hasMessageEndingWith("sent more than the 1048576 bytes that a model may have here");
    assertThat(said.reason()).isEqualTo(Reason.UNUSABLE);
  }

  @Test
  void anInterruptEndsADownload() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    fake.on("/download", exchange -> {
      begin(exchange, "ISO-10303-21;");
      begun.countDown();
      pause(20_000);
    });
    FutureTask<Boolean> work = new FutureTask<>(() -> {
      assertThatThrownBy(() -> BimServer.login(fake.access()).model(FIRST).open()).isInstanceOf(CancellationException.class)
          .hasMessageContaining("interrupted while waiting for office");
      return Thread.currentThread().isInterrupted();
    });
    Thread thread = new Thread(work);
    thread.start();
    assertThat(begun.await(30, TimeUnit.SECONDS)).isTrue();
    thread.interrupt();
    assertThat(work.get(10, TimeUnit.SECONDS)).as("stays interrupted").isTrue();
    assertThat(openModels()).isEmpty();
  }

  private static void redirect(HttpExchange exchange, int status, String target) throws IOException {
    exchange.getResponseHeaders().set("Location", target);
    FakeBimServer.send(exchange, status, "");
  }

  private static void begin(HttpExchange exchange, String text) throws IOException {
    exchange.sendResponseHeaders(200, 0);
    OutputStream out = exchange.getResponseBody();
    out.write(text.getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  private static void pause(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
