package org.seamledger.samples;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** Expected and found junction lengths by kind. */
final class Comparison {

  private Comparison() {
  }

  /**
   * What differs, a line each; empty where all agree.
   *
   * @param relative allowed deviation of a length, relative
   */
  static List<String> differences(Map<String, List<Double>> expected, Map<String, List<Double>> found, double relative) {
    List<String> lines = new ArrayList<>();
    TreeSet<String> kinds = new TreeSet<>(expected.keySet());
    kinds.addAll(found.keySet());
    for (String kind : kinds) {
      List<Double> e = expected.getOrDefault(kind, List.of());
      List<Double> f = found.getOrDefault(kind, List.of());
      if (!agree(e, f, relative)) {
        lines.add(kind + ": expected " + text(e) + ", got " + text(f));
      }
    }
    return lines;
  }

  private static boolean agree(List<Double> e, List<Double> f, double relative) {
    if (e.size() != f.size()) {
      return false;
    }
    for (int i = 0; i < e.size(); i++) {
      if (!(Math.abs(e.get(i) - f.get(i)) <= relative * e.get(i))) {
        return false;
      }
    }
    return true;
  }

  private static String text(List<Double> lengths) {
    return lengths.stream().map(l -> String.format(Locale.ROOT, "%.4f", l)).toList().toString();
  }

  static Map<String, List<Double>> byKind(List<Pipeline.Line> lines) {
    Map<String, List<Double>> byKind = new TreeMap<>();
    lines.forEach(l -> byKind.computeIfAbsent(l.kind(), k -> new ArrayList<>()).add(l.lengthM()));
    byKind.values().forEach(l -> l.sort(null));
    return byKind;
  }
}
