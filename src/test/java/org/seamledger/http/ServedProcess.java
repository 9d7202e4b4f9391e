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
import java.util.ArrayList;
import java.util.List;

/** The service on made-up results in a process of its own, where its surroundings can be made hard for it. */
final class ServedProcess implements AutoCloseable {

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final Process process;
  private final HttpClient client = HttpClient.newHttpClient();
  private final URI url;
  private final StringBuffer log = new StringBuffer();

  /** @param before what the command line begins with, such as another program that starts it; then options of Java */
  ServedProcess(List<String> before, List<String> options, Path data) throws IOException {
    List<String> command = new ArrayList<>(before);
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(options);
    command.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path"),
        FixtureServer.class.getName(), "fixture", data.toString(), "0"));
    process = new ProcessBuilder(command).redirectErrorStream(true).start();
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    url = URI.create(ReadyLine.await(out));
    Thread rest = new Thread(() -> out.lines().forEach(l -> log.append(l).append('\n')), "log of " + url);
    rest.setDaemon(true);
    rest.start();
  }

  long pid() {
    return process.pid();
  }

  /** What it has said since it was ready. */
  String log() {
    return log.toString();
  }

  HttpResponse<String> send(String method, String path, String type, String body) throws IOException, InterruptedException {
    return client.send(HttpRequest.newBuilder(url.resolve(path)).header("Content-Type", type)
        .method(method, HttpRequest.BodyPublishers.ofString(body)).build(), HttpResponse.BodyHandlers.ofString());
  }

  HttpResponse<String> upload(String words) throws IOException, InterruptedException {
    return send("POST", "/api/analyses", "multipart/form-data; boundary=b",
        "--b\r\nContent-Disposition: form-data; name=\"model\"; filename=\"a.ifc\"\r\n\r\n" + words + "\r\n--b--\r\n");
  }

  JsonNode get(String path) throws IOException, InterruptedException {
    return json(send("GET", path, "application/json", ""));
  }

  static JsonNode json(HttpResponse<String> answer) throws IOException {
    return MAPPER.readTree(answer.body());
  }

  /** What is told of an analysis when it has ended. */
  JsonNode ended(String id) throws IOException, InterruptedException {
    for (int i = 0; i < 1200; i++) {
      JsonNode now = get("/api/analyses/" + id);
      if (!List.of("queued", "running").contains(now.path("state").textValue())) {
        return now;
      }
      Thread.sleep(50);
    }
    throw new AssertionError(id + " does not end");
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
