package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** Labels in two columns beside a section, each with a leader to what it names; and the words for what can't be seen in it. */
public final class SectionLabels {

  private static final double LEFT_LABELS = 12;

  private static final double RIGHT_LABELS = 334;

  private static final double LABEL_TOP = 36;

  private static final double LABEL_BOTTOM = 222;

  private static final double LINE = 3.6;

  private static final int COLUMNS = 42;

  /** A label's lines and the place on paper that it points to. */
  private record Pointed(List<String> words, Vec2 at) {
  }

  private final SectionView view;
  private final List<Pointed> labels = new ArrayList<>();
  private final List<String> unseen = new ArrayList<>();

  public SectionLabels(SectionView view) {
    this.view = view;
  }

  /** Names a place of the section, millimetres at full size. */
  public void add(String words, Vec2 at) {
    labels.add(new Pointed(Sheet.wrapped(words, COLUMNS), view.paper(at)));
  }

  /** Names a part of the detail that no place of the section shows. */
  void unseen(String words) {
    unseen.add(words);
  }

  public List<String> unseen() {
    return unseen;
  }

  /** Labels in two columns beside the section, in the order of the places they point to, so that leaders don't cross. */
  public void draw(Svg svg) {
    List<Pointed> left = new ArrayList<>();
    List<Pointed> right = new ArrayList<>();
    labels.sort(Comparator.comparingDouble(l -> l.at.u()));
    List<Pointed> seen = new ArrayList<>();
    for (Pointed l : labels) {
      if (seen.stream().noneMatch(s -> s.words.equals(l.words))) {
        seen.add(l);
      }
    }
    int half = seen.stream().mapToInt(s -> s.words.size() + 1).sum() / 2;
    int filled = 0;
    for (Pointed l : seen) {
      (filled < half ? left : right).add(l);
      filled += l.words.size() + 1;
    }
    column(left, LEFT_LABELS, true, svg);
    column(right, RIGHT_LABELS, false, svg);
  }

  private static void column(List<Pointed> column, double x, boolean left, Svg svg) {
    column.sort(Comparator.comparingDouble(l -> l.at.v()));
    double total = column.stream().mapToDouble(SectionLabels::height).sum();
    double spare = Math.max(0, LABEL_BOTTOM - LABEL_TOP - total);
    double y = LABEL_TOP;
    for (Pointed l : column) {
      double rest = total;
      double wanted = l.at.v() - height(l) / 2;
      double slack = Math.min(spare, Math.max(0, wanted - y));
      y += slack;
      spare -= slack;
      total = rest - height(l);
      pointed(l, x, y, left, svg);
      y += height(l);
    }
  }

  private static double height(Pointed l) {
    return l.words.size() * LINE + 2.4;
  }

  private static void pointed(Pointed l, double x, double y, boolean left, Svg svg) {
    svg.open("g", "class", "pointed");
    double widest = l.words.stream().mapToInt(String::length).max().orElse(0) * 1.58;
    for (int i = 0; i < l.words.size(); i++) {
      svg.text("label", new Vec2(x, y + LINE * (i + 1)), l.words.get(i));
    }
    double level = y + LINE * 0.72;
    Vec2 start = new Vec2(left ? x + Math.min(widest, l.words.get(0).length() * 1.58) + 1 : x - 1, level);
    Vec2 elbow = new Vec2(left ? Math.max(start.u(), x + 68) + 2 : x - 4, level);
    svg.polyline("leader", List.of(start, elbow, l.at));
    svg.empty("circle", "class", "dot", "cx", Svg.number(l.at.u()), "cy", Svg.number(l.at.v()), "r", "0.5");
    svg.close("g");
  }
}
