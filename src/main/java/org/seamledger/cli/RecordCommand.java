package org.seamledger.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.journal.EventChain;
import org.seamledger.journal.SiteEvent;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "record",
    description = "The record of the work on a roof: with FILE check that one is as it was handed out, that its chain of hashes is whole; "
        + "without take the record from the service.",
    footer = {"", "Exit status: 0 done, the chain is whole; 1 it isn't; 2 the file is no such record, or there is no such service or"
        + " project."})
final class RecordCommand implements Task {

  /** Forms that a record is handed out in. */
  enum Form {
    json, pdf
  }

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "A record to check, JSON.")
  private Path file;

  @Mixin
  private ServiceRequests service;

  @Option(names = "--project", paramLabel = "PROJECT", description = "Name or id of the project (default: the only one there is).")
  private String project;

  @Option(names = "--format", paramLabel = "FORM", description = "json, which can be checked, or pdf (default: json).")
  private Form form;

  @Option(names = "--output", paramLabel = "FILE", description = "Where to write it instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    if (file == null) {
      return take(session);
    }
    if (project != null || form != null || output != null) {
      throw new UsageException("--project, --format and --output take a record from the service; to check one name only its file");
    }
    JsonNode record = read();
    List<SiteEvent> events = new ArrayList<>();
    record.path("chain").forEach(e -> events.add(EventChain.handedOut(e)));
    Optional<String> fault = EventChain.fault(events).or(() -> headFault(record, events));
    String words = fault.map(f -> "broken: " + f)
        .orElse("whole: " + events.size() + " events, the last with the hash " + record.path("head").asText());
    session.print(Optional.empty(), out -> out.write((words + System.lineSeparator()).getBytes(StandardCharsets.UTF_8)));
    return fault.isPresent() ? ExitStatus.FINDINGS : ExitStatus.DONE;
  }

  private int take(Session session) {
    session.requireWritable(output);
    if (form == Form.pdf && output == null) {
      session.requireNoTerminal("PDF");
    }
    String analysis = service.newest(session, service.project(session, Optional.ofNullable(project)));
    byte[] record = service.send(session, "GET", "/api/analyses/" + analysis + "/record." + (form == Form.pdf ? "pdf" : "json"), null);
    session.print(Optional.ofNullable(output), out -> out.write(record));
    return ExitStatus.DONE;
  }

  private static Optional<String> headFault(JsonNode record, List<SiteEvent> events) {
    String last = events.isEmpty() ? EventChain.START : events.get(events.size() - 1).hash();
    return record.path("head").asText().equals(last) ? Optional.empty()
        : Optional.of("events are missing at the end: the last that is there is not the one that the record names");
  }

  private JsonNode read() {
    try {
      JsonNode record = new ObjectMapper().readTree(Files.readAllBytes(file));
      if (record.path("form").asText().equals("seamledger-record") && record.path("chain").isArray()) {
        return record;
      }
      throw new UsageException(file + " is no record of a roof: expected a JSON object whose form is seamledger-record");
    } catch (JsonProcessingException e) {
      throw new UsageException(file + " is no JSON: line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr());
    } catch (IOException e) {
      throw new UsageException(file + " can't be read");
    }
  }
}
