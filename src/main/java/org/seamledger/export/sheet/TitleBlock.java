package org.seamledger.export.sheet;

import org.seamledger.export.wording.OneLine;

/**
 * What an office writes into a sheet's title block (the fields of ISO 7200). Empty where nothing is stated: the place is then left to be
 * filled by hand.
 *
 * @param date of the model; where it is empty, the day that the model's own header states
 */
public record TitleBlock(String project, String number, String revision, String date, String drawn, String checked) {

  public static final TitleBlock EMPTY = new TitleBlock("", "", "", "", "", "");

  public TitleBlock {
    project = OneLine.of(project).strip();
    number = OneLine.of(number).strip();
    revision = OneLine.of(revision).strip();
    date = OneLine.of(date).strip();
    drawn = OneLine.of(drawn).strip();
    checked = OneLine.of(checked).strip();
  }
}
