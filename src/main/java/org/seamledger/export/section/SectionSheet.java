package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.KeyPlan;
import org.seamledger.export.sheet.Paper;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.ServedPlaces;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.export.sheet.Svg;
import org.seamledger.export.sheet.TitleStrip;
import org.seamledger.export.wording.CountText;
import org.seamledger.export.wording.OverrideText;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.takeoff.Takeoff;

/** The sheet of a section: title, figure, list of parts, legend, water path and source, title block. */
public final class SectionSheet {

  private static final double TITLE = 19;

  private final SectionSubject subject;
  private final SheetSetup setup;
  private final DetailedJunction detailed;
  private final List<DetailedJunction> served;
  private final Detail detail;
  private final PaperBox room;
  private final PaperBox column;
  private final PaperBox place;

  private SectionSheet(SectionSubject of, SheetSetup setup, List<DetailedJunction> served) {
    this.subject = counted(of);
    this.served = List.copyOf(served);
    this.setup = setup;
    this.detailed = subject.line();
    this.detail = this.detailed.detail();
    room = TitleStrip.room(setup.paper());
    double width = width(setup.paper());
    column = new PaperBox(room.right() - width, room.top() + TITLE, room.right() - 3, room.bottom() - 2);
    place = new PaperBox(room.left() + 2, room.top() + TITLE, column.left() - 4, room.bottom() - (setup.paper().isSmall() ? 15.5 : 11));
  }

  /** What nothing is counted of is not drawn: plates where all panels are fixed to the deck, a joint or laps on a short run. */
  private static SectionSubject counted(SectionSubject of) {
    DetailedJunction j = of.line();
    JunctionQuantities counted = of.counted();
    Detail drawn = j.detail().only(part -> counted.metal().stream().anyMatch(m -> m.part().equals(part.part()) && m.pieces() > 0),
        seal -> counted.seals().stream().anyMatch(s -> s.form() == seal.form() && s.place().equals(seal.place()) && s.lengthM() > 0),
        line -> counted.fasteners().stream().anyMatch(f -> f.id().equals(line.id()) && f.count() > 0));
    DetailedJunction line = new DetailedJunction(j.junction(), drawn, j.decided());
    return new SectionSubject(of.sheet(), of.system(), line, counted, of.cut(), of.elements());
  }

  private static double width(Paper paper) {
    return paper.isSmall() ? 98 : 112;
  }

  /** The sheet as SVG text; the same takeoff and setup give the same text. */
  public static String draw(Takeoff takeoff, SheetSetup setup, DetailedJunction detailed) {
    return draw(SectionSubject.of(takeoff, detailed), setup);
  }

  static String draw(SectionSubject subject, SheetSetup setup) {
    return new SectionSheet(subject, setup, List.of()).drawn();
  }

  /**
   * The same as the sheet of a detail in a larger set: it names and marks the places that the detail serves, as far as there is room.
   *
   * @param served junctions with this detail, the first of them the one that is cut
   */
  public static String inSet(Takeoff takeoff, SheetSetup setup, List<DetailedJunction> served) {
    return new SectionSheet(SectionSubject.of(takeoff, served.get(0)), setup, served).drawn();
  }

  private String drawn() {
    SectionCut cut = subject.cut();
    PaperBox left = new PaperBox(place.left(), place.top(), place.right() - Enlargement.width(place), place.bottom());
    SectionView view = SectionView.fit(subject.system(), detailed, cut, setup.units(), place);
    if (view.denominator() >= Enlargement.FROM && Enlargement.corner(view).isEmpty() && Enlargement.centre(view.scene()).isPresent()) {
      view = SectionView.fit(subject.system(), detailed, cut, setup.units(), left);
    }
    String id = detailed.junction().junction().id();
    String title = "Section at " + id + ": " + detail.title();
    Svg svg = Sheet.begin(setup.paper(), view.denominator(), title,
        "Section square to the line of junction " + id + ", " + detailed.junction().type().label(), SectionStyle.style());
    SectionStyle.hatches(svg);
    SectionCounts counts = SectionCounts.of(subject, setup.units());
    SectionFigure figure = new SectionFigure(subject.system(), detail, counts);
    SectionView large = SectionView.at(subject.system(), detailed, cut, setup.units(), place, 1);
    figure.draw(view, large, new PaperRoom(place), svg);
    title(id, svg);
    double words = words(svg);
    svg.line("rule", new Vec2(column.left() - 2, room.top() + TITLE - 1), new Vec2(column.left() - 2, room.bottom()));
    figure.notes().list(new PaperBox(column.left(), column.top(), column.right(), words - 3), svg);
    legend(svg);
    String scale = Sheet.scale(view.denominator());
    KeyPlan key = TitleStrip.draw(subject.sheet(), setup,
        served.isEmpty() ? new TitleStrip.Words(detail.title(), scale, 1, 1) : TitleStrip.Words.inSet(detail.title(), scale),
        view.denominator(), svg);
    if (served.isEmpty()) {
      key.mark(detailed.junction().junction().path(), svg);
    } else {
      served.forEach(j -> key.mark(j.junction().junction().path(), svg));
      double sum = served.stream().mapToDouble(j -> j.junction().junction().lengthM()).sum();
      ServedPlaces.draw("Serves " + CountText.of(served.size(), "place") + ", " + setup.units().length(sum), served.stream()
          .map(j -> j.junction().junction().id() + "  " + setup.units().length(j.junction().junction().lengthM())).toList(), setup, svg);
    }
    return svg.close("svg").toString();
  }

