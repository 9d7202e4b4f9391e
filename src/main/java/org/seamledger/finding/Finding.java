package org.seamledger.finding;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Something that a person should know about a model or a design.
 *
 * @param code short stable name, {@code area/what}, lower case
 * @param message one sentence for people, with the figures
 * @param junction id of the junction concerned, the first of several, or the empty string
 * @param elements GlobalIds concerned, in the order that matters
 * @param junctions all junctions concerned, that one first; empty where there is none
 * @param remedy the placement that would answer it, where there is one
 * @param acceptance who lets it stand, where somebody does
 * @param remarks what people said about it elsewhere, in their order
 */
public record Finding(String code, Severity severity, String message, String junction, List<String> elements,
    List<String> junctions, Optional<Remedy> remedy, Optional<Acceptance> acceptance, List<Remark> remarks) implements Comparable<Finding> {

  /**
   * A model placed otherwise.
   *
   * @param model position of the model among those that were read together, from 0
   * @param movement from the model's own coordinates to the result's, as the command line takes it: {@code dx,dy,dz[,degrees[,factor]]}
   */
  public record Remedy(int model, String movement) {
  }

  public Finding(String code, Severity severity, String message, String junction, List<String> elements) {
    this(code, severity, message, junction, elements, List.of(), Optional.empty(), Optional.empty(), List.of());
  }

  public Finding {
    Objects.requireNonNull(code);
    Objects.requireNonNull(severity);
    Objects.requireNonNull(message);
    Objects.requireNonNull(junction);
    Objects.requireNonNull(remedy);
    Objects.requireNonNull(acceptance);
    elements = List.copyOf(elements);
    junctions = junctions.isEmpty() && !junction.isEmpty() ? List.of(junction) : List.copyOf(junctions);
    remarks = List.copyOf(remarks);
  }

  public static Finding of(Code code, String message, String... elements) {
    return new Finding(code.id(), code.severity(), message, "", List.of(elements));
  }

  public static Finding of(Code code, String message, List<String> elements) {
    return new Finding(code.id(), code.severity(), message, "", elements);
  }

  public Finding at(String junctionId) {
    return new Finding(code, severity, message, junctionId, elements, List.of(), remedy, acceptance, remarks);
  }

  /** The same with what would answer it. */
  public Finding with(Remedy placement) {
    return new Finding(code, severity, message, junction, elements, junctions, Optional.of(placement), acceptance, remarks);
  }

  /** The same, accepted. */
  public Finding accepted(Acceptance by) {
    return new Finding(code, severity, message, junction, elements, junctions, remedy, Optional.of(by), remarks);
  }

  /** The same, accepted by nobody. */
  public Finding reopened() {
    return new Finding(code, severity, message, junction, elements, junctions, remedy, Optional.empty(), remarks);
  }

  /** The same with more that people said. */
  public Finding saying(List<Remark> more) {
    return new Finding(code, severity, message, junction, elements, junctions, remedy, acceptance,
        Stream.concat(remarks.stream(), more.stream()).toList());
  }

  /** Whether it stands at this severity or above and nobody accepted it: what a gate counts. */
  public boolean isOpenAt(Severity limit) {
    return acceptance.isEmpty() && severity.atLeast(limit);
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
