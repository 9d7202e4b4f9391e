package org.seamledger.export.wording;

/** What every output says about its limits and about working on roofs. */
public enum ScopeText {

  /** What the figures are, and who decides. */
  SCOPE("These are estimates from the model's geometry and the stated assumptions. The local code, the roof"
      + " system's tested assembly and warranty, and the licensed design professional govern. This is no structural, wind-uplift or"
      + " drainage design. Verify on site before ordering."),

  /** The usual cautions for people on a metal roof. */
  SAFETY("Roof edges, holes and skylights are fall hazards: a competent person's fall protection plan comes"
      + " before any work, and nobody ties off to a gutter, cap, seam clip or skylight. Wet, frosty or dusty metal is slippery, dark"
      + " metal burns, cut edges are sharp, wind takes sheets: gloves, eye protection, no sheets in wind. Keep clear of overhead lines"
      + " and live solar conductors. Read the safety data sheet of every sealant, primer and solvent, and ventilate. Old sealant and"
      + " paint may hold lead or asbestos.");

  private final String text;

  ScopeText(String text) {
    this.text = text;
  }

  public String text() {
    return text;
  }
}
