package org.seamledger.quantity.system;

/** What turns quantities into a purchase: lengths as cut, clips, underlayment, stock and packs. No value changes a line;
 * hangers of gutters are counted with their eave. */
public record PurchaseSettings(CutSettings cuts, CoilSettings coil, ClipSettings clips, UnderlaymentSettings underlayment,
    StockSettings stock, PackSettings packs, GutterSettings gutters, SnowGuardSettings snowGuards) {
}
