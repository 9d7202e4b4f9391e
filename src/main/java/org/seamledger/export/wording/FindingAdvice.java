package org.seamledger.export.wording;

import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.seamledger.detail.Advice;
import org.seamledger.finding.Code;
import org.seamledger.takeoff.Takeoff;

/** What to do about a finding: the program's own catalogue says it for its codes, the rules for theirs. */
public final class FindingAdvice {

  private static final Map<String, Code> OWN = Stream.of(Code.values()).collect(Collectors.toMap(Code::id, code -> code));
  private static final Advice NONE = new Advice("", "");

  private FindingAdvice() {
  }

  /** Why it matters, or the empty string. */
  public static String reason(Takeoff takeoff, String code) {
    return takeoff.advice().getOrDefault(code, NONE).reason();
  }

  /** Who does it: {@code architect}, {@code engineer} or {@code roofer}. */
  public static String who(Takeoff takeoff, String code) {
    Code own = OWN.get(code);
    return own != null ? own.who() : takeoff.advice().getOrDefault(code, NONE).who();
  }

  /** What to do, or the empty string. */
  public static String action(Takeoff takeoff, String code) {
    Code own = OWN.get(code);
    return own != null ? own.advice() : takeoff.advice().getOrDefault(code, NONE).action();
  }
}
