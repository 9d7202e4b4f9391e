package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamledger.http.setting.Options;

/** Requests damaged by chance get an answer that is no fault of the service, which goes on. */
@Tag("slow")
class RequestFuzzTest {

  private static final int INPUTS = Integer.getInteger("fuzz.inputs", 60) * 5;
  private static final long SEED = Long.getLong("fuzz.seed", 20_261_129L);
  private static final List<String> WORDS = List.of("\r\n", "\u0000", "%00", "%zz", "..", "//", ":", "{", "}", "\"", "99999999999", "-1",
      "\u00e9", "chunked", "Transfer-Encoding: chunked\r\n", "Content-Length: 5\r\n", "Expect: 100-continue\r\n", "null", "[[[[[[[[", "?",
      ";",
      "Range: bytes=0-1\r\n", "Accept-Encoding: gzip;q=x\r\n", "If-None-Match: *\r\n", "HTTP/9.9", "GET ");

  @TempDir
  private Path data;

  private static List<String> originals(String id) {
    String head = " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n";
    String review = "{\"state\":\"checked\",\"note\":\"seen\",\"version\":0}";
    String upload = "--b\r\nContent-Disposition: form-data; name=\"model\"; filename=\"a.ifc\"\r\n\r\nhouse\r\n--b--\r\n";
    return List.of("GET /api/analyses?limit=3&offset=1" + head + "\r\n", "GET /api/analyses/" + id + "/ledger" + head + "\r\n",
        "GET /api/analyses/" + id + "/changes?against=1" + head + "\r\n", "GET /api/analyses/" + id + "/outline" + head + "\r\n",
        "POST /api/projects" + head + "Content-Type: application/json\r\nContent-Length: 12\r\n\r\n{\"name\":\"a\"}",
        "PUT /api/analyses/" + id + "/reviews/J1" + head + "Content-Type: application/json\r\nContent-Length: " + review.length()
            + "\r\n\r\n" + review,
        "POST /api/analyses" + head + "Content-Type: multipart/form-data; boundary=b\r\nContent-Length: " + upload.length() + "\r\n\r\n"
            + upload);
  }

  private static String damaged(String request, Random random) {
    StringBuilder s = new StringBuilder(request);
    for (int k = 1 + random.nextInt(3); k > 0 && s.length() > 1; k--) {
      int at = random.nextInt(s.length());
      switch (random.nextInt(5)) {
        case 0 -> s.insert(at, WORDS.get(random.nextInt(WORDS.size())));
        case 1 -> s.setCharAt(at, (char) random.nextInt(256));
        case 2 -> s.delete(at, Math.min(s.length(), at + 1 + random.nextInt(20)));
        case 3 -> s.insert(at, s.substring(at, Math.min(s.length(), at + 30)).repeat(1 + random.nextInt(200)));
        default -> s.setLength(at);
      }
    }
    return s.toString();
  }

  private static String answer(Server server, String request) throws IOException {
    try (Socket s = new Socket("127.0.0.1", server.port())) {
      s.setSoTimeout(30_000);
      s.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      s.shutdownOutput();
      return new String(s.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
    } catch (SocketException e) {
      // The server may end a connection on which there is no sense.
      return "";
    }
  }

  @Test
  void noRequestIsAFaultOfTheService() throws IOException {
    System.out.println("fuzzing requests: " + INPUTS + " inputs from seed " + SEED);
    try (TestService service = new TestService(Options.of(new FixtureAnalyzer(), data))) {
      List<String> originals = originals(service.analyse("house").path("id").textValue());
      for (int i = 0; i < INPUTS; i++) {
        long own = SEED * 1_000_003L + i;
        String request = damaged(originals.get((int) Math.floorMod(own, (long) originals.size())), new Random(own));
        String answer = answer(service.server, request);
        assertThat(answer).as("seed %d: %s", own, request).doesNotContain("HTTP/1.1 500").doesNotContain("Exception")
            .doesNotContain("\tat ");
      }
      assertThat(service.get("/api/health").statusCode()).isEqualTo(200);
    }
  }
}
