package org.seamledger.quantity.physics;

/**
 * Sheet and fastener metals with the figures that checks need.
 *
 * <p>Expansion: aluminium, copper and lead from a materials-science textbook's table of thermal expansion; carbon steel, stainless and
 * rolled zinc from memory. Elastic moduli: common engineering values, from memory (steel 29·10⁶ psi). Anodic index: from memory, to be
 * checked against the standard in force before use. Densities: steel 7850 (490 lb/ft³), aluminium 2700, copper 8900 (46.5 lb/ft² at an
 * inch), the others from memory; coatings count as the sheet. Coated steels expand as steel and corrode as their coating.
 */
public enum Metal {
  ZINC("zinc", 22.0e-6, 108e9, 1.23, 7140),
  GALVANIZED_STEEL("galvanized-steel", 12.0e-6, 200e9, 1.20, 7850),
  ALUMINIUM_ZINC_STEEL("aluminium-zinc-steel", 12.0e-6, 200e9, 1.10, 7850),
  ALUMINIUM("aluminium", 23.6e-6, 69e9, 0.90, 2700),
  STEEL("steel", 12.0e-6, 200e9, 0.85, 7850),
  LEAD("lead", 29.3e-6, 16e9, 0.70, 11340),
  STAINLESS_STEEL("stainless-steel", 17.2e-6, 193e9, 0.50, 7930),
  COPPER("copper", 17.0e-6, 117e9, 0.35, 8900);

  private final String word;
  private final double expansion;
  private final double modulusPa;
  private final double anodicIndex;
  private final double density;

  Metal(String word, double expansion, double modulusPa, double anodicIndex, double density) {
    this.word = word;
    this.expansion = expansion;
    this.modulusPa = modulusPa;
    this.anodicIndex = anodicIndex;
    this.density = density;
  }

  /** The name in files and results. */
  public String word() {
    return word;
  }

  /** Linear expansion, 1/K. */
  public double expansionPerK() {
    return expansion;
  }

  /** Elastic modulus, Pa. */
  public double modulusPa() {
    return modulusPa;
  }

  /** Mass of a cubic metre of the solid, kilograms. */
  public double densityKgM3() {
    return density;
  }

  /** Volts; the larger, the more active. */
  public double anodicIndexV() {
    return anodicIndex;
  }
}