  private void title(String id, Svg svg) {
    double left = room.left() + 4;
    boolean isCommon = detail.source().contains("common practice");
    int most = (int) ((room.width() - 8 - (isCommon ? 46 : 0)) / (5 * 0.62));
    svg.text(detail.title().length() > most ? "title long" : "title", new Vec2(left, room.top() + 7),
        Sheet.cut(detail.title(), (int) (most * 1.3), false));
    int columns = (int) ((room.width() - 8 - (isCommon ? 46 : 0)) / (2.9 * 0.57));
    svg.text("subtitle", new Vec2(left, room.top() + 12), Sheet.cut("Junction " + id + " · " + detailed.junction().type().label() + " · "
        + setup.units().length(detailed.junction().junction().lengthM()) + " · " + subject.elements() + " · " + subject.sheet().models(),
        columns,
        false));
    svg.text("subtitle", new Vec2(left, room.top() + 16.4), Sheet.cut("Detail " + detail.id()
        + (detailed.decided().isEmpty() ? "" : " · " + OverrideText.MARK) + " · " + subject.system().name()
        + " · cut square to the line, drawn from the numbers applied", columns, false));
    if (isCommon) {
      svg.empty("rect", "class", "mark", "x", Svg.number(room.right() - 46), "y", Svg.number(room.top() + 3), "width", "43", "height",
          "7.4");
      svg.text("mark-text", new Vec2(room.right() - 43, room.top() + 7.9), "COMMON PRACTICE");
    }
  }

  /** Water path and source at the foot of the column; gives y above them. */
  private double words(Svg svg) {
    int columns = (int) (column.width() / (2.3 * 0.52));
    String path = detail.waterPath().isEmpty() ? ""
        : "Without any sealant: " + detail.waterPath() + (detail.metalFirst() ? "" : " Here metal alone is not enough.");
    String source = detail.source().isEmpty() ? "" : "Source: " + detail.source() + ". Replace it by the panel maker's tested detail.";
    String apart = "Sheets that touch are drawn apart; sheet thickness is not to scale.";
    double lines = 0;
    List<String> all = java.util.stream.Stream.of(path, source, apart).filter(w -> !w.isEmpty()).toList();
    for (String words : all) {
      lines += Sheet.wrapped(words, columns).size() * 3 + 1;
    }
    double y = column.bottom() - lines + 2;
    double top = y - 3;
    for (String words : all) {
      y = Sheet.paragraph(svg, words.equals(path) ? "small" : "fine", new Vec2(column.left(), y), 3, columns, words) + 1;
    }
    return top;
  }

  private void legend(Svg svg) {
    String[][] items = {{"tape", "tape, as laid, before it is pressed by " + subject.system().tape().compression()},
        {"soft", "non-curing sealant"}, {"bead", "bead of gun sealant; a dashed ring: exposed"}, {"deck-key", "deck"},
        {"wall", "wall, curb, fascia"}, {"metal", "metal of the detail"}, {"panel", "panel"}, {"seam", "top of the seams, beyond the cut"},
        {"underlayment", "underlayment"}, {"clip", "clip, beyond the cut"}};
    double x = place.left() + 2;
    double y = place.bottom() + 4;
    // On small paper there is no room for the last two, which the list beside names.
    int shown = setup.paper().isSmall() ? items.length - 2 : items.length;
    for (int i = 0; i < shown; i++) {
      double width = 11 + items[i][1].length() * 2.25 * 0.56 + 4;
      if (x + width > place.right()) {
        x = place.left() + 2;
        y += 4.4;
      }
      if (i < 5) {
        svg.empty("rect", "class", items[i][0], "x", Svg.number(x), "y", Svg.number(y - 2.4), "width", "8", "height", "3");
      } else {
        svg.line(items[i][0], new Vec2(x, y - 0.9), new Vec2(x + 8, y - 0.9));
      }
      svg.text("fine", new Vec2(x + 10, y), items[i][1]);
      x += width;
    }
  }
}
