package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Severity;
import org.seamledger.finding.Sha256;
import org.seamledger.takeoff.Program;

/**
 * Models at a gate as a log of static analysis results: SARIF 2.1.0 (OASIS Standard, 2020, with Errata 01). A result a finding; its place
 * is the model's file and, as logical locations, the elements by GlobalId. What somebody accepted is suppressed (section 3.27.23), a model
 * that can't be read is a notification of a run that did not succeed (3.20.14, 3.20.21).
 */
public final class SarifLog {

  private static final String SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
  /** Of a hash, enough that no two findings of a model share it. */
  private static final int FINGERPRINT = 32;

  private final JsonOutput json;
  private final List<GateModel> models;
  private final Map<String, GateModel.Rule> rules = new LinkedHashMap<>();
  private final List<String> ruleIds;

  private SarifLog(JsonOutput json, List<GateModel> models) {
    this.json = json;
    this.models = models;
    models.forEach(m -> m.rules().forEach(r -> rules.putIfAbsent(r.id(), r)));
    models.forEach(m -> m.issues().forEach(i -> rules.putIfAbsent(i.rule().id(), i.rule())));
    ruleIds = List.copyOf(rules.keySet());
  }

  public static void write(List<GateModel> models, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      SarifLog log = new SarifLog(json, models);
      json.document(() -> {
        json.word("$schema", SCHEMA);
        json.word("version", "2.1.0");
        json.objects("runs", List.of(log), SarifLog::run);
      });
    }
  }

  private void run() throws IOException {
    json.object("tool", () -> json.object("driver", () -> {
      json.word("name", Program.NAME);
      json.word("version", Program.version());
      json.objects("rules", rules.values(), this::rule);
    }));
    json.objects("invocations", List.of(models), all -> {
      json.flag("executionSuccessful", all.stream().allMatch(m -> m.problem().isEmpty()));
      json.objects("toolExecutionNotifications", all.stream().filter(m -> m.problem().isPresent()).toList(), this::notification);
    });
    List<Placed> results = new ArrayList<>();
    models.forEach(m -> m.issues().forEach(i -> results.add(new Placed(m, i))));
    json.objects("results", results, this::result);
  }

  /** An issue and the model that it is in. */
  private record Placed(GateModel model, GateModel.Issue issue) {
  }

  private void rule(GateModel.Rule rule) throws IOException {
    json.word("id", rule.id());
    json.object("shortDescription", () -> json.word("text", rule.name()));
    if (!rule.reason().isEmpty()) {
      json.object("fullDescription", () -> json.word("text", rule.reason()));
    }
    if (!rule.action().isEmpty()) {
      json.object("help", () -> json.word("text", rule.action()));
    }
  }

  private void notification(GateModel m) throws IOException {
    json.word("level", "error");
    json.object("message", () -> json.word("text", OneLine.of(m.problem().orElseThrow())));
    json.objects("locations", m.files(), file -> json.object("physicalLocation", () -> artifact(file)));
  }

  private void result(Placed placed) throws IOException {
    GateModel.Issue issue = placed.issue();
    json.word("ruleId", issue.rule().id());
    json.count("ruleIndex", ruleIds.indexOf(issue.rule().id()));
    json.word("level", level(issue.severity()));
    json.object("message", () -> json.word("text", issue.message()));
    // An issue without an element is one of the first model: SARIF's viewers show nothing that has no place.
    List<String> files = issue.elements().isEmpty() ? placed.model().files().subList(0, 1)
        : issue.elements().stream().map(GateModel.Concerned::file).distinct().toList();
    json.objects("locations", files.subList(0, 1), file -> location(file, issue));
    if (files.size() > 1) {
      json.objects("relatedLocations", files.subList(1, files.size()), file -> location(file, issue));
    }
    json.object("partialFingerprints", () -> json.word("findingHash/v1", fingerprint(issue)));
    if (issue.accepted().isPresent()) {
      json.objects("suppressions", List.of(issue.accepted().get()), this::suppression);
    }
    if (!issue.junction().isEmpty()) {
      json.object("properties", () -> json.word("junction", issue.junction()));
    }
  }

  private void location(String file, GateModel.Issue issue) throws IOException {
    json.object("physicalLocation", () -> artifact(file));
    List<GateModel.Concerned> here = issue.elements().stream().filter(e -> e.file().equals(file)).toList();
    if (!here.isEmpty()) {
      json.objects("logicalLocations", here, e -> {
        json.word("name", e.name().isBlank() ? e.globalId() : OneLine.of(e.name()));
        json.word("fullyQualifiedName", OneLine.of(e.globalId()));
        json.word("kind", "element");
        json.object("properties", () -> {
          json.word("class", e.ifcClass());
          json.word("storey", OneLine.of(e.storey()));
        });
      });
    }
  }

  private void artifact(String file) throws IOException {
    json.object("artifactLocation", () -> json.word("uri", uri(file)));
  }

  private void suppression(Acceptance a) throws IOException {
    json.word("kind", "external");
    json.word("status", "accepted");
    json.word("justification", OneLine.of(a.by()) + (a.when().isEmpty() ? "" : ", " + a.when()) + ": " + OneLine.of(a.reason()));
  }

  /** Section 3.27.10: error, warning, note. */
  private static String level(Severity severity) {
    return switch (severity) {
      case VIOLATION -> "error";
      case WARNING -> "warning";
      case INFO -> "note";
    };
  }

  /** The same in the next export, although the figures in the message differ (section 3.27.17). */
  private static String fingerprint(GateModel.Issue issue) {
    String key = issue.rule().id() + "\n" + issue.junction() + "\n"
        + issue.elements().stream().map(GateModel.Concerned::globalId).collect(Collectors.joining(" "));
    return Sha256.hex(key.getBytes(StandardCharsets.UTF_8)).substring(0, FINGERPRINT);
  }

  /** A path as a relative reference, or as a file URI where it is absolute (RFC 3986, RFC 8089). */
  static String uri(String file) {
    String path = file.replace('\\', '/');
    StringBuilder uri = new StringBuilder();
    for (byte b : path.getBytes(StandardCharsets.UTF_8)) {
      char c = (char) (b & 0xFF);
      boolean plain = c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || "-._~/".indexOf(c) >= 0;
      uri.append(plain ? String.valueOf(c) : String.format("%%%02X", b & 0xFF));
    }
    boolean isDrive = path.matches("[A-Za-z]:/.*");
    return path.startsWith("/") ? "file://" + uri : isDrive ? "file:///" + path.charAt(0) + ":" + uri.substring(4) : uri.toString();
  }
}
