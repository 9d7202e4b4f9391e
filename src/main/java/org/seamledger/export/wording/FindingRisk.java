package org.seamledger.export.wording;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Seal;
import org.seamledger.finding.Finding;
import org.seamledger.takeoff.Takeoff;

/**
 * How much a leak is to be feared where a finding stands, 0 to 100: whether metal alone keeps the water out there if the sealant fails
 * (40), how much water comes (30), whether sealant is exposed (15), and how flat the roof is (15). The weights are this program's own; no
 * source.
 */
public final class FindingRisk {

  private static final double SEALANT_ONLY = 40;
  private static final double FLOW = 30;
  private static final double EXPOSED = 15;
  private static final double FLAT = 15;
  /** Water of so many square metres of plan counts in full. */
  private static final double MUCH_WATER_M2 = 100;
  /** A slope from which on flatness counts for nothing, degrees: 3:12. */
  private static final double STEEP = 14.036;

  private final Takeoff takeoff;
  private final Map<String, DetailedJunction> byId;

  public FindingRisk(Takeoff takeoff) {
    this.takeoff = takeoff;
    this.byId = takeoff.lines().stream().collect(Collectors.toMap(j -> j.junction().junction().id(), Function.identity()));
  }

  /** The greatest over its junctions; 0 for what stands at none. */
  public double of(Finding finding) {
    return finding.junctions().stream().filter(byId::containsKey).mapToDouble(id -> at(byId.get(id))).max().orElse(0);
  }

  /** The findings by severity, of one severity the most to be feared first, then in a result's order. */
  public List<Finding> ordered() {
    return takeoff.findings().stream().sorted(Comparator.comparing(Finding::severity).reversed()
        .thenComparing(Comparator.comparingDouble(this::of).reversed())).toList();
  }

  private double at(DetailedJunction j) {
    Detail detail = j.detail();
    double water = takeoff.drainage().arriving().getOrDefault(j.junction().junction().id(), Collections.emptySortedMap())
        .values().stream().mapToDouble(Double::doubleValue).sum();
    double slope = j.junction().junction().facts().has("minSlopeDegrees")
        ? j.junction().junction().facts().number("minSlopeDegrees") : STEEP;
    boolean exposed = detail.seals().stream().anyMatch(s -> s.exposure() == Seal.Exposure.EXPOSED);
    return Math.rint((detail.metalFirst() ? 0 : SEALANT_ONLY) + FLOW * Math.min(1, water / MUCH_WATER_M2) + (exposed ? EXPOSED : 0)
        + FLAT * Math.max(0, 1 - slope / STEEP));
  }
}
