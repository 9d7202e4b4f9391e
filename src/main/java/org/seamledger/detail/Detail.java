package org.seamledger.detail;

import java.util.List;

/**
 * How a junction is made and sealed.
 *
 * @param id such as {@code ridge-unvented}
 * @param title for people
 * @param metal from the first that is fitted to the last
 * @param seals likewise
 * @param waterPath what stops the water where no sealant is left
 * @param metalFirst whether the metal alone, lapped or turned up, still leads the water off
 * @param source where the detail comes from: a publication, or {@code common practice}
 */
public record Detail(String id, String title, List<MetalPart> metal, List<Seal> seals, List<Fastening> fastenings,
    List<HoldPoint> holdPoints, String waterPath, boolean metalFirst, String source) {

  /** Where the rules choose no detail. */
  public static final Detail NONE = new Detail("none", "No detail chosen", List.of(), List.of(), List.of(), List.of(), "", false, "");

  public Detail {
    metal = List.copyOf(metal);
    seals = List.copyOf(seals);
    fastenings = List.copyOf(fastenings);
    holdPoints = List.copyOf(holdPoints);
  }
}
