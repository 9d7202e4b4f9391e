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
import picocli.CommandLine.Parameters;

@Command(name = "record",
    description = "Check that a record of the work on a roof is as it was handed out: that its chain of hashes is whole.",
    footer = {"", "The record comes from the page on the roof, or GET /api/analyses/ID/record.json.",
        "Exit status: 0 the chain is whole; 1 it isn't; 2 the file is no such record."})
final class RecordCommand implements Task {

  @Parameters(paramLabel = "FILE", description = "The record, JSON.")
  private Path file;

  @Override
  public int run(Session session) {
    JsonNode record = read();
    List<SiteEvent> events = new ArrayList<>();
    record.path("chain").forEach(e -> events.add(EventChain.handedOut(e)));
    Optional<String> fault = EventChain.fault(events).or(() -> headFault(record, events));
    String words = fault.map(f -> "broken: " + f)
        .orElse("whole: " + events.size() + " events, the last with the hash " + record.path("head").asText());
    session.print(Optional.empty(), out -> out.write((words + System.lineSeparator()).getBytes(StandardCharsets.UTF_8)));
    return fault.isPresent() ? ExitStatus.FINDINGS : ExitStatus.DONE;
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
