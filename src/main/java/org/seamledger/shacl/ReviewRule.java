package org.seamledger.shacl;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.jena.graph.Node;
import org.apache.jena.shacl.Shapes;
import org.apache.jena.shacl.parser.Shape;
import org.seamledger.finding.Severity;
import org.seamledger.rdf.Vocabulary;

/**
 * A rule that makes a finding of what doesn't conform to it.
 *
 * @param target local name of the class of things that it is tried on
 * @param message with fact names in braces
 * @param who does what is to be done: {@code architect}, {@code engineer} or {@code roofer}
 * @param once whether it is said once, with all its places
 */
record ReviewRule(String code, String target, Severity severity, String message, String reason, String action, String who,
    boolean once, Shape shape) {

  static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");
  private static final Pattern CODE = Pattern.compile("[a-z][a-z-]*/[a-z][a-z-]*");
  private static final Set<String> TARGETS = Set.of("Junction", "Node", "RoofFace", "RoofSystem");
  private static final Set<String> TERMS = Set.of("code", "reason", "action", "who", "once");

  static ReviewRule read(String code, Described d, Shapes shapes) {
    d.only(TERMS);
    if (!CODE.matcher(code).matches()) {
      throw d.problem("has the code \"" + code + "\"; codes look like area/what");
    }
    List<Node> targets = d.shacl("targetClass");
    if (targets.size() != 1 || !TARGETS.contains(RuleCheck.local(targets.get(0)))) {
      throw d.problem("needs one sh:targetClass: sl:Junction, sl:Node, sl:RoofFace or sl:RoofSystem");
    }
    List<Node> messages = d.shacl("message");
    if (messages.size() != 1 || !messages.get(0).isLiteral()) {
      throw d.problem("needs one sh:message");
    }
    String message = messages.get(0).getLiteralLexicalForm();
    Matcher places = PLACE.matcher(message);
    while (places.find()) {
      if (!Vocabulary.facts().contains(places.group(1))) {
        throw d.problem("shows {" + places.group(1) + "}, and there is no such fact" + RuleCheck.near(places.group(1), Vocabulary.facts()));
      }
    }
    return new ReviewRule(code, RuleCheck.local(targets.get(0)), severity(d), message, d.word("reason"), d.word("action"),
        d.word("who", "roofer"), d.flag("once", false), shapes.getShape(d.node()));
  }

  private static Severity severity(Described d) {
    List<Node> found = d.shacl("severity");
    String name = found.isEmpty() ? "Violation" : RuleCheck.local(found.get(0));
    for (Severity s : Severity.values()) {
      if (s.name().equalsIgnoreCase(name)) {
        return s;
      }
    }
    throw d.problem("needs sh:severity sh:Violation, sh:Warning or sh:Info");
  }
}
