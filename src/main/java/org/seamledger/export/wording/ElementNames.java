package org.seamledger.export.wording;

import java.util.List;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/** What the authoring tool calls elements. */
public final class ElementNames {

  private static final int LONGEST = 36;

  private ElementNames() {
  }

  /** The first's name, or its class where it has none, and how many more there are; of several models, which one it is in. */
  public static String of(Takeoff takeoff, List<String> globalIds) {
    ElementLabel first = globalIds.isEmpty() ? null : takeoff.elements().get(globalIds.get(0));
    String name = first == null ? "" : OneLine.of(first.name().isBlank() ? first.ifcClass() : first.name());
    int end = name.offsetByCodePoints(0, Math.min(LONGEST, name.codePointCount(0, name.length())));
    String shown = end < name.length() ? name.substring(0, end).strip() + "…" : name;
    return shown + (globalIds.size() > 1 ? " +" + (globalIds.size() - 1) : "") + in(takeoff, first);
  }

  private static String in(Takeoff takeoff, ElementLabel element) {
    return element == null || takeoff.models().size() < 2 ? "" : " [" + (element.model() + 1) + "]";
  }

  /** An element that a finding names, with the file of its model. */
  public record Detail(ElementLabel label, String file) {
  }

  /** The elements in their order; of one that the model does not hold only the GlobalId is known. */
  public static List<Detail> details(Takeoff takeoff, List<String> globalIds) {
    return globalIds.stream().map(id -> new Detail(takeoff.elements().getOrDefault(id, new ElementLabel(id, "", "", 0, "")),
        file(takeoff, id))).toList();
  }

  /** File of the model that an element is in, or the empty string where that is not known. */
  public static String file(Takeoff takeoff, String globalId) {
    ElementLabel element = takeoff.elements().get(globalId);
    return element == null || element.model() >= takeoff.models().size() ? "" : takeoff.models().get(element.model()).file();
  }
}
