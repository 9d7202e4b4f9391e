package org.seamledger.quantity.physics;

/**
 * Sheet and fastener metals with the figures that checks need.
 *
 * <p>Expansion: aluminium, copper and lead from a materials-science textbook's table of thermal expansion; carbon steel, stainless and
 * rolled zinc from memory. Elastic moduli: common engineering values, from memory (steel 29·10⁶ psi). Anodic index: from memory, to be
 * checked against the standard in force before use. Coated steels expand as steel and corrode as their coating.
 */
public enum Metal {
  ZINC("zinc", 22.0e-6, 108e9, 1.23),
  GALVANIZED_STEEL("galvanized-steel", 12.0e-6, 200e9, 1.20),
  ALUMINIUM_ZINC_STEEL("aluminium-zinc-steel", 12.0e-6, 200e9, 1.10),
  ALUMINIUM("aluminium", 23.6e-6, 69e9, 0.90),
  STEEL("steel", 12.0e-6, 200e9, 0.85),
  LEAD("lead", 29.3e-6, 16e9, 0.70),
  STAINLESS_STEEL("stainless-steel", 17.2e-6, 193e9, 0.50),
  COPPER("copper", 17.0e-6, 117e9, 0.35);

  private final String word;
  private final double expansion;
  private final double modulusPa;
  private final double anodicIndex;

  Metal(String word, double expansion, double modulusPa, double anodicIndex) {
    this.word = word;
    this.expansion = expansion;
    this.modulusPa = modulusPa;
    this.anodicIndex = anodicIndex;
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

  /** Volts; the larger, the more active. */
  public double anodicIndexV() {
    return anodicIndex;
  }
}
