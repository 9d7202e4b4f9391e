package org.seamledger.source;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.bimserver.interfaces.objects.SActionState;
import org.bimserver.interfaces.objects.SLongActionState;
import org.bimserver.interfaces.objects.SProject;
import org.bimserver.interfaces.objects.SRevision;
import org.bimserver.interfaces.objects.SSerializerPluginConfiguration;
import org.bimserver.shared.json.JsonConverter;

/**
 * Speaks a BIMserver's protocol on the loopback address, and misbehaves as told. Every call is {@code POST /json}; its answers are
 * written by the client library's own converter, and their faults as a real 1.5.186 wrote them.
 */
final class FakeBimServer implements AutoCloseable {

  static final String USER = "roofer@example.org";
  static final String PASSWORD = "correct-horse-battery";
  static final String TOKEN = "0123456789abcdef-token";
  static final long PROJECT = 131073;
  static final long REVISION = 65539;
  static final String MODEL = """
      ISO-10303-21;
      HEADER;
      FILE_DESCRIPTION((''),'2;1');
      FILE_NAME('','',(''),(''),'','','');
      FILE_SCHEMA(('IFC4'));
      ENDSEC;
      DATA;
      ENDSEC;
      END-ISO-10303-21;
      """;
  private static final long TOPIC = 7;
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final JsonConverter CONVERTER = new JsonConverter(BimServerChannel.SERVICES);

  /** Answers a request in its own way. */
  @FunctionalInterface
  interface Handler {
    void handle(HttpExchange exchange) throws IOException;
  }

  private final HttpServer server;
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final Map<String, Handler> special = new ConcurrentHashMap<>();
  private final Map<String, JsonNode> results = new ConcurrentHashMap<>();
  /** Every address that was asked for. */
  final List<URI> targets = new CopyOnWriteArrayList<>();
  /** Every method that was called. */
  final List<String> called = new CopyOnWriteArrayList<>();

  FakeBimServer() {
    try {
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    server.setExecutor(threads);
    server.createContext("/", this::handle);
    result("getAllProjects", List.of(project("Boat house", "ifc4")));
    result("getAllRevisionsOfProject", List.of(revision(REVISION, 1, "first")));
    SSerializerPluginConfiguration serializer = new SSerializerPluginConfiguration();
    serializer.setOid(12);
    result("getSerializerByName", serializer);
    result("download", TOPIC);
    progress(SActionState.STARTED, "Done preparing");
    on("/download", exchange -> send(exchange, 200, MODEL));
    server.start();
  }

  static SProject project(String name, String schema) {
    SProject project = new SProject();
    project.setOid(PROJECT);
    project.setName(name);
    project.setSchema(schema);
    return project;
  }

  static SRevision revision(long id, int number, String comment) {
    SRevision revision = new SRevision();
    revision.setOid(id);
    revision.setId(number);
    revision.setComment(comment);
    revision.setProjectId(PROJECT);
    revision.setDate(new Date(0));
    return revision;
  }

  void progress(SActionState state, String title, String... errors) {
    SLongActionState progress = new SLongActionState();
    progress.setState(state);
    progress.setTitle(title);
    progress.setErrors(List.of(errors));
    result("getProgress", progress);
  }

  /** What a method gives. */
  void result(String method, Object result) {
    try {
      results.put(method, JSON.createObjectNode().set("result", CONVERTER.toJson(result)));
    } catch (Exception e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** A method that gives nothing. */
  void nothing(String method) {
    results.put(method, JSON.createObjectNode());
  }

  /** A method that ends in a fault. */
  void fault(String method, String type, String message) {
    ObjectNode fault = JSON.createObjectNode().put("__type", type);
    results.put(method, JSON.createObjectNode().set("exception", message == null ? fault : fault.put("message", message)));
  }

  /** Answers requests for a path, or calls of a method, in another way. */
  void on(String pathOrMethod, Handler handler) {
    special.put(pathOrMethod, handler);
  }

  private void handle(HttpExchange exchange) throws IOException {
    targets.add(exchange.getRequestURI());
    byte[] body = exchange.getRequestBody().readAllBytes();
    Handler handler = special.get(exchange.getRequestURI().getPath());
    if (handler != null) {
      handler.handle(exchange);
      return;
    }
    JsonNode asked = JSON.readTree(body);
    String method = asked.path("request").path("method").asText();
    called.add(method);
    if (special.containsKey(method)) {
      special.get(method).handle(exchange);
    } else {
      send(exchange, 200, JSON.createObjectNode().set("response", response(method, asked)).toString());
    }
  }

  private JsonNode response(String method, JsonNode asked) {
    if (results.containsKey(method)) {
      return results.get(method);
    }
    JsonNode parameters = asked.path("request").path("parameters");
    if (method.equals("login")) {
      return parameters.path("password").asText().equals(PASSWORD) && parameters.path("username").asText().equals(USER)
          ? JSON.createObjectNode().put("result", TOKEN) : fault("UserException", "Invalid username/password combination");
    }
    return asked.path("token").asText().equals(TOKEN) ? JSON.createObjectNode()
        : fault("AuthenticationException", "Odd number of characters.");
  }

  private static JsonNode fault(String type, String message) {
    return JSON.createObjectNode().set("exception", JSON.createObjectNode().put("__type", type).put("message", message));
  }

  /** A whole answer. */
  static void send(HttpExchange exchange, int status, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    exchange.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
    exchange.getResponseBody().write(bytes);
    exchange.close();
  }

  ServerAccess access(ServerLimits limits) {
    return new ServerAccess("office", URI.create("http://127.0.0.1:" + server.getAddress().getPort()), USER, PASSWORD, limits, "servers:1",
        Set.of());
  }

  ServerAccess access() {
    return access(new ServerLimits(Duration.ofSeconds(10), Duration.ofSeconds(20), Duration.ofSeconds(60), 1 << 20));
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}
