package org.seamledger.rdf;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.jena.atlas.io.StringWriterI;
import org.apache.jena.graph.Graph;
import org.apache.jena.graph.Node;
import org.apache.jena.graph.Triple;
import org.apache.jena.riot.out.NodeFormatterTTL;
import org.apache.jena.riot.system.PrefixMap;
import org.apache.jena.riot.system.PrefixMapFactory;

/** Writes a graph without blank nodes as Turtle in one order only. */
final class TurtleText {

  private static final Map<String, String> PREFIXES = new TreeMap<>(Map.of("bot", Vocabulary.BOT_NS, "geo", Vocabulary.GEO_NS, "sl",
      Vocabulary.NS, "xsd", "http://www.w3.org/2001/XMLSchema#"));

  private final NodeFormatterTTL formatter;

  private TurtleText() {
    PrefixMap prefixes = PrefixMapFactory.create();
    PREFIXES.forEach(prefixes::add);
    formatter = new NodeFormatterTTL(null, prefixes);
  }

  static String of(Graph graph) {
    TurtleText writer = new TurtleText();
    SortedMap<String, SortedMap<String, TreeSet<String>>> subjects = new TreeMap<>();
    for (Triple t : graph.find().toList()) {
      subjects.computeIfAbsent(writer.text(t.getSubject()), s -> new TreeMap<>(FIRST_TYPE))
          .computeIfAbsent(t.getPredicate().equals(Vocabulary.TYPE) ? "a" : writer.text(t.getPredicate()), p -> new TreeSet<>())
          .add(writer.text(t.getObject()));
    }
    StringBuilder out = new StringBuilder();
    PREFIXES.forEach((name, uri) -> out.append("@prefix ").append(name).append(": <").append(uri).append("> .\n"));
    subjects.forEach((s, properties) -> out.append('\n').append(s).append(properties.entrySet().stream()
        .map(p -> p.getKey() + " " + String.join(" , ", List.copyOf(p.getValue())))
        .collect(Collectors.joining(" ;\n  ", "\n  ", " .\n"))));
    return out.toString();
  }

  private static final Comparator<String> FIRST_TYPE =
      Comparator.comparing((String p) -> !p.equals("a")).thenComparing(Comparator.naturalOrder());

  private String text(Node node) {
    StringWriterI out = new StringWriterI();
    formatter.format(out, node);
    return out.toString();
  }
}
