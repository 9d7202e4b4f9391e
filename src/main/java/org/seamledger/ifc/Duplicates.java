package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seamledger.element.Element;
import org.seamledger.finding.Code;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Solid;
import org.seamledger.ifc.entity.Findings;

/**
 * Elements with one GlobalId in several models are one element. The model that was named first gives it its shape; but where one model
 * calls it a roof and another not, the roof counts.
 */
final class Duplicates {

  /** Boxes that differ by less (metres) are equal: writers round, and facet curves differently. */
  private static final double SAME = 0.02;
  private static final double SAME_VOLUME = 0.01;

  private final Findings findings;
  private final List<String> names;
  private final Map<String, Element> kept = new HashMap<>();
  private final Map<String, List<String>> same = new TreeMap<>();
  private final Map<String, List<String>> different = new TreeMap<>();

  Duplicates(List<String> names, Findings findings) {
    this.names = names;
    this.findings = findings;
  }

  /** Elements that no earlier model, nor an earlier call, has given; their order stays. */
  List<Element> without(List<Element> elements) {
    List<Element> unique = new ArrayList<>();
    List<Element> byModel = elements.stream().sorted(java.util.Comparator.comparingInt(Element::model)).toList();
    Set<Element> left = java.util.Collections.newSetFromMap(new java.util.IdentityHashMap<>());
    for (Element e : byModel) {
      Element first = kept.putIfAbsent(e.globalId(), e);
      if (first != null && first.model() != e.model() && isSame(first, e)) {
        left.add(e);
        note(first, e);
      }
    }
    elements.stream().filter(e -> !left.contains(e)).forEach(unique::add);
    return unique;
  }

  /** An identifier that is no GlobalId may be one by chance: then it takes the same place, too. */
  private static boolean isSame(Element first, Element e) {
    return !e.globalId().isBlank() && (GlobalIds.isValid(e.globalId()) || !differ(first, e));
  }

  private void note(Element first, Element e) {
    String pair = names.get(e.model()) + " and " + names.get(first.model()) + "; those of " + names.get(first.model()) + " were taken";
    (differ(first, e) ? different : same).computeIfAbsent(pair, k -> new ArrayList<>()).add(e.globalId());
  }

  private static boolean differ(Element a, Element b) {
    Box3 p = a.bounds();
    Box3 q = b.bounds();
    double most = Math.max(Math.max(Math.max(Math.abs(p.minX() - q.minX()), Math.abs(p.minY() - q.minY())), Math.abs(p.minZ() - q.minZ())),
        Math.max(Math.max(Math.abs(p.maxX() - q.maxX()), Math.abs(p.maxY() - q.maxY())), Math.abs(p.maxZ() - q.maxZ())));
    double v = volume(a);
    double w = volume(b);
    return most > SAME || Math.abs(v - w) > SAME_VOLUME * Math.max(v, w);
  }

  /** Volume where it is known without work, else NaN, which differs from nothing. */
  private static double volume(Element e) {
    double sum = 0;
    for (Solid s : e.body()) {
      sum += s instanceof Mesh m ? Math.abs(m.volume()) : Double.NaN;
    }
    return sum;
  }

  /** Reports what was found. */
  void report() {
    same.forEach((pair, ids) -> findings.add(Code.DUPLICATES, count(ids) + " in both " + pair + ".", sorted(ids)));
    different.forEach((pair, ids) -> findings.add(Code.DUPLICATES_DIFFER, count(ids)
        + " in both " + pair + ", but place or shape differ.", sorted(ids)));
  }

  private static String count(List<String> ids) {
    return ids.size() + (ids.size() == 1 ? " element is" : " elements are");
  }

  private static String[] sorted(List<String> ids) {
    return ids.stream().sorted().distinct().collect(Collectors.toList()).toArray(String[]::new);
  }
}
