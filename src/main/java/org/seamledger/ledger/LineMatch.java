package org.seamledger.ledger;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Which junctions of two results are one: by id, what is left by place (the same two end points within {@value #PLACE_M} m, in either
 * direction), and what is left then by the elements that meet there, the kind and the direction of the line, the nearest first.
 */
final class LineMatch {

  static final double PLACE_M = 0.05;
  private static final double SAME_DIRECTION = Math.cos(Math.toRadians(5));

  private final Map<String, LedgerReader.Line> left = new LinkedHashMap<>();
  private final Map<String, LedgerReader.Line> partner = new HashMap<>();
  private final Map<String, Comparison.By> how = new HashMap<>();

  LineMatch(List<LedgerReader.Line> before, List<LedgerReader.Line> after) {
    before.forEach(l -> left.put(l.id(), l));
    for (LedgerReader.Line l : after) {
      take(left.get(l.id()), l, Comparison.By.ID);
    }
    byPlace(after);
    byElements(after);
  }

  /** The line of the older result that a line of the newer one was; nothing where it is new. */
  Optional<LedgerReader.Line> before(LedgerReader.Line after) {
    return Optional.ofNullable(partner.get(after.id()));
  }

  /** How a line that was there before was found. */
  Comparison.By how(LedgerReader.Line after) {
    return how.get(after.id());
  }

  /** Lines of the older result that are none of the newer one, in their order. */
  Collection<LedgerReader.Line> gone() {
    return left.values();
  }

  private void take(LedgerReader.Line old, LedgerReader.Line l, Comparison.By by) {
    if (old != null && left.remove(old.id()) != null) {
      partner.put(l.id(), old);
      how.put(l.id(), by);
    }
  }

  private void byPlace(List<LedgerReader.Line> after) {
    Map<String, List<LedgerReader.Line>> cells = new HashMap<>();
    left.values().forEach(l -> cells.computeIfAbsent(cell(middle(l), 0, 0, 0), k -> new ArrayList<>()).add(l));
    for (LedgerReader.Line l : after) {
      if (!partner.containsKey(l.id())) {
        LedgerReader.Line best = null;
        for (LedgerReader.Line o : around(cells, middle(l))) {
          if (left.containsKey(o.id()) && samePlace(o, l, PLACE_M) && (best == null || gap(o, l) < gap(best, l))) {
            best = o;
          }
        }
        take(best, l, Comparison.By.PLACE);
      }
    }
  }

  private static List<LedgerReader.Line> around(Map<String, List<LedgerReader.Line>> cells, double[] p) {
    List<LedgerReader.Line> found = new ArrayList<>();
    for (int dx = -1; dx <= 1; dx++) {
      for (int dy = -1; dy <= 1; dy++) {
        for (int dz = -1; dz <= 1; dz++) {
          found.addAll(cells.getOrDefault(cell(p, dx, dy, dz), List.of()));
        }
      }
    }
    return found;
  }

  private static String cell(double[] p, int dx, int dy, int dz) {
    return (Math.round(p[0] / PLACE_M) + dx) + "/" + (Math.round(p[1] / PLACE_M) + dy) + "/"
        + (Math.round(p[2] / PLACE_M) + dz);
  }

  private void byElements(List<LedgerReader.Line> after) {
    Map<String, List<LedgerReader.Line>> groups = new HashMap<>();
    left.values().forEach(l -> groups.computeIfAbsent(company(l), k -> new ArrayList<>()).add(l));
    for (LedgerReader.Line l : after) {
      if (!partner.containsKey(l.id()) && l.elements() != null && !l.elements().isEmpty()) {
        LedgerReader.Line best = null;
        for (LedgerReader.Line o : groups.getOrDefault(company(l), List.of())) {
          if (left.containsKey(o.id()) && parallel(o, l) && (best == null || gap(o, l) < gap(best, l))) {
            best = o;
          }
        }
        take(best, l, Comparison.By.ELEMENTS);
      }
    }
  }

  private static String company(LedgerReader.Line l) {
    return l.kindByRules() + " " + (l.elements() == null ? "" : String.join(" ", new TreeSet<>(l.elements())));
  }

  private static double[] middle(LedgerReader.Line l) {
    double[] a = l.start();
    double[] b = l.path()[l.path().length / 2];
    double[] c = l.path().length > 2 && distance(l.start(), l.end()) < Comparison.SAME_M ? b : l.end();
    return new double[] {(a[0] + c[0]) / 2, (a[1] + c[1]) / 2, (a[2] + c[2]) / 2};
  }

  /** Whether two lines lie at the same place, in either direction; {@code within} in metres. */
  static boolean samePlace(LedgerReader.Line a, LedgerReader.Line b, double within) {
    boolean along = distance(a.start(), b.start()) <= within && distance(a.end(), b.end()) <= within;
    boolean against = distance(a.start(), b.end()) <= within && distance(a.end(), b.start()) <= within;
    return (along || against) && Math.abs(a.lengthM() - b.lengthM()) <= 2 * within;
  }

  private static double gap(LedgerReader.Line a, LedgerReader.Line b) {
    return distance(middle(a), middle(b));
  }

  private static boolean parallel(LedgerReader.Line a, LedgerReader.Line b) {
    double la = distance(a.start(), a.end());
    double lb = distance(b.start(), b.end());
    if (la < Comparison.SAME_M || lb < Comparison.SAME_M) {
      return la < Comparison.SAME_M && lb < Comparison.SAME_M;
    }
    double dot = 0;
    for (int i = 0; i < 3; i++) {
      dot += (a.end()[i] - a.start()[i]) * (b.end()[i] - b.start()[i]);
    }
    return Math.abs(dot) / (la * lb) >= SAME_DIRECTION;
  }

  private static double distance(double[] a, double[] b) {
    return Math.sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) + (a[2] - b[2]) * (a[2] - b[2]));
  }
}
