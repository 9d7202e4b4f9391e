package org.seamledger.http.api;

import io.javalin.http.Context;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.export.sheet.Units;
import org.seamledger.http.answer.HttpProblem;

/** What a request says about a drawing's sheet: paper, units, title block, which sheet. */
final class SheetRequest {

  private static final int LONGEST = 200;

  private SheetRequest() {
  }

  /** @throws HttpProblem where there is no such paper, no such units, or a text is too long for a title block */
  static SheetSetup setup(Context ctx) {
    String paper = text(ctx, "paper", Paper.A3.word());
    String units = text(ctx, "units", Units.BOTH.word());
    return new SheetSetup(
        Paper.of(paper).orElseThrow(() -> HttpProblem.badRequest("query/paper", "paper is one of " + Paper.choices() + ".")),
        Units.of(units).orElseThrow(() -> HttpProblem.badRequest("query/units", "units is one of " + Units.choices() + ".")),
        new TitleBlock(text(ctx, "project", ""), text(ctx, "number", ""), text(ctx, "revision", ""), text(ctx, "date", ""),
            text(ctx, "drawn", ""), text(ctx, "checked", "")));
  }

  /** The sheet of several, from 1. */
  static int sheet(Context ctx) {
    String sheet = text(ctx, "sheet", "1");
    if (!sheet.matches("[1-9]\\d{0,3}")) {
      throw HttpProblem.badRequest("query/sheet", "sheet is a number from 1.");
    }
    return Integer.parseInt(sheet);
  }

  private static String text(Context ctx, String name, String otherwise) {
    String text = ctx.queryParam(name);
    if (text != null && text.length() > LONGEST) {
      throw HttpProblem.badRequest("query/" + name, name + " has at most " + LONGEST + " characters.");
    }
    return text == null || text.isBlank() ? otherwise : text;
  }
}
