package org.seamledger.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamledger.detail.Decision;
import org.seamledger.export.json.JsonOutput;
import org.seamledger.ledger.Comparison;

/** What differs from one result to another as a JSON document. Lengths are metres; numbers are rounded to six places. */
public final class ChangesJson {

  private final JsonOutput json;

  private ChangesJson(JsonOutput json) {
    this.json = json;
  }

  /**
   * Writes the document and a line end, and flushes; leaves {@code out} open.
   *
   * @param from names the older result
   * @param to names the newer one
   * @param decisionsGone what people chose for junctions that the newer result no longer has
   */
  public static void write(String from, String to, Comparison c, List<Decision> decisionsGone, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> new ChangesJson(json).fields(from, to, c, decisionsGone));
    }
  }

  /** One of two results: its id, and what people call it. */
  public record Compared(String id, String words) {
  }

  /**
   * As {@link #write(String, String, Comparison, List, OutputStream)}, with {@code fromWords} and {@code toWords} before it: what people
   * call the two.
   */
  public static void write(Compared from, Compared to, Comparison c, List<Decision> decisionsGone, OutputStream out) throws IOException {
    try (JsonOutput json = new JsonOutput(out)) {
      json.document(() -> {
        json.word("fromWords", from.words);
        json.word("toWords", to.words);
        new ChangesJson(json).fields(from.id, to.id, c, decisionsGone);
      });
    }
  }

  private void fields(String from, String to, Comparison c, List<Decision> decisionsGone) throws IOException {
    json.word("from", from);
    json.word("to", to);
    json.count("same", c.pairs().stream().filter(p -> p.changes().isEmpty()).count());
    json.objects("changed", c.pairs().stream().filter(p -> !p.changes().isEmpty()).toList(), this::pair);
    json.objects("added", c.added(), this::line);
    json.objects("removed", c.removed(), this::line);
    json.objects("lengths", c.lengthByKind().entrySet(), this::length);
    json.objects("decisionsGone", decisionsGone, this::decision);
    json.objects("newFindings", c.newFindings(), this::finding);
    json.objects("goneFindings", c.goneFindings(), this::finding);
    json.objects("stillFindings", c.keptFindings().stream().map(Comparison.Kept::after).toList(), this::finding);
    json.objects("overridesUnfit", c.unfitOverrides(), this::override);
    json.objects("entries", c.entries(), this::entry);
    json.words("settings", c.settings());
    json.objects("quantities", c.quantities(), this::amount);
  }

  private void pair(Comparison.Pair p) throws IOException {
    json.object("before", () -> line(p.before()));
    json.object("after", () -> line(p.after()));
    json.word("by", p.by().name().toLowerCase(Locale.ROOT));
    json.words("changes", p.changes());
    json.objects("figures", p.figures(), this::amount);
  }

  private void override(Comparison.Unfit o) throws IOException {
    json.word("junction", o.junction());
    json.word("kind", o.kind());
    json.word("detail", o.detail());
    json.word("reason", o.reason());
    json.words("changes", o.changes());
  }

  private void entry(Comparison.Entry e) throws IOException {
    json.word("list", e.list());
    json.word("id", e.id());
    json.word("change", e.change());
    json.words("fields", e.fields());
  }

  private void line(Comparison.Line l) throws IOException {
    json.word("id", l.id());
    json.word("kind", l.kind());
    json.word("detail", l.detail());
    json.number("lengthM", l.lengthM());
    json.tree("path", l.path());
  }

  private void length(Map.Entry<String, double[]> kind) throws IOException {
    json.word("kind", kind.getKey());
    json.number("beforeM", kind.getValue()[0]);
    json.number("afterM", kind.getValue()[1]);
  }

  private void decision(Decision d) throws IOException {
    json.word("junction", d.junction());
    json.word("kind", d.kind());
    json.word("detail", d.detail());
    json.word("reason", d.reason());
  }

  private void finding(Comparison.Found f) throws IOException {
    json.word("code", f.code());
    json.word("severity", f.severity());
    json.word("message", f.message());
    json.wordOrNull("junction", f.junction());
    json.words("elements", f.elements());
    json.flag("accepted", f.accepted());
  }

  private void amount(Comparison.Amount a) throws IOException {
    json.word("name", a.name());
    number("before", a.before());
    number("after", a.after());
  }

  private void number(String field, double value) throws IOException {
    if (Double.isNaN(value)) {
      json.wordOrNull(field, "");
    } else {
      json.number(field, value);
    }
  }
}
