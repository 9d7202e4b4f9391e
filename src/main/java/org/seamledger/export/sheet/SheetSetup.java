package org.seamledger.export.sheet;

/** What a person chooses about drawings: paper, units, title block. */
public record SheetSetup(Paper paper, DrawingUnits units, TitleBlock title) {

  public static final SheetSetup DEFAULT = new SheetSetup(Paper.A3, DrawingUnits.BOTH, TitleBlock.EMPTY);
}
