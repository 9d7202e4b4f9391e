package org.seamledger.ifc;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.seamledger.element.Element;
import org.seamledger.finding.Code;
import org.seamledger.ifc.entity.Findings;

/** Makes the GlobalIds of a building's elements unique and looks at their form. */
final class GlobalIds {

  /** 128 bits in base 64: 22 characters of which the first holds two bits (IfcGloballyUniqueId). */
  private static final Pattern VALID = Pattern.compile("[0-3][0-9A-Za-z_$]{21}");

  private final Findings findings;
  private final Set<String> used = new HashSet<>();
  private final List<String> counts = new ArrayList<>();
  private String example = "";

  GlobalIds(Findings findings) {
    this.findings = findings;
  }

  static boolean isValid(String id) {
    return VALID.matcher(id).matches();
  }

  /** The elements in the same order; of several with one GlobalId the later ones get {@code ~2}, {@code ~3} … appended. */
  List<Element> unique(List<Element> elements) {
    List<Element> unique = new ArrayList<>();
    List<String> invalid = new ArrayList<>();
    for (Element e : elements) {
      if (!isValid(e.globalId())) {
        invalid.add(e.globalId());
      }
      String id = e.globalId();
      for (int n = 2; !used.add(id); n++) {
        id = e.globalId() + "~" + n;
      }
      unique.add(id.equals(e.globalId()) ? e : new Element(id, e.ifcClass(), e.category(), e.name(), e.model(), e.body(), e.openings(),
          e.whole(), e.properties()));
    }
    if (!invalid.isEmpty()) {
      example = example.isEmpty() ? invalid.get(0) : example;
      counts.add(invalid.size() + " of " + elements.size() + " "
          + (elements.get(0).category() == org.seamledger.element.Category.ROOF ? "roof elements" : "neighbouring elements"));
    }
    return unique;
  }

  /** One finding for all that were seen. */
  void report() {
    if (!counts.isEmpty()) {
      findings.add(Code.BAD_GLOBAL_ID, String.join(" and ", counts) + " have no valid GlobalId, for example '" + example + "'.");
    }
  }
}
