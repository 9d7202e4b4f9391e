package org.seamledger.drainage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.junction.Junction;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofFace;

/** Where the water of a roof goes. All amounts are plan areas, square metres: what the rain falls on. */
public final class DrainageTrace {

  /** Share of the roof's plan area by which what leaves and stays may differ from it: rounding of the outlines. */
  private static final double BALANCE = 1e-3;

  public static final DrainageTrace NONE = new DrainageTrace(new Bookings(), List.of());

  private final SortedMap<WaterPlace, SortedMap<WaterPlace, Double>> path;
  private final SortedMap<String, Double> leaves;
  private final SortedMap<String, Double> trapped;
  private final SortedMap<String, Double> held;
  private final SortedMap<String, SortedMap<String, Double>> drops;
  private final List<Catchment> catchments;
  private final SortedMap<String, SortedMap<WaterPlace, Double>> arriving = new TreeMap<>();

  DrainageTrace(Bookings bookings, List<Catchment> catchments) {
    this.path = Collections.unmodifiableSortedMap(bookings.path);
    this.leaves = Collections.unmodifiableSortedMap(bookings.leaves);
    this.trapped = Collections.unmodifiableSortedMap(bookings.trapped);
    this.held = Collections.unmodifiableSortedMap(bookings.held);
    this.drops = Collections.unmodifiableSortedMap(bookings.drops);
    this.catchments = List.copyOf(catchments);
    path.forEach((from, all) -> all.forEach((to, amount) -> {
      if (!to.isFace()) {
        arriving.computeIfAbsent(to.id(), id -> new TreeMap<>()).put(from, amount);
      }
    }));
  }

  /**
   * Lets the water run.
   *
   * @param gutters ids of the junctions along which a gutter hangs: what comes over them drops no further
   */
  public static DrainageTrace of(Roof roof, List<Junction> junctions, Set<String> gutters) {
    return Tracer.trace(roof, junctions, gutters);
  }

  /** What leaves the roof, by the junction over whose line or foot it does. */
  public SortedMap<String, Double> leaves() {
    return leaves;
  }

  /** What stays: by the face in which it does. */
  public SortedMap<String, Double> trapped() {
    return trapped;
  }

  /** Of what stays, that which stands at a junction. */
  public SortedMap<String, Double> held() {
    return held;
  }

  /** From each face and junction where its water goes next, and how much; water that drops on a face goes from the face above. */
  public SortedMap<WaterPlace, SortedMap<WaterPlace, Double>> path() {
    return path;
  }

  /** What drops from a junction, by the face that it drops on. */
  public SortedMap<String, SortedMap<String, Double>> drops() {
    return drops;
  }

  /** Parts of sloping faces by where their water goes next. */
  public List<Catchment> catchments() {
    return catchments;
  }

  /** All that comes to each junction, by where it comes from. */
  public SortedMap<String, SortedMap<WaterPlace, Double>> arriving() {
    return Collections.unmodifiableSortedMap(arriving);
  }

  /** What leaves and what stays together. */
  public double totalM2() {
    return sum(leaves) + sum(trapped);
  }

  private static double sum(Map<String, Double> amounts) {
    return amounts.values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /** Says so where water is lost or found: the sums don't agree with the plan area of the faces. */
  public List<Finding> findings(List<RoofFace> faces) {
    double plan = faces.stream().mapToDouble(RoofFace::planAreaM2).sum();
    List<Finding> findings = new ArrayList<>();
    if (Math.abs(totalM2() - plan) > BALANCE * plan) {
      findings.add(Finding.of(Code.WATER_UNBALANCED, String.format(Locale.ROOT,
          "the water traced over the roof is that of %.2f m² of plan, its faces have %.2f m²", totalM2(), plan)));
    }
    return findings;
  }
}
