package org.seamledger.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.seamledger.journal.LinkScope;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "links", description = "List, make and revoke the links that let a crew onto the page on the roof, without accounts.",
    footer = {"", "A link that is made is told once; the service keeps only its hash. It leads to one roof and ends by itself.",
        "Exit status: 0 done; 2 the command line is wrong, or the service does not do it."})
final class LinksCommand implements Task {

  private static final int DAYS = 14;

  @Parameters(arity = "0..1", paramLabel = "PROJECT", description = "Name or id of the project (default: the only one there is).")
  private String project;

  @Mixin
  private ServiceRequests service;

  @Option(names = "--make", paramLabel = "SCOPE", description = "Make a link to view, to tick too, or to sign off too: view, tick or sign.")
  private String scope;

  @Option(names = "--name", paramLabel = "NAME", description = "With --make: whom it is for.")
  private String name;

  @Option(names = "--days", paramLabel = "N", description = "With --make: for how many days (default: " + DAYS + ").")
  private Integer days;

  @Option(names = "--revoke", paramLabel = "ID", description = "Revoke a link, by its id in the list.")
  private String revoked;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text", description = "text or json (default: text).")
  private ProjectList.Form form;

  @Override
  public int run(Session session) {
    if (scope == null && (name != null || days != null) || scope != null && revoked != null) {
      throw new UsageException("--name and --days go with --make, and --revoke goes alone");
    }
    if (revoked != null) {
      if (!revoked.matches("[0-9a-zA-Z-]{1,64}")) {
        throw new UsageException("--revoke takes the id of a link, as the list has it");
      }
      service.send(session, "DELETE", "/api/links/" + revoked, null);
      session.complain("the link " + revoked + " is revoked");
      return ExitStatus.DONE;
    }
    String id = service.project(session, Optional.ofNullable(project));
    JsonNode answer = scope == null ? service.json(session, "GET", "/api/projects/" + id + "/links", null) : make(session, id);
    session.print(Optional.empty(), out -> write(answer, out));
    return ExitStatus.DONE;
  }

  private JsonNode make(Session session, String id) {
    if (LinkScope.of(scope).isEmpty() || name == null) {
      throw new UsageException("--make takes view, tick or sign, and --name whom the link is for");
    }
    ObjectNode body = JsonNodeFactory.instance.objectNode().put("scope", scope).put("name", name).put("days", days == null ? DAYS : days);
    JsonNode made = service.json(session, "POST", "/api/projects/" + id + "/links", body);
    return ((ObjectNode) made).put("url", service.page() + "roof/#" + made.path("token").asText());
  }

  private void write(JsonNode answer, OutputStream out) throws IOException {
    String text = form == ProjectList.Form.json ? new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(answer)
        : scope == null ? list(answer) : answer.path("url").asText() + System.lineSeparator() + line(answer);
    out.write((text + System.lineSeparator()).getBytes(StandardCharsets.UTF_8));
  }

  private static String list(JsonNode answer) {
    StringBuilder text = new StringBuilder(line("id", "scope", "state", "ends", "name"));
    answer.path("links").forEach(l -> text.append(System.lineSeparator()).append(line(l)));
    return text.toString();
  }

  private static String line(JsonNode link) {
    String state = link.path("valid").asBoolean() ? "valid" : link.path("revoked").asText().isEmpty() ? "ended" : "revoked";
    return line(link.path("id").asText(), link.path("scope").asText(), state, link.path("expires").asText(), link.path("name").asText());
  }

  private static String line(String id, String scope, String state, String ends, String name) {
    return String.format(Locale.ROOT, "%-32s  %-5s  %-7s  %-20s  %s", id, scope, state, ends, name);
  }
}
