package org.seamledger.http.api;

import io.javalin.http.Context;
import java.util.Optional;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.TitleBlock;
import org.seamledger.export.submittal.PageSet;
import org.seamledger.export.submittal.SubmittalSetup;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.order.PriceList;

/** What a request says about a drawing's sheet: paper, units, title block, which sheet. */
final class SheetRequest {

  private static final int LONGEST = 200;

  private SheetRequest() {
  }

  /** @throws HttpProblem where there is no such paper, no such units, or a text is too long for a title block */
  static SheetSetup setup(Context ctx) {
    String paper = text(ctx, "paper", Paper.A3.word());
    String units = text(ctx, "units", DrawingUnits.BOTH.word());
    return new SheetSetup(
        Paper.of(paper).orElseThrow(() -> HttpProblem.badRequest("query/paper", "paper is one of " + Paper.choices() + ".")),
        DrawingUnits.of(units).orElseThrow(() -> HttpProblem.badRequest("query/units", "units is one of " + DrawingUnits.choices() + ".")),
        new TitleBlock(text(ctx, "project", ""), text(ctx, "number", ""), text(ctx, "revision", ""), text(ctx, "date", ""),
            text(ctx, "drawn", ""), text(ctx, "checked", "")));
  }

  /** @throws HttpProblem where there is no such part, or no such sheet */
  static SubmittalSetup submittal(Context ctx, Optional<PriceList> prices) {
    return new SubmittalSetup(setup(ctx), PageSet.of(text(ctx, "pages", "all"))
        .orElseThrow(() -> HttpProblem.badRequest("query/pages", "pages is one or more of " + PageSet.choices() + ".")), prices);
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
