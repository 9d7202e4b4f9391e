package org.seamledger.shacl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.seamledger.rdf.Vocabulary;

/** The numbers that shapes hold facts against, each where it is written, and the files with some of them changed. */
public final class RuleLimits {

  /**
   * A limit.
   *
   * @param id file, line and column
   * @param line from 1
   * @param fact name of the fact that is held against it
   * @param comparison {@code at least}, {@code at most}, {@code above} or {@code below}
   * @param value as written
   * @param shape what the shape that it stands in is called
   * @param note comment above that shape; empty where there is none
   */
  public record Limit(String id, String file, long line, String fact, String comparison, String value, String shape, String note) {
  }

  private static final Map<String, String> COMPARISONS = Map.of("minInclusive", "at least", "maxInclusive", "at most", "minExclusive",
      "above", "maxExclusive", "below");
  private static final Pattern NUMBER = Pattern.compile("[-+]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][-+]?[0-9]+)?");
  private static final int LONGEST_NUMBER = 20;

  private final Graph graph;
  private final RuleFiles files;
  private final Map<Triple, Limit> limits = new LinkedHashMap<>();

  private RuleLimits(Graph graph, RuleFiles files) {
    this.graph = graph;
    this.files = files;
  }

  static RuleLimits of(Graph graph, Places places, RuleFiles files) {
    RuleLimits all = new RuleLimits(graph, files);
    Map<String, List<String>> lines = new HashMap<>();
    files.texts().forEach((name, text) -> lines.put(name, List.of(text.split("\n", -1))));
    graph.find().toList().stream().filter(t -> COMPARISONS.containsKey(RuleCheck.local(t.getPredicate())) && t.getObject().isLiteral())
        .sorted(Comparator.comparing((Triple t) -> places.of(t).file()).thenComparing(t -> places.of(t).line())
            .thenComparing(t -> places.of(t).column()))
        .forEach(t -> all.take(t, places.of(t), lines));
    return all;
  }

  /** Every limit, in the order of files and lines. */
  public List<Limit> all() {
    return List.copyOf(limits.values());
  }

  /** Ids of the limits that the shape of a thing holds facts against, itself or through the shapes that it refers to. */
  public Set<String> of(Described thing) {
    Set<String> ids = new TreeSet<>();
    Set<Node> done = new HashSet<>();
    List<Node> open = new ArrayList<>(List.of(thing.node()));
    while (!open.isEmpty()) {
      Node at = open.remove(open.size() - 1);
      if (!done.add(at)) {
        continue;
      }
      for (Triple t : graph.find(at, Node.ANY, Node.ANY).toList()) {
        if (limits.containsKey(t)) {
          ids.add(limits.get(t).id());
        } else if (leadsToShapes(t)) {
          open.add(t.getObject());
        }
      }
    }
    return ids;
  }

  /**
   * The files with other numbers.
   *
   * @param numbers by the ids of the limits, as they shall be written
   * @throws BrokenRulesException where there is no such limit, or a number is none
   */
  public RuleFiles with(Map<String, String> numbers) {
    Map<String, String> texts = new HashMap<>();
    // From the end of a file on, so that what stands before keeps its place.
    List<Limit> changed = all().stream().filter(l -> numbers.containsKey(l.id())).toList();
    for (String id : numbers.keySet()) {
      if (changed.stream().noneMatch(l -> l.id().equals(id))) {
        throw new BrokenRulesException("rules", 0, 0, "there is no limit at " + id.replaceAll("[^ -~]", "?"));
      }
    }
    for (int i = changed.size() - 1; i >= 0; i--) {
      Limit l = changed.get(i);
      String number = numbers.get(l.id()).strip();
      if (number.length() > LONGEST_NUMBER || !NUMBER.matcher(number).matches()) {
        throw new BrokenRulesException(l.file(), l.line(), 0,
            "a limit needs a number such as 0.5, found \"" + number.replaceAll("[^ -~]", "?") + "\"");
      }
      String text = texts.computeIfAbsent(l.file(), f -> files.texts().get(f));
      int at = offset(text, l.line(), Integer.parseInt(l.id().substring(l.id().lastIndexOf(':') + 1)));
      texts.put(l.file(), text.substring(0, at) + number + text.substring(at + l.value().length()));
    }
    return files.with(texts);
  }

  private void take(Triple t, Places.Place place, Map<String, List<String>> lines) {
    String file = place.file().substring(Math.max(place.file().lastIndexOf('/'), place.file().lastIndexOf('\\')) + 1);
    List<String> text = lines.getOrDefault(file, List.of());
    if (place.line() < 1 || place.line() > text.size()) {
      return;
    }
    Matcher number = NUMBER.matcher(text.get((int) place.line() - 1));
    int column = (int) Math.max(0, place.column() - 1);
    String value = t.getObject().getLiteralLexicalForm();
    // The reader names the place where the number begins or, where it had read on, one behind it.
    int found = -1;
    while (number.find()) {
      if (number.group().equals(value) && (found < 0 || Math.abs(number.start() - column) < Math.abs(found - column))) {
        found = number.start();
      }
    }
    List<Triple> paths = graph.find(t.getSubject(), RuleCheck.PATH, Node.ANY).toList();
    if (found < 0 || paths.size() != 1) {
      return;
    }
    Node named = named(t.getSubject());
    limits.put(t, new Limit(file + ":" + place.line() + ":" + (found + 1), file, place.line(), RuleCheck.local(paths.get(0).getObject()),
        COMPARISONS.get(RuleCheck.local(t.getPredicate())), value, label(named), note(text, place.line(), named)));
  }

  /** The shape with a name that one without is part of. */
  private Node named(Node at) {
    Node node = at;
    for (int i = 0; node.isBlank() && i < 1000; i++) {
      List<Triple> above = graph.find(Node.ANY, Node.ANY, node).toList();
      if (above.isEmpty()) {
        break;
      }
      node = above.get(0).getSubject();
    }
    return node;
  }

  private String label(Node shape) {
    List<Triple> labels = graph.find(shape, Vocabulary.LABEL, Node.ANY).toList();
    return labels.isEmpty() || !labels.get(0).getObject().isLiteral() ? RuleCheck.local(shape).replace('-', ' ')
        : labels.get(0).getObject().getLiteralLexicalForm();
  }

  /** The comment right above the line where the shape begins. */
  private static String note(List<String> text, long line, Node shape) {
    int at = (int) line - 1;
    while (at > 0 && !text.get(at).contains(RuleCheck.local(shape) + " a ")) {
      at--;
    }
    List<String> note = new ArrayList<>();
    for (int i = at - 1; i >= 0 && text.get(i).startsWith("# ") && !text.get(i).startsWith("# -"); i--) {
      note.add(0, text.get(i).substring(2).strip());
    }
    return String.join(" ", note);
  }

  private static boolean leadsToShapes(Triple t) {
    String p = RuleCheck.local(t.getPredicate());
    return !t.getObject().isLiteral()
        && (Set.of("node", "not", "property", "and", "or", "xone", "qualifiedValueShape", "first", "rest").contains(p));
  }

  private static int offset(String text, long line, int column) {
    int at = 0;
    for (long i = 1; i < line; i++) {
      at = text.indexOf('\n', at) + 1;
    }
    return at + column - 1;
  }
}
