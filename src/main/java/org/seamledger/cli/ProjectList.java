package org.seamledger.cli;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;

/** Writes what servers offer. */
final class ProjectList {

  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** A project with its revisions, the oldest first. */
  record Project(ServedProject project, List<ServedRevision> revisions) {
  }

  /** A server by the operator's name, and who asked it. */
  record Server(String name, String address, String user, List<Project> projects) {
  }

  @FunctionalInterface
  private interface Writer {
    void write(List<Server> servers, OutputStream out) throws IOException;
  }

  /** Forms of the list; names as the command line has them. */
  enum Form {
    text(ProjectList::text), json(ProjectList::json);

    private final Writer writer;

    Form(Writer writer) {
      this.writer = writer;
    }

    void write(List<Server> servers, OutputStream out) throws IOException {
      writer.write(servers, out);
    }
  }

  private ProjectList() {
  }

  private static void text(List<Server> servers, OutputStream out) throws IOException {
    StringBuilder text = new StringBuilder();
    for (Server server : servers) {
      text.append(server.name).append(", ").append(server.address)
          .append(server.projects.isEmpty() ? ": no projects that " + server.user + " may see" : "").append('\n');
      for (Project project : server.projects) {
        text.append("  ").append(project.project.name()).append(", ").append(project.project.schema()).append(", number ")
            .append(project.project.id()).append(project.revisions.isEmpty() ? ": no revisions" : "").append('\n');
        for (ServedRevision revision : project.revisions) {
          text.append(String.format(Locale.ROOT, "  %5d  %s  %s", revision.number(), MINUTE.format(revision.created()), revision.comment())
              .stripTrailing())
              .append('\n');
        }
      }
    }
    out.write(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void json(List<Server> servers, OutputStream out) throws IOException {
    JsonGenerator json = new JsonFactory().createGenerator(out, JsonEncoding.UTF8);
    json.disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    json.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n")));
    json.writeStartObject();
    json.writeArrayFieldStart("servers");
    for (Server server : servers) {
      json.writeStartObject();
      json.writeStringField("name", server.name);
      json.writeStringField("address", server.address);
      json.writeArrayFieldStart("projects");
      for (Project project : server.projects) {
        write(json, project);
      }
      json.writeEndArray();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
    json.writeRaw('\n');
    json.flush();
  }

  private static void write(JsonGenerator json, Project project) throws IOException {
    json.writeStartObject();
    json.writeNumberField("id", project.project.id());
    json.writeStringField("name", project.project.name());
    json.writeStringField("schema", project.project.schema());
    json.writeArrayFieldStart("revisions");
    for (ServedRevision revision : project.revisions) {
      json.writeStartObject();
      json.writeNumberField("number", revision.number());
      json.writeNumberField("id", revision.id());
      json.writeStringField("comment", revision.comment());
      json.writeStringField("created", revision.created().toString());
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }
}
