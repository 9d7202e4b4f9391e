package org.seamledger.http;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.StoredFile;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.watch.Download;

/** Revisions on servers as a client names them: asked for on the servers of the operator's list, and nowhere else. */
final class ServedModels {

  private final ServerConnections conversations;
  private final Download download;

  ServedModels(ServerConnections conversations, Download download) {
    this.conversations = conversations;
    this.download = download;
  }

  /** What the server says of a revision. */
  Origin origin(String server, long project, long revision) {
    return conversations.ask(server, s -> origin(server, project(s, project), revision(s, project, revision)));
  }

  private static Origin origin(String server, ServedProject p, ServedRevision r) {
    return new Origin(server, p.id(), p.name(), r.id(), r.number(), r.comment(), r.created().toString());
  }

  static ServedProject project(ModelServer s, long project) {
    return s.projects().stream().filter(p -> p.id() == project).findFirst()
        .orElseThrow(
            () -> new ModelServerException(ModelServerException.Reason.NOT_FOUND, "The server shows no project with that number."));
  }

  private static ServedRevision revision(ModelServer s, long project, long revision) {
    return s.revisions(project).stream().filter(r -> r.id() == revision).findFirst()
        .orElseThrow(
            () -> new ModelServerException(ModelServerException.Reason.NOT_FOUND, "The project has no revision with that number."));
  }

  /**
   * The files that will hold the models of an analysis, each fetched when its turn comes.
   *
   * @param named each a JSON object with {@code server}, {@code project} and {@code revision}, the server's own numbers
   * @param place of the first among the files of the analysis
   */
  List<StoredFile> files(String analysis, int place, List<String> named) {
    List<StoredFile> files = new ArrayList<>();
    Set<String> projects = new HashSet<>();
    for (String text : named) {
      JsonNode n = parsed(text);
      Origin origin = origin(n.path("server").textValue(), n.path("project").longValue(), n.path("revision").longValue());
      if (!projects.add(origin.server() + "\n" + origin.project())) {
        throw HttpProblem.badRequest("upload/served-twice", "Project " + Names.clean(origin.projectName()) + " of " + origin.server()
            + " is named twice; one building has one revision of it.");
      }
      files.add(download.file(analysis, place + files.size(), origin).from(origin));
    }
    return files;
  }

  private static JsonNode parsed(String text) {
    try {
      JsonNode n = JsonBodies.MAPPER.readTree(text);
      if (n.path("server").isTextual() && n.path("project").isIntegralNumber() && n.path("revision").isIntegralNumber()) {
        return n;
      }
    } catch (JsonProcessingException e) {
      // Answered below like everything else that is no such object.
    }
    throw HttpProblem.badRequest("upload/served", "A part named served must be a JSON object with server, project and revision, such as "
        + "{\"server\": \"office\", \"project\": 131073, \"revision\": 393219}; the last two are the server's own numbers.");
  }

  /** A revision on a server, in an answer. */
  static Map<String, Object> body(Origin o) {
    Map<String, Object> b =
        JsonBodies.object("server", o.server(), "project", o.project(), "projectName", o.projectName(), "revision", o.revision(),
            "number", o.number(), "comment", o.comment());
    if (!o.checkedIn().isEmpty()) {
      b.put("checkedIn", o.checkedIn());
    }
    return b;
  }
}
