package org.seamledger.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.seamledger.http.Server;
import org.seamledger.http.setting.Options;
import org.seamledger.run.TakeoffAnalyzer;

/** Has the service analyse a model, asks it for what people look at first, and stops it; its data is gone afterwards. */
final class ServiceWarmUp {

  private static final int ROUNDS = 600;
  private static final long ROUND_MILLIS = 100;
  private static final Pattern OPENED = Pattern.compile("\"analysis\"\\s*:\\s*\"([^\"]+)\"");
  private static final Pattern JUNCTION = Pattern.compile("\"id\"\\s*:\\s*\"(J[^\"]+)\"");

  private final String url;

  private ServiceWarmUp(String url) {
    this.url = url.substring(0, url.length() - 1);
  }

  static void run(Session session, Path model) throws IOException {
    Path data = Files.createTempDirectory("seamledger-warm-up");
    try {
      Logging.asService(LogForm.text, OutputStream.nullOutputStream());
      Options options = Options.of(new TakeoffAnalyzer(session.environment().shapes()), data).bind(Options.LOOPBACK, Optional.empty())
          .port(0).models(List.of(model));
      String section;
      try (Server server = Server.start(options)) {
        section = new ServiceWarmUp(server.url()).look();
      }
      // A section after a restart is drawn from what was stored.
      try (Server server = Server.start(options)) {
        new ServiceWarmUp(server.url()).get(section);
      }
    } finally {
      Logging.asCommand();
      remove(data);
    }
  }

  /** Gives the path of a section. */
  private String look() throws IOException {
    get("/");
    get("/api/health");
    get("/api/analyses");
    String analysis = first(OPENED, get("/api/start"));
    String ledger = ledger(analysis);
    get("/api/analyses/" + analysis + "/outline");
    get("/api/analyses/" + analysis + "/plan.svg");
    String section = "/api/analyses/" + analysis + "/sections/" + first(JUNCTION, ledger) + ".svg";
    get(section);
    return section;
  }

  private String ledger(String analysis) throws IOException {
    for (int round = 0; round < ROUNDS; round++) {
      try {
        return get("/api/analyses/" + analysis + "/ledger");
      } catch (IOException e) {
        pause();
      }
    }
    throw new IOException("no ledger");
  }

  private static void pause() {
    try {
      Thread.sleep(ROUND_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static String first(Pattern wanted, String text) throws IOException {
    Matcher found = wanted.matcher(text);
    if (!found.find()) {
      throw new IOException("no " + wanted);
    }
    return found.group(1);
  }

  private String get(String path) throws IOException {
    try (InputStream in = URI.create(url + path).toURL().openStream()) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
