package org.seamledger.export.sheet;

/** What a person chooses about drawings: paper, units, title block. */
public record SheetSetup(Paper paper, Units units, TitleBlock title) {

  public static final SheetSetup DEFAULT = new SheetSetup(Paper.A3, Units.BOTH, TitleBlock.EMPTY);

  public SheetSetup with(Units other) {
    return new SheetSetup(paper, other, title);
  }

  public SheetSetup with(Paper other) {
    return new SheetSetup(other, units, title);
  }
}
