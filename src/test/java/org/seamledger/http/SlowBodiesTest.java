package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Bodies that arrive at their own pace, at a server whose patience ends after a second. */
class SlowBodiesTest {

  private final Server server = new Server();
  private final ServerConnector connector = new ServerConnector(server);

  @BeforeEach
  void start() throws Exception {
    connector.setHost("127.0.0.1");
    server.addConnector(connector);
    server.setHandler(new Handler.Abstract() {
      @Override
      public boolean handle(Request request, Response response, Callback callback) throws Exception {
        byte[] body = Content.Source.asInputStream(request).readAllBytes();
        Content.Sink.write(response, true, "had " + body.length, callback);
        return true;
      }
    });
    new SlowBodies(new SlowBodies.Limits(3, 6, 1, 1000), List.of()).install(server);
    server.start();
  }

  @AfterEach
  void stop() throws Exception {
    server.stop();
  }

  private Socket begun(int length) throws IOException {
    Socket s = new Socket("127.0.0.1", connector.getLocalPort());
    s.setSoTimeout(20_000);
    s.getOutputStream().write(("POST / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Length: " + length + "\r\n\r\n")
        .getBytes(StandardCharsets.ISO_8859_1));
    return s;
  }

  private static String answer(Socket s) throws IOException {
    return new String(s.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
  }

  @Test
  void oneBelowTheLeastRateIsCutOffAndOneAboveItArrives() throws Exception {
    try (Socket slow = begun(100_000); Socket steady = begun(60_000)) {
      boolean cut = false;
      int sent = 0;
      for (int i = 0; i < 150 && !cut || sent < 60_000; i++) {
        if (sent < 60_000) {
          steady.getOutputStream().write(new byte[2000]);
          sent += 2000;
        }
        try {
          slow.getOutputStream().write(new byte[40]);
        } catch (IOException e) {
          cut = true;
        }
        Thread.sleep(100);
      }
      assertThat(cut).as("400 bytes a second").isTrue();
      assertThat(answer(steady)).as("20,000 bytes a second").startsWith("HTTP/1.1 200").endsWith("had 60000");
    }
  }

  @Test
  void oneAddressHasAFewUnderWayAndMoreAreRefusedAtOnce() throws Exception {
    List<Socket> all = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      all.add(begun(5));
    }
    Thread.sleep(300);
    try (Socket more = begun(5)) {
      assertThat(answer(more)).startsWith("HTTP/1.1 429").contains("Retry-After: 10");
    }
    for (Socket s : all) {
      s.getOutputStream().write(new byte[5]);
      assertThat(answer(s)).startsWith("HTTP/1.1 200");
      s.close();
    }
    try (Socket later = begun(1)) {
      later.getOutputStream().write(1);
      assertThat(answer(later)).startsWith("HTTP/1.1 200");
    }
  }
}
