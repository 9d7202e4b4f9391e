package org.seamledger.export.bcf;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.seamledger.bcf.BcfDate;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.wording.ElementNames;
import org.seamledger.export.wording.FindingAdvice;
import org.seamledger.export.wording.OneLine;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.Finding;
import org.seamledger.finding.Remark;
import org.seamledger.finding.Severity;
import org.seamledger.finding.TopicId;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.takeoff.Takeoff;

/**
 * What a topic says of a finding.
 *
 * @param guid of the topic
 * @param title one line
 * @param description lines
 * @param labels the finding's code, and the kind of its line
 * @param components valid GlobalIds of the elements concerned, in their order, each once
 */
record TopicContent(UUID guid, String title, String type, String status, String priority, List<String> labels, List<String> description,
    List<Note> notes, List<String> components) {

  static final String OPEN = "Open";
  static final String CLOSED = "Closed";
  static final String REOPENED = "Reopened";
  /** Of the elements of a finding so many are described in words; all are selected. */
  private static final int MOST_DESCRIBED = 12;
  private static final int LONGEST_TITLE = 160;
  private static final int DECIMALS = 3;

  /** A comment of the topic. */
  record Note(UUID guid, Instant date, String author, String text) {
  }

  static TopicContent of(Finding f, UUID guid, Takeoff takeoff, Map<String, DetailedJunction> junctions, Instant made) {
    DetailedJunction at = junctions.get(f.junction());
    List<String> labels = new ArrayList<>(List.of(f.code()));
    if (at != null) {
      labels.add(at.junction().kind());
    }
    List<String> elements = !f.elements().isEmpty() || at == null ? f.elements() : at.junction().junction().elements();
    return new TopicContent(guid, title(f), type(f.severity()), f.acceptance().isPresent() ? CLOSED : OPEN, priority(f.severity()),
        List.copyOf(labels), description(f, takeoff, at, elements), notes(f, guid, made),
        elements.stream().filter(TopicContent::isGlobalId).distinct().toList());
  }

  private static String title(Finding f) {
    String message = OneLine.of(f.message());
    int end = message.offsetByCodePoints(0, Math.min(LONGEST_TITLE, message.codePointCount(0, message.length())));
    String cut = end < message.length() ? message.substring(0, end).strip() + "…" : message;
    return cut.isEmpty() ? f.code() : cut.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + cut.substring(1);
  }

  private static String type(Severity severity) {
    return severity == Severity.VIOLATION ? "Violation" : severity == Severity.WARNING ? "Warning" : "Note";
  }

  private static String priority(Severity severity) {
    return severity == Severity.VIOLATION ? "High" : severity == Severity.WARNING ? "Normal" : "Low";
  }

  private static List<String> description(Finding f, Takeoff takeoff, DetailedJunction at, List<String> elements) {
    List<String> lines = new ArrayList<>();
    lines.add(f.message());
    add(lines, "Why: ", FindingAdvice.reason(takeoff, f.code()));
    add(lines, "What to do: ", FindingAdvice.action(takeoff, f.code()));
    if (at != null) {
      lines
          .add("Junction: " + at.junction().kind() + ", " + MeasureFormat.plain(at.junction().junction().lengthM(), DECIMALS) + " m, faces "
              + String.join(", ", at.junction().junction().faces()) + " (" + f.junction() + ")");
    }
    for (ElementNames.Detail e : ElementNames.details(takeoff, elements.subList(0, Math.min(MOST_DESCRIBED, elements.size())))) {
      List<String> words = List.of(e.label().ifcClass(), e.label().name(), e.label().storey(), e.file());
      lines.add("Element: " + String.join(", ", words.stream().map(OneLine::of).filter(w -> !w.isEmpty()).toList()) + " ("
          + e.label().globalId() + ")");
    }
    if (elements.size() > MOST_DESCRIBED) {
      lines.add("and " + (elements.size() - MOST_DESCRIBED) + " elements more");
    }
    lines.add("Finding: " + f.code());
    return lines;
  }

  private static void add(List<String> lines, String what, String words) {
    if (!words.isBlank()) {
      lines.add(what + words);
    }
  }

  private static List<Note> notes(Finding f, UUID guid, Instant made) {
    List<Note> notes = new ArrayList<>();
    for (Remark r : f.remarks()) {
      notes.add(note(guid, r.when(), r.by(), r.text(), made));
    }
    if (f.acceptance().isPresent()) {
      Acceptance a = f.acceptance().get();
      notes.add(note(guid, a.when(), a.by(), a.reason(), made));
    }
    return List.copyOf(notes);
  }

  private static Note note(UUID topic, String when, String by, String text, Instant made) {
    Instant date = BcfDate.instant(when).orElse(made);
    String author = OneLine.of(by).isEmpty() ? "unknown" : by;
    return new Note(TopicId.named(topic + "\n" + date + "\n" + author + "\n" + text), date, author, text);
  }

  private static boolean isGlobalId(String id) {
    return id.matches("[0-9A-Za-z_$]{22}");
  }
}
