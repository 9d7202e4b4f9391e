package org.seamledger.quantity;

import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.Kind;
import org.seamledger.quantity.physics.OpenChannel;

/** Sizes of what takes the water at a line, by the names of facts; lengths in metres. */
public final class WaterSizes {

  /** Width of a channel along a wall or in a level valley, and its fall, that a depth is stated for (common practice, no source). */
  private static final double CHANNEL_WIDTH = 0.1;
  private static final double CHANNEL_FALL = 1.0 / 200;
  /** Depth of the water over the sill of an overflow, metres (common practice, no source: 2 in). */
  private static final double OVERFLOW_HEAD = 0.0508;

  private WaterSizes() {
  }

  /**
   * What a line needs by its kind: a channel with outlet and overflow where water comes against something or into a level line, a gutter
   * along an eave, a back pan beside which all of the water turns to one side; nothing elsewhere.
   *
   * @param flow m³/s
   */
  public static SortedMap<String, Object> of(Kind kind, double lengthM, double flow, RoofSystem system) {
    SortedMap<String, Object> sizes = new TreeMap<>();
    if (kind.water() == Kind.Water.AGAINST && kind.family() == Kind.Family.PENETRATION) {
      // Half the water turns to each side, beside which the free pan is a channel as wide as stated.
      sizes.put("channelDepthM", channel(flow / 2, system));
    } else if (kind.water() == Kind.Water.INTO || kind.water() == Kind.Water.AGAINST) {
      sizes.put("channelDepthM", channel(flow, system));
      sizes.put("outletM", OpenChannel.leaderDiameter(flow));
      sizes.put("outletHeadM", OpenChannel.outletHead(flow, OpenChannel.leaderDiameter(flow)));
      sizes.put("overflowM", OpenChannel.weirLength(flow, OVERFLOW_HEAD));
    } else if (kind.water() == Kind.Water.OVER && flow > 0) {
      gutter(lengthM, flow, system, sizes);
    }
    return sizes;
  }

  private static double channel(double flow, RoofSystem system) {
    return OpenChannel.rectangularDepth(flow, CHANNEL_WIDTH, system.manningN(), CHANNEL_FALL);
  }

  /** Outlets as the order spaces them, each with an even share of the water. */
  private static void gutter(double lengthM, double flow, RoofSystem system, SortedMap<String, Object> sizes) {
    int outlets = (int) Math.max(1, Math.ceil(lengthM / system.purchase().gutters().outletSpacing().value() - 1e-6));
    double diameter = OpenChannel.gutterDiameter(flow / outlets);
    sizes.put("gutterOutlets", outlets);
    sizes.put("outletM", OpenChannel.leaderDiameter(flow / outlets));
    if (Double.isFinite(diameter)) {
      sizes.put("gutterM", diameter);
    }
  }
}
