package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.geometry.Vec2;
import org.seamledger.takeoff.Takeoff;

/** A small picture of every trim as it is folded, equal ones once with the junctions that they are for; as many sheets as it takes. */
public final class ProfileSheets {

  private static final String STYLE = """
      .fold { fill: none; stroke: #14202b; stroke-width: 0.6; stroke-linejoin: round; stroke-linecap: round; }
      .leg { font-size: 2.3px; }
      """;
  private static final double WIDTH = 92;
  private static final double HEIGHT = 68;
  private static final double PICTURE = 38;

  private ProfileSheets() {
  }

  /** Each sheet as SVG text; the same takeoff and setup give the same text. At least one, if only to say that nothing is folded. */
  public static List<String> draw(Takeoff takeoff, SheetSetup setup) {
    Map<String, FoldedPart> parts = new LinkedHashMap<>();
    Map<String, List<String>> junctions = new LinkedHashMap<>();
    for (DetailedJunction j : takeoff.lines()) {
      for (MetalPart m : j.detail().metal()) {
        FoldedPart.of(takeoff, j, m).ifPresent(f -> {
          String key = f.part() + "\n" + f.words(setup.units());
          parts.putIfAbsent(key, f);
          junctions.computeIfAbsent(key, k -> new ArrayList<>()).add(j.junction().junction().id());
        });
      }
    }
    List<String> keys = parts.keySet().stream().sorted().toList();
    PaperBox room = TitleStrip.room(setup.paper());
    int columns = (int) (room.width() / WIDTH);
    int perSheet = columns * (int) ((room.height() - 12) / HEIGHT);
    int count = Math.max(1, (keys.size() + perSheet - 1) / perSheet);
    List<String> sheets = new ArrayList<>();
    for (int s = 0; s < count; s++) {
      Svg svg = Sheet.begin(setup.paper(), 1, "Folded trims: " + Sheet.models(takeoff), "Profiles of the trims, legs and bends.", STYLE);
      TitleStrip.draw(takeoff, setup, new TitleStrip.Words("Folded trims, " + takeoff.system().name(), "none", s + 1, count), 0, svg);
      svg.text("title", new Vec2(room.left() + 4, room.top() + 8), keys.isEmpty() ? "Nothing to fold" : "Folded trims");
      for (int i = s * perSheet; i < Math.min(keys.size(), (s + 1) * perSheet); i++) {
        int at = i - s * perSheet;
        Vec2 corner = new Vec2(room.left() + 4 + at % columns * WIDTH, room.top() + 12 + (double) (at / columns) * HEIGHT);
        picture(parts.get(keys.get(i)), junctions.get(keys.get(i)), corner, setup, svg);
      }
      sheets.add(svg.close("svg").toString());
    }
    return sheets;
  }

  private static void picture(FoldedPart part, List<String> junctions, Vec2 corner, SheetSetup setup, Svg svg) {
    int most = (int) ((WIDTH - 4) / (2.3 * 0.52));
    svg.text("head", corner.plus(new Vec2(0, 3)), Sheet.cut(part.part() + ", girth " + setup.units().small(part.girthM()), 56, false));
    if (part.problem().isEmpty()) {
      PaperBox place = new PaperBox(corner.u(), corner.v() + 4, corner.u() + WIDTH - 4, corner.v() + 5 + PICTURE);
      new FoldedPicture(part, place, setup.units()).draw(svg);
    }
    double y = Sheet.paragraph(svg, "small", corner.plus(new Vec2(0, 5 + PICTURE + 3)), 3, most, part.words(setup.units()));
    String all = "for " + String.join(", ", junctions.subList(0, Math.min(4, junctions.size())))
        + (junctions.size() > 4 ? " and " + (junctions.size() - 4) + " more" : "");
    svg.text("fine", new Vec2(corner.u(), y), Sheet.cut(all, most, false));
  }
}
