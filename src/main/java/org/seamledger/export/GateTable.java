package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.export.report.Table;
import org.seamledger.export.report.TextPage;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Severity;

/** Many models at a gate, one row each: for people with what stands open below, for spreadsheets, for programs. */
public final class GateTable {

  private static final String INDENT = "  ";
  private static final int MOST_NAME = 44;

  private GateTable() {
  }

  /** @param limit as for {@link GateModel#status} */
  public static void text(List<GateModel> models, Optional<Severity> limit, OutputStream out) throws IOException {
    TextPage page = new TextPage();
    Table table = new Table("", "llrrrr").row("model", "gate", "violations", "warnings", "notes", "accepted");
    for (GateModel m : models) {
      table.row(shortened(m.name()), word(m, limit), number(m, Severity.VIOLATION), number(m, Severity.WARNING), number(m, Severity.INFO),
          m.problem().isPresent() ? "" : Long.toString(m.accepted()));
    }
    table.on(page);
    models.forEach(m -> open(m, page));
    page.blank().line(sum(models, limit));
    out.write(page.text().getBytes(StandardCharsets.UTF_8));
    out.flush();
  }

  /** The end of a name tells more than its beginning. */
  private static String shortened(String name) {
    String line = OneLine.of(name);
    int n = line.codePointCount(0, line.length());
    return n <= MOST_NAME ? line : "…" + line.substring(line.offsetByCodePoints(0, n - MOST_NAME + 1));
  }

  private static String word(GateModel m, Optional<Severity> limit) {
    return m.status(limit).name().toLowerCase(Locale.ROOT);
  }

  private static String number(GateModel m, Severity severity) {
    return m.problem().isPresent() ? "" : Long.toString(m.open(severity));
  }

  private static void open(GateModel m, TextPage page) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    m.issues().stream().filter(i -> i.counts(Severity.WARNING)).forEach(i -> counts.merge(i.severity().word() + "  " + i.rule().id()
        + (i.rule().name().equals(i.rule().id()) ? "" : "  " + i.rule().name()), 1, Integer::sum));
    if (m.problem().isEmpty() && counts.isEmpty()) {
      return;
    }
    page.blank().line(OneLine.of(m.name()));
    m.problem().ifPresent(p -> page.paragraph(INDENT, INDENT, OneLine.of(p)));
    counts.forEach((what, n) -> page.paragraph(INDENT, INDENT + INDENT, what + (n > 1 ? "  (" + n + " times)" : "")));
  }

  private static String sum(List<GateModel> models, Optional<Severity> limit) {
    return CountText.of(models.size(), "model") + ": " + count(models, limit, GateModel.Status.PASS) + " pass, "
        + count(models, limit, GateModel.Status.FAIL) + " fail, " + count(models, limit, GateModel.Status.UNREADABLE) + " can't be read";
  }

  private static long count(List<GateModel> models, Optional<Severity> limit, GateModel.Status status) {
    return models.stream().filter(m -> m.status(limit) == status).count();
  }

  /** One row a model. */
  public static void csv(List<GateModel> models, Optional<Severity> limit, OutputStream out) throws IOException {
    Rows rows = new Rows(out);
    rows.row(List.of("model", "status", "violations", "warnings", "notes", "accepted", "problem"));
    for (GateModel m : models) {
      rows.row(List.of(m.name(), word(m, limit), number(m, Severity.VIOLATION), number(m, Severity.WARNING), number(m, Severity.INFO),
          m.problem().isPresent() ? "" : Long.toString(m.accepted()), OneLine.of(m.problem().orElse(""))));
    }
    rows.flush();
  }

  public static void json(List<GateModel> models, Optional<Severity> limit, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> {
        json.objects("models", models, m -> model(m, limit, json));
        json.object("summary", () -> {
          json.count("models", models.size());
          for (GateModel.Status s : GateModel.Status.values()) {
            json.count(s.name().toLowerCase(Locale.ROOT), count(models, limit, s));
          }
        });
      });
    }
  }

  private static void model(GateModel m, Optional<Severity> limit, JsonOutput json) throws IOException {
    json.word("file", m.name());
    json.word("status", word(m, limit));
    json.wordOrNull("problem", m.problem().orElse(""));
    for (Severity s : Severity.values()) {
      json.count(s.word(), m.open(s));
    }
    json.count("accepted", m.accepted());
    json.objects("issues", m.issues(), i -> {
      json.word("rule", i.rule().id());
      json.word("severity", i.severity().word());
      json.word("message", i.message());
      json.wordOrNull("junction", i.junction());
      json.words("elements", i.elements().stream().map(GateModel.Concerned::globalId).toList());
      json.flag("accepted", i.accepted().isPresent());
    });
  }
}
