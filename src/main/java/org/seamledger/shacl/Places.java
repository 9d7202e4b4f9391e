package org.seamledger.shacl;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.BiConsumer;
import org.apache.jena.graph.Triple;

/** Where the triples of the rules were written, so that complaints about them can name the line. */
final class Places {

  /** Where a triple was written. */
  record Place(String file, long line, long column) {
    BrokenRulesException problem(String text) {
      return new BrokenRulesException(file, line, column, text);
    }
  }

  private final Map<Triple, Place> all = new LinkedHashMap<>();
  /** What fills them when the first place is asked for: mostly nobody does. */
  private Runnable fill = () -> {};

  void fillBy(Runnable adding) {
    fill = adding;
  }

  /** Of a triple that is written twice, the first place stays. */
  void add(Triple triple, Place place) {
    all.putIfAbsent(triple, place);
  }

  Place of(Triple triple) {
    return filled().getOrDefault(triple, new Place("rules", 0, 0));
  }

  /** In the order in which they were written. */
  void forEach(BiConsumer<Triple, Place> action) {
    filled().forEach(action);
  }

  private synchronized Map<Triple, Place> filled() {
    fill.run();
    fill = () -> {};
    return all;
  }
}
