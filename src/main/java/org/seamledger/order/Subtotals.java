package org.seamledger.order;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.ElementLabel;
import org.seamledger.takeoff.Takeoff;

/**
 * The lines of an order divided by where they come from. By kind, family, detail and junction each amount belongs to one key, and keys add
 * up to the line. By face, storey and model an amount of a line that several share counts for each of them; the total counts it once.
 * Money is divided to the hundredth so that the parts that belong to one key each add up to the line's cost.
 */
public final class Subtotals {

  /** What to divide by. */
  public enum By {
    KIND, FAMILY, DETAIL, JUNCTION, FACE, STOREY, MODEL;

    /** Whether an amount may count for several keys. */
    public boolean isShared() {
      return this == FACE || this == STOREY || this == MODEL;
    }

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * @param key such as a kind or a face; {@link #SURFACE} for what belongs to the faces as wholes
   * @param net in the line's unit
   * @param cost empty where the line has no price
   */
  public record Part(String key, OrderLine line, double net, Optional<BigDecimal> cost) {
  }

  /** Key of what goes by the area of faces and not by a line. */
  public static final String SURFACE = "roof surface";
  private static final String UNKNOWN = "not known";

  private static final String NODES = "nodes";

  private final Map<String, DetailedJunction> junctions = new TreeMap<>();
  private final Map<String, KindedNode> nodes = new TreeMap<>();
  private final Map<String, List<String>> elementsOfFace = new TreeMap<>();
  private final Takeoff takeoff;
  private final By by;

  private Subtotals(Takeoff takeoff, By by) {
    this.takeoff = takeoff;
    this.by = by;
    takeoff.lines().forEach(j -> junctions.put(j.junction().junction().id(), j));
    takeoff.nodes().forEach(n -> nodes.put(n.id(), n));
    takeoff.faces().forEach(f -> elementsOfFace.put(f.id(), f.elements()));
  }

  /** By key, then in the order's own order. */
  public static List<Part> of(Takeoff takeoff, OrderList order, Optional<PricedOrder> priced, By by) {
    Subtotals subtotals = new Subtotals(takeoff, by);
    List<Part> parts = new ArrayList<>();
    for (OrderLine line : order.lines()) {
      parts.addAll(subtotals.parts(line, priced.flatMap(p -> p.cost(line.id())).map(CostedLine::cost)));
    }
    parts.sort(java.util.Comparator.comparing(Part::key));
    return parts;
  }

  private List<Part> parts(OrderLine line, Optional<BigDecimal> cost) {
    Map<String, Double> nets = new TreeMap<>();
    Map<String, BigDecimal> costs = new TreeMap<>();
    double before = 0;
    for (OrderShare share : line.shares()) {
      BigDecimal money = upTo(line, cost, before + share.amount()).subtract(upTo(line, cost, before));
      before += share.amount();
      for (String key : keys(share)) {
        nets.merge(key, share.amount(), Double::sum);
        costs.merge(key, money, BigDecimal::add);
      }
    }
    return nets.entrySet().stream().map(e -> new Part(e.getKey(), line, e.getValue(), cost.map(c -> costs.get(e.getKey())))).toList();
  }

  /** What the first so many of a line cost: differences of these add up whatever is rounded. */
  private static BigDecimal upTo(OrderLine line, Optional<BigDecimal> cost, double amount) {
    return cost.map(c -> c.multiply(BigDecimal.valueOf(Math.min(1, amount / line.net()))).setScale(2, RoundingMode.HALF_UP))
        .orElse(BigDecimal.ZERO);
  }

  private Set<String> keys(OrderShare share) {
    return switch (by) {
      case KIND -> Set.of(of(share, j -> j.junction().kind(), n -> n.kind().id()));
      case FAMILY -> Set.of(of(share, j -> j.junction().type().family().word(), n -> NODES));
      case DETAIL -> Set.of(of(share, j -> j.detail().id(), n -> n.kind().id()));
      case JUNCTION -> Set.of(share.junction().isEmpty() ? SURFACE : share.junction());
      case FACE -> new LinkedHashSet<>(faces(share));
      case STOREY -> labels(share, ElementLabel::storey);
      case MODEL -> labels(share, e -> takeoff.models().get(e.model()).file());
    };
  }

  /** A word about the junction or the node that an amount belongs to. */
  private String of(OrderShare share, Function<DetailedJunction, String> ofJunction, Function<KindedNode, String> ofNode) {
    DetailedJunction junction = junctions.get(share.junction());
    KindedNode node = nodes.get(share.junction());
    return junction != null ? ofJunction.apply(junction) : node != null ? ofNode.apply(node) : SURFACE;
  }

  private List<String> faces(OrderShare share) {
    if (!share.face().isEmpty()) {
      return List.of(share.face());
    }
    DetailedJunction junction = junctions.get(share.junction());
    return junction != null ? junction.junction().junction().faces()
        : nodes.containsKey(share.junction()) ? nodes.get(share.junction()).node().faces() : List.of();
  }

  private Set<String> labels(OrderShare share, Function<ElementLabel, String> label) {
    Set<String> keys = new LinkedHashSet<>();
    for (String face : faces(share)) {
      for (String element : elementsOfFace.getOrDefault(face, List.of())) {
        ElementLabel known = takeoff.elements().get(element);
        String word = known == null ? "" : label.apply(known);
        keys.add(word.isBlank() ? UNKNOWN : word);
      }
    }
    return keys.isEmpty() ? Set.of(UNKNOWN) : keys;
  }
}
