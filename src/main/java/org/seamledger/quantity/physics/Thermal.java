package org.seamledger.quantity.physics;

/** Movement with temperature. Temperature differences in kelvin, lengths in metres. */
public final class Thermal {

  private Thermal() {
  }

  /** {@code ΔL = α · L · ΔT}. */
  public static double movementM(Metal metal, double lengthM, double differenceK) {
    return metal.expansionPerK() * lengthM * differenceK;
  }

  /**
   * Stress in a panel pinned at both ends, {@code E · α · ΔT}, Pa: it does not depend on the length.
   */
  public static double lockedStressPa(Metal metal, double differenceK) {
    return metal.modulusPa() * metal.expansionPerK() * differenceK;
  }

  /**
   * Width of a sealed butt joint: {@code W = ΔL / S}, the sealant being stretched and pressed across it (the form used in joint-width
   * guides, from memory; a tolerance for building is to be added).
   *
   * @param capability movement that the sealant bears, a share of its width
   */
  public static double buttJointM(double movementM, double capability) {
    return movementM / capability;
  }

  /**
   * Thickness of sealant in a lap whose faces slide: {@code W = ΔL / √((1 + S)² − 1)}, so that the diagonal of the sheared sealant is no
   * longer than (1 + S) times its thickness. Derived.
   */
  public static double lapJointM(double movementM, double capability) {
    return movementM / Math.sqrt((1 + capability) * (1 + capability) - 1);
  }

  /** Diameter of a No. 14 screw's shank, from memory: 0.25 in. */
  private static final double SHANK = 0.00635;

  /** Length of a slot in which a fastener stands while the sheet moves: the whole movement, and the fastener's shank. */
  public static double slotM(double movementM) {
    return movementM + SHANK;
  }

  /** Gap to leave at installation so that the joint opens to no more than {@code widestM} at the lowest temperature. */
  public static double gapAtInstallM(double widestM, Metal metal, double lengthM, double installC, double lowestC) {
    return widestM - movementM(metal, lengthM, installC - lowestC);
  }
}
