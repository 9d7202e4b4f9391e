package org.seamledger.detail;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Choice;
import org.seamledger.shacl.Rules;

/** Gives panels the line along which they are fixed: that of the one shape in {@code shapes/fixity.ttl} which they conform to. */
public final class FixedLines {

  private final Choice shapes;

  /** @throws BrokenRulesException where no shape fixes panels, or one names a line that there isn't */
  public FixedLines(Rules rules) {
    shapes = rules.choice("fixed");
    rules.described("fixed").forEach((word, d) -> d.oneOf("fixed",
        Stream.of(FixedLine.LOW_END, FixedLine.HIGH_END, FixedLine.CLIP), FixedLine::word));
  }

  /**
   * Every line at which the rules fix a panel, sorted by its word: one, if all is well.
   *
   * @param facts those that {@link org.seamledger.junction.FactList#PANEL} lists, and the system's that choose details
   */
  public List<FixedLine> of(Map<String, ?> facts) {
    return shapes.decide(facts).stream().map(FixedLines::line).toList();
  }

  private static FixedLine line(String word) {
    return Stream.of(FixedLine.values()).filter(l -> l.word().equals(word)).findFirst().orElseThrow();
  }
}
