package org.seamledger.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;

/** Real processes of the tests on one database: servers and workers, each of which can be killed and started again. */
final class Fleet implements AutoCloseable {

  static final ObjectMapper MAPPER = new ObjectMapper();

  private final String database;
  private final Path models;
  /** Of whoever is started from now on. */
  final List<String> properties;
  /** Whether each process has a folder of its own, and models are in the database. */
  private boolean inDatabase;
  final List<Member> members = new CopyOnWriteArrayList<>();
  private final HttpClient client = HttpClient.newHttpClient();

  Fleet(String database, Path models, String... properties) {
    this.database = database;
    this.models = models;
    this.properties = new ArrayList<>(Arrays.asList(properties));
  }

  /** The same without a disk in common. */
  Fleet withoutSharedDisk() {
    inDatabase = true;
    return this;
  }

  /** One process. */
  final class Member {
    final String work;
    private final String database;
    private Process process;
    /** Of a server. */
    volatile String url = "";
    final List<String> said = new ArrayList<>();
    private int deaths;

    private final int number = members.size();

    private Member(String work, String database) {
      this.work = work;
      this.database = database;
    }

    Member start() {
      List<String> words = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
          "-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmx300m"));
      words.addAll(properties);
      if (inDatabase) {
        words.add("-Dseamledger.copies=" + models.resolve("copies-" + number));
      }
      words.addAll(List.of("-cp", System.getProperty("java.class.path"), SharedProcess.class.getName(), work, database, models.toString()));
      try {
        process = new ProcessBuilder(words).redirectErrorStream(true).start();
        BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
        for (String line = out.readLine(); line != null; line = out.readLine()) {
          say(line);
          if (line.startsWith("ready")) {
            url = line.substring(5).strip();
            drain(out);
            return this;
          }
        }
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
      throw new AssertionError(String.join("\n", said));
    }

    private synchronized void say(String line) {
      said.add(line);
    }

    synchronized String log() {
      return String.join("\n", said);
    }

    private void drain(BufferedReader out) {
      Thread reader = new Thread(() -> {
        try {
          for (String line = out.readLine(); line != null; line = out.readLine()) {
            say(line);
          }
        } catch (IOException e) {
          // It was killed.
        }
      }, "output");
      reader.setDaemon(true);
      reader.start();
    }

    /** As {@code kill -9} does. */
    void kill() {
      deaths++;
      try {
        process.destroyForcibly().waitFor();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    /** As an operator does. */
    void end() {
      process.destroy();
      try {
        process.waitFor();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    boolean isAlive() {
      return process.isAlive();
    }
  }

  Member start(String work) {
    return start(work, database);
  }

  /** Starts one that reaches the database by another way. */
  Member start(String work, String url) {
    Member m = new Member(work, url).start();
    members.add(m);
    return m;
  }

  JsonNode call(Member server, String method, String path, String type, String body) throws IOException, InterruptedException {
    HttpRequest request = HttpRequest.newBuilder(URI.create(server.url).resolve(path)).timeout(Duration.ofSeconds(40))
        .header("Content-Type", type).method(method, HttpRequest.BodyPublishers.ofString(body)).build();
    HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() >= 300) {
      throw new IOException(answer.statusCode() + " " + answer.body());
    }
    return answer.body().isEmpty() ? MAPPER.createObjectNode() : MAPPER.readTree(answer.body());
  }

  JsonNode get(Member server, String path) throws IOException, InterruptedException {
    return call(server, "GET", path, "application/json", "");
  }

  /** The id of a new analysis. */
  JsonNode upload(Member server, String words, String... fields) throws IOException, InterruptedException {
    return uploadNamed(server, "a.ifc", words, fields);
  }

  JsonNode uploadNamed(Member server, String name, String words, String... fields) throws IOException, InterruptedException {
    StringBuilder body =
        new StringBuilder("--b\r\nContent-Disposition: form-data; name=\"model\"; filename=\"" + name + "\"\r\n\r\n" + words + "\r\n");
    for (int i = 0; i + 1 < fields.length; i += 2) {
      body.append("--b\r\nContent-Disposition: form-data; name=\"").append(fields[i]).append("\"\r\n\r\n").append(fields[i + 1])
          .append("\r\n");
    }
    return call(server, "POST", "/api/analyses", "multipart/form-data; boundary=b", body + "--b--\r\n");
  }

  /** How an analysis ended, asked of any server that answers, for a minute and a half without any. */
  JsonNode awaitAnywhere(String id) throws InterruptedException {
    List<Member> servers = members.stream().filter(m -> m.work.equals("serve")).toList();
    long end = System.nanoTime() + Duration.ofSeconds(240).toNanos();
    for (int i = 0; System.nanoTime() < end; i++) {
      try {
        JsonNode now = get(servers.get(i % servers.size()), "/api/analyses/" + id);
        if (!List.of("queued", "running").contains(now.path("state").textValue())) {
          return now;
        }
      } catch (IOException e) {
        // It was killed, or starts.
      }
      Thread.sleep(50);
    }
    throw new AssertionError(id + " does not end\n" + logs());
  }

  /** How an analysis ended. */
  JsonNode await(Member server, String id) throws IOException, InterruptedException {
    long end = System.nanoTime() + Duration.ofSeconds(90).toNanos();
    while (System.nanoTime() < end) {
      JsonNode now = get(server, "/api/analyses/" + id);
      if (!List.of("queued", "running").contains(now.path("state").textValue())) {
        return now;
      }
      Thread.sleep(50);
    }
    throw new AssertionError(id + " does not end: " + get(server, "/api/analyses/" + id) + "\n" + logs());
  }

  /** How often each kind was killed. */
  String deaths() {
    Map<String, Integer> all = new TreeMap<>();
    members.forEach(m -> all.merge(m.work, m.deaths, Integer::sum));
    return all.toString();
  }

  String logs() {
    StringBuilder all = new StringBuilder();
    members.forEach(m -> all.append("== ").append(m.work).append('\n').append(m.log()).append('\n'));
    return all.toString();
  }

  @Override
  public void close() {
    members.forEach(Member::kill);
  }
}
