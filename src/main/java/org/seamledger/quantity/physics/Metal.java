package org.seamledger.quantity.physics;

/**
 * Sheet and fastener metals with the figures that checks need.
 *
 * <p>Expansion: aluminium, copper and lead from a materials-science textbook's table of thermal expansion; carbon steel, stainless and
 * rolled zinc from memory. Elastic moduli: common engineering values, from memory (steel 29·10⁶ psi). Anodic index: from memory, to be
 * checked against the standard in force before use. Coated steels expand as steel and corrode as their coating.
 */
public enum Metal {
  ZINC("zinc", 22.0e-6, 108e9, 1.23, true),
  GALVANIZED_STEEL("galvanized-steel", 12.0e-6, 200e9, 1.20, true),
  ALUMINIUM_ZINC_STEEL("aluminium-zinc-steel", 12.0e-6, 200e9, 1.10, true),
  ALUMINIUM("aluminium", 23.6e-6, 69e9, 0.90, true),
  STEEL("steel", 12.0e-6, 200e9, 0.85, false),
  LEAD("lead", 29.3e-6, 16e9, 0.70, false),
  STAINLESS_STEEL("stainless-steel", 17.2e-6, 193e9, 0.50, false),
  COPPER("copper", 17.0e-6, 117e9, 0.35, false);

  private final String word;
  private final double expansion;
  private final double modulusPa;
  private final double anodicIndex;
  private final boolean harmedByCopper;

  Metal(String word, double expansion, double modulusPa, double anodicIndex, boolean harmedByCopper) {
    this.word = word;
    this.expansion = expansion;
    this.modulusPa = modulusPa;
    this.anodicIndex = anodicIndex;
    this.harmedByCopper = harmedByCopper;
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

  /** True where water that ran over copper corrodes it. */
  public boolean harmedByCopperRunOff() {
    return harmedByCopper;
  }

  /** True where acetic acid from a curing sealant attacks it. */
  public boolean harmedByAceticAcid() {
    return this == ZINC || this == GALVANIZED_STEEL || this == ALUMINIUM_ZINC_STEEL || this == COPPER || this == LEAD;
  }
}
