package org.seamledger.detail;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.seamledger.finding.Finding;
import org.seamledger.junction.JunctionNode;
import org.seamledger.roof.RoofFace;
import org.seamledger.shacl.Breach;
import org.seamledger.shacl.FindingShapes;
import org.seamledger.shacl.Rules;

/**
 * The findings of the design, as {@code shapes/findings.ttl} states them. Whoever asks gives the facts of junctions, faces and the roof
 * system that {@code FactList} lists; what follows from a junction's line, kind and detail is added here.
 */
public final class DesignReview {

  private final FindingShapes review;
  private final Map<String, ?> system;

  /**
   * @param system facts of the roof system; rules of junctions and faces see them too
   * @throws org.seamledger.shacl.BrokenRulesException where a rule is incomplete
   */
  public DesignReview(Rules rules, Map<String, ?> system) {
    this.review = rules.review();
    this.system = new TreeMap<>(system);
  }

  /** Why each finding of the design matters and what to do about it, by code. */
  public SortedMap<String, Advice> advice() {
    SortedMap<String, Advice> all = new TreeMap<>();
    review.catalogue().forEach(b -> all.put(b.code(), new Advice(b.reason(), b.action(), b.who(), b.once())));
    return all;
  }

  /** Findings of the roof system as such. */
  public List<Finding> ofSystem() {
    return findings("RoofSystem", system, "", List.of());
  }

  public List<Finding> ofFace(RoofFace face, Map<String, ?> facts) {
    Map<String, Object> all = new HashMap<>(system);
    all.put("slopeDegrees", face.slopeDegrees());
    all.put("curved", face.isCurved());
    all.putAll(facts);
    return findings("RoofFace", all, "", face.elements());
  }

  /**
   * Findings of a junction.
   *
   * @param counted GlobalIds of elements by the fact that counts them: a finding whose message speaks of that fact names them, too
   */
  public List<Finding> ofJunction(DetailedJunction junction, Map<String, ?> facts, Map<String, List<String>> counted) {
    KindedJunction kinded = junction.junction();
    Map<String, Object> all = new HashMap<>(system);
    all.putAll(kinded.junction().facts().asMap());
    all.put("kind", kinded.kind());
    all.put("lengthM", kinded.junction().lengthM());
    all.putAll(of(junction.detail()));
    all.putAll(facts);
    return findings("Junction", all, kinded.junction().id(), kinded.junction().elements(), counted);
  }

  /**
   * Findings of a point where lines meet.
   *
   * @param facts what the shapes of nodes see
   */
  public List<Finding> ofNode(JunctionNode node, Map<String, ?> facts) {
    Map<String, Object> all = new HashMap<>(system);
    all.putAll(facts);
    return findings("Node", all, node.id(), node.elements());
  }

  private static Map<String, Object> of(Detail detail) {
    if (detail.equals(Detail.NONE)) {
      return Map.of();
    }
    boolean tape = detail.seals().stream().anyMatch(s -> s.form() != Seal.Form.BEAD && s.role() == Seal.Role.PRIMARY);
    boolean bead = detail.seals().stream().anyMatch(s -> s.form() == Seal.Form.BEAD);
    return Map.of("detail", detail.id(), "metalFirst", detail.metalFirst(),
        "beadOnly", bead && !tape && !detail.metalFirst(),
        "sealantExposed", detail.seals().stream().anyMatch(s -> s.exposure() == Seal.Exposure.EXPOSED));
  }

  private List<Finding> findings(String target, Map<String, ?> facts, String junction, List<String> elements) {
    return findings(target, facts, junction, elements, Map.of());
  }

  private List<Finding> findings(String target, Map<String, ?> facts, String junction, List<String> elements,
      Map<String, List<String>> counted) {
    List<Breach> breaches = review.breaches(target, facts);
    if (breaches.isEmpty()) {
      return List.of();
    }
    List<Finding> findings = new ArrayList<>();
    for (Breach b : breaches) {
      List<String> all =
          Stream.concat(elements.stream(), counted.entrySet().stream().filter(e -> b.message().contains("{" + e.getKey() + "}"))
              .flatMap(e -> e.getValue().stream())).distinct().toList();
      findings.add(new Finding(b.code(), b.severity(), FactText.fill(b.message(), facts), junction, all));
    }
    return findings;
  }
}
