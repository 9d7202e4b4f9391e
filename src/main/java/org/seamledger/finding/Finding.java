package org.seamledger.finding;

import java.util.List;
import java.util.Objects;

/**
 * Something that a person should know about a model or a design.
 *
 * @param code short stable name, {@code area/what}, lower case
 * @param message one sentence for people, with the figures
 * @param junction id of the junction concerned, or the empty string
 * @param elements GlobalIds concerned, in the order that matters
 */
public record Finding(String code, Severity severity, String message, String junction, List<String> elements)
    implements Comparable<Finding> {

  public Finding {
    Objects.requireNonNull(code);
    Objects.requireNonNull(severity);
    Objects.requireNonNull(message);
    Objects.requireNonNull(junction);
    elements = List.copyOf(elements);
  }

  public static Finding of(Code code, String message, String... elements) {
    return new Finding(code.id(), code.severity(), message, "", List.of(elements));
  }

  public static Finding of(Code code, String message, List<String> elements) {
    return new Finding(code.id(), code.severity(), message, "", elements);
  }

  public Finding at(String junctionId) {
    return new Finding(code, severity, message, junctionId, elements);
  }

  /** The worst first, then by code, junction and text, so that a result has one order only. */
  @Override
  public int compareTo(Finding o) {
    int c = o.severity.compareTo(severity);
    c = c != 0 ? c : code.compareTo(o.code);
    c = c != 0 ? c : junction.compareTo(o.junction);
    c = c != 0 ? c : message.compareTo(o.message);
    return c != 0 ? c : String.join(" ", elements).compareTo(String.join(" ", o.elements));
  }
}
