package org.seamledger.order;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.measure.MeasureFormat;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.takeoff.Takeoff;

/** A takeoff as the drafters of lines read it. */
record OrderSource(Takeoff takeoff, Map<String, DetailedJunction> junctions) {

  private static final Set<String> GUTTER_PARTS = Set.of("gutter", "bracket", "outlet", "joint");

  OrderSource(Takeoff takeoff) {
    this(takeoff, new TreeMap<>());
    takeoff.lines().forEach(j -> junctions.put(j.junction().junction().id(), j));
  }

  RoofSystem system() {
    return takeoff.system();
  }

  /** What was counted, by junctions in the order of their ids. */
  List<JunctionQuantities> counted() {
    return List.copyOf(takeoff.quantities().byJunction().values());
  }

  /** The junction that was counted; null where it is a node, where lines meet. */
  DetailedJunction junction(JunctionQuantities counted) {
    return junctions.get(counted.junction());
  }

  /** The part of a junction's detail that has this name. */
  MetalPart part(JunctionQuantities counted, String name) {
    return junction(counted).detail().metal().stream().filter(m -> m.part().equals(name)).findFirst().orElseThrow();
  }

  /** Whether it belongs to a gutter that a detail hangs, and so is bought with the gutters. */
  boolean isOfGutter(JunctionQuantities counted, MetalLine line) {
    DetailedJunction junction = junction(counted);
    return junction != null && hasGutter(junction) && GUTTER_PARTS.contains(part(counted, line.part()).id());
  }

  static boolean hasGutter(DetailedJunction junction) {
    return junction.detail().metal().stream().anyMatch(m -> m.id().equals("gutter"));
  }

  /** Mass of a square metre of sheet, kg. */
  static double sheetKgM2(Metal metal, double thicknessM) {
    return metal.densityKgM3() * thicknessM;
  }

  /** A small size in both systems: {@code 305 mm (12 in)}. */
  static String size(double metres) {
    return MeasureFormat.formatMillimetres(metres) + " (" + MeasureFormat.formatInches(metres) + ")";
  }
}
