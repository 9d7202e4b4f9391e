package org.seamledger.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** A real server and a client that holds every answer against the description that the server itself gives of its answers. */
final class TestService implements AutoCloseable {

  static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String BOUNDARY = "----a-boundary-of-this-test";

  final Server server;
  final HttpClient client = HttpClient.newHttpClient();
  private final JsonNode description;
  String token = "";

  TestService(Options options) {
    server = Server.start(options.port(0));
    description = json(get("/openapi.json"));
  }

  static TestService on(Path data) {
    return new TestService(Options.of(new FixtureAnalyzer(), data));
  }

  HttpResponse<byte[]> get(String path, String... headers) {
    return send("GET", path, null, headers);
  }

  /** Sends a request, with a JSON body unless it is null, and checks the answer against the description. */
  HttpResponse<byte[]> send(String method, String path, Object body, String... headers) {
    HttpRequest.BodyPublisher publisher = body == null ? HttpRequest.BodyPublishers.noBody()
        : HttpRequest.BodyPublishers.ofByteArray(body instanceof byte[] b ? b : text(body).getBytes(StandardCharsets.UTF_8));
    HttpRequest.Builder b =
        HttpRequest.newBuilder(URI.create(server.url()).resolve(path)).timeout(Duration.ofSeconds(30)).method(method, publisher);
    if (body != null && !(body instanceof byte[])) {
      b.header("Content-Type", "application/json");
    }
    if (!token.isEmpty()) {
      b.header("Authorization", "Bearer " + token);
    }
    for (int i = 0; i + 1 < headers.length; i += 2) {
      b.header(headers[i], headers[i + 1]);
    }
    try {
      HttpResponse<byte[]> answer = client.send(b.build(), HttpResponse.BodyHandlers.ofByteArray());
      if (description != null) {
        check(method, path, answer);
      }
      return answer;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static String text(Object body) {
    try {
      return body instanceof String s ? s : MAPPER.writeValueAsString(body);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private void check(String method, String path, HttpResponse<byte[]> answer) {
    String plain = path.replaceFirst("\\?.*", "");
    description.path("paths").properties().forEach(p -> {
      if (plain.matches(p.getKey().replaceAll("\\{\\w+}", "[^/]+")) && p.getValue().has(method.toLowerCase(Locale.ROOT))) {
        checkOperation(method + " " + path, p.getValue().path(method.toLowerCase(Locale.ROOT)), answer);
      }
    });
  }

  private void checkOperation(String what, JsonNode operation, HttpResponse<byte[]> answer) {
    JsonNode response = operation.path("responses").path(String.valueOf(answer.statusCode()));
    assertThat(response.isMissingNode())
        .as("%s may answer %s: %s", what, answer.statusCode(), new String(answer.body(), StandardCharsets.UTF_8)).isFalse();
    String type = answer.headers().firstValue("Content-Type").orElse("").replaceFirst(";.*", "");
    if (!response.has("content")) {
      assertThat(answer.body()).as(what).isEmpty();
      return;
    }
    JsonNode schema = response.path("content").path(type).path("schema");
    assertThat(schema.isMissingNode()).as("%s may answer with %s", what, type).isFalse();
    if (type.endsWith("json") && answer.headers().firstValue("Content-Encoding").isEmpty()) {
      ObjectNode whole = MAPPER.createObjectNode();
      whole.putArray("allOf").add(schema);
      whole.set("components", description.path("components"));
      Set<ValidationMessage> faults =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(whole).validate(json(answer));
      assertThat(faults).as("%s %s", what, answer.statusCode()).isEmpty();
    }
  }

  /** Where a server with this data folder keeps uploads: that depends on its database. */
  static Path uploads(Path data) {
    try (Stream<Path> all = Files.list(data)) {
      return all.filter(p -> p.getFileName().toString().startsWith("uploads")).reduce((a, b) -> {
        throw new IllegalStateException("two folders of uploads in " + data);
      }).orElseThrow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static JsonNode json(HttpResponse<byte[]> answer) {
    try {
      return MAPPER.readTree(answer.body());
    } catch (IOException e) {
      throw new IllegalStateException(new String(answer.body(), StandardCharsets.UTF_8), e);
    }
  }

  /** A multipart body: name, file name (or empty for a plain field), content; and so on. */
  HttpResponse<byte[]> upload(String... parts) {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < parts.length; i += 3) {
      body.append("--").append(BOUNDARY).append("\r\nContent-Disposition: form-data; name=\"").append(parts[i]).append('"');
      if (!parts[i + 1].isEmpty()) {
        body.append("; filename=\"").append(parts[i + 1]).append('"');
      }
      body.append("\r\n\r\n").append(parts[i + 2]).append("\r\n");
    }
    body.append("--").append(BOUNDARY).append("--\r\n");
    return send("POST", "/api/analyses", body.toString().getBytes(StandardCharsets.UTF_8), "Content-Type",
        "multipart/form-data; boundary=" + BOUNDARY);
  }

  /** Uploads one made-up model, waits until its analysis has ended, returns its description. */
  JsonNode analyse(String words, String... more) {
    String[] parts = new String[3 + more.length];
    System.arraycopy(new String[] {"model", "hall.ifc", words}, 0, parts, 0, 3);
    System.arraycopy(more, 0, parts, 3, more.length);
    HttpResponse<byte[]> answer = upload(parts);
    assertThat(answer.statusCode()).as(new String(answer.body(), StandardCharsets.UTF_8)).isEqualTo(202);
    return await(json(answer).path("id").textValue());
  }

  JsonNode await(String id) {
    long end = System.nanoTime() + 60_000_000_000L;
    while (System.nanoTime() < end) {
      JsonNode now = json(get("/api/analyses/" + id));
      if (!Set.of("queued", "running").contains(now.path("state").textValue())) {
        return now;
      }
      pause(30);
    }
    throw new AssertionError("analysis " + id + " does not end");
  }

  static void pause(int millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  JsonNode ledger(String id) {
    return json(get("/api/analyses/" + id + "/ledger"));
  }

  JsonNode reviews(String id) {
    return json(get("/api/analyses/" + id + "/reviews"));
  }

  HttpResponse<byte[]> review(String id, String junction, long version, Map<String, String> values) {
    ObjectNode body = MAPPER.createObjectNode();
    body.put("state", "checked").put("version", version);
    values.forEach(body::put);
    return send("PUT", "/api/analyses/" + id + "/reviews/" + junction, body);
  }

  @Override
  public void close() {
    server.close();
  }
}
