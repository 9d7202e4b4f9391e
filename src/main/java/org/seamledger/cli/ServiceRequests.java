package org.seamledger.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.http.setting.Options;
import picocli.CommandLine.Option;

/** The service that serves the page, as the operator's commands ask it: it alone uses its storage while it runs. */
final class ServiceRequests {

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Duration CONNECT = Duration.ofSeconds(10);
  private static final Duration ANSWER = Duration.ofMinutes(5);

  @Option(names = "--service", paramLabel = "URL", description = "The service that has the record; its token is SEAMLEDGER_TOKEN "
      + "(default: http://" + Options.LOOPBACK + ":" + Options.PORT + ").")
  private URI url = URI.create("http://" + Options.LOOPBACK + ":" + Options.PORT);

  /** Where the page is, with a slash at its end. */
  String page() {
    String text = url.toString();
    return text.endsWith("/") ? text : text + "/";
  }

  /**
   * Sends a request.
   *
   * @param body to be sent as JSON, or null
   * @throws UsageException with what the service says, where it does not do it
   */
  byte[] send(Session session, String method, String path, JsonNode body) {
    requireSafe();
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(page()).resolve(path)).timeout(ANSWER)
        .header("Content-Type", "application/json").method(method, body == null ? HttpRequest.BodyPublishers.noBody()
            : HttpRequest.BodyPublishers.ofString(body.toString()));
    session.environment().token().ifPresent(t -> request.header("Authorization", "Bearer " + t));
    HttpClient client = HttpClient.newBuilder().connectTimeout(CONNECT).build();
    try {
      HttpResponse<byte[]> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
      if (answer.statusCode() >= 300) {
        throw new UsageException("the service at " + url + " answered " + answer.statusCode() + ": " + detail(answer.body()));
      }
      return answer.body();
    } catch (IOException e) {
      throw new UsageException("no service answers at " + url + "; start it with: seamledger serve");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new UsageException("interrupted");
    }
  }

  JsonNode json(Session session, String method, String path, JsonNode body) {
    try {
      return MAPPER.readTree(send(session, method, path, body));
    } catch (IOException e) {
      throw new UsageException("what answers at " + url + " is no seamledger service");
    }
  }

  /** The token would go readable over the network. */
  private void requireSafe() {
    boolean isHttp = "http".equals(url.getScheme());
    if (!isHttp && !"https".equals(url.getScheme()) || url.getHost() == null) {
      throw new UsageException("--service takes an address such as https://roofs.example.org, not " + url);
    }
    try {
      if (isHttp && !InetAddress.getByName(url.getHost()).isLoopbackAddress()) {
        throw new UsageException("--service " + url + ": plain http is for this machine only; use https");
      }
    } catch (UnknownHostException e) {
      throw new UsageException("--service " + url + ": there is no such host");
    }
  }

  private static String detail(byte[] body) {
    try {
      return MAPPER.readTree(body).path("detail").asText("it says no more");
    } catch (IOException e) {
      return "it is no seamledger service";
    }
  }

  /**
   * The id of a project.
   *
   * @param word its id or name; empty where the service has only one
   * @throws UsageException where that is no single one
   */
  String project(Session session, Optional<String> word) {
    List<JsonNode> all = new ArrayList<>();
    json(session, "GET", "/api/projects", null).path("projects").forEach(all::add);
    List<JsonNode> found = all.stream()
        .filter(p -> word.isEmpty() || word.get().equals(p.path("id").asText()) || word.get().equals(p.path("name").asText())).toList();
    if (found.size() == 1) {
      return found.get(0).path("id").asText();
    }
    String names = String.join(", ", all.stream().map(p -> p.path("name").asText() + " (" + p.path("id").asText() + ")").toList());
    throw new UsageException((found.isEmpty() ? "the service has no project " + word.orElse("at all") : "name one project, by its id")
        + (names.isEmpty() ? "" : "; it has " + names));
  }

  /** The newest revision of a project that has a result. */
  String newest(Session session, String project) {
    String newest = "";
    for (JsonNode a : json(session, "GET", "/api/projects/" + project, null).path("analyses")) {
      newest = a.path("state").asText().equals("done") ? a.path("id").asText() : newest;
    }
    if (newest.isEmpty()) {
      throw new UsageException("this project has no result yet");
    }
    return newest;
  }
}
