package org.seamledger.detail;

import java.util.List;
import org.seamledger.shacl.Described;
import java.util.Set;

/**
 * Something to look at before work goes on.
 *
 * @param before what must not be done before, such as {@code the cap is set}
 * @param check what to see
 * @param step the work that waits for it, by {@code shapes/sequence.ttl}; empty where none is named
 * @param ifFails what is done where it isn't so
 */
public record HoldPoint(String before, String check, String step, String ifFails) {

  /** What is done where the rules name nothing else. */
  public static final String USUAL = "Take it apart as far as it takes, put it right and look again before work goes on.";
  private static final Set<String> TERMS = Set.of("before", "check", "step", "ifFails");

  /** A hold point of rules that name no work. */
  public HoldPoint(String before, String check) {
    this(before, check, "", USUAL);
  }

  /** Those of a detail or a kind of node. */
  public static List<HoldPoint> read(Described of) {
    return of.list("holdPoints").stream().map(HoldPoint::one).toList();
  }

  private static HoldPoint one(Described d) {
    d.only(TERMS);
    return new HoldPoint(d.word("before"), d.word("check"), d.word("step", ""), d.word("ifFails", USUAL));
  }
}
