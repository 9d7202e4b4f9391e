package org.seamledger.export.plan;

import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/** Fields of about 50 mm by which a place on a sheet is found: letters down, numbers across, between frame and edge (ISO 5457). */
final class PlanGrid {

  private static final double FIELD = 50;
  private static final String LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";

  private final PaperBox frame;
  private final int columns;
  private final int rows;

  PlanGrid(PaperBox frame) {
    this.frame = frame;
    columns = (int) Math.max(1, Math.round(frame.width() / FIELD));
    rows = (int) Math.max(1, Math.round(frame.height() / FIELD));
  }

  /** Such as {@code C4}. */
  String field(Vec2 p) {
    int column = (int) Math.max(0, Math.min(columns - 1, Math.floor((p.u() - frame.left()) / frame.width() * columns)));
    int row = (int) Math.max(0, Math.min(rows - 1, Math.floor((p.v() - frame.top()) / frame.height() * rows)));
    return LETTERS.charAt(row) + Integer.toString(column + 1);
  }

  void draw(Svg svg) {
    for (int i = 0; i < columns; i++) {
      double x = frame.left() + frame.width() * (i + 0.5) / columns;
      svg.turned("grid", new Vec2(x, frame.top() - 2), 0, Integer.toString(i + 1));
      svg.turned("grid", new Vec2(x, frame.bottom() + 4), 0, Integer.toString(i + 1));
      double edge = frame.left() + frame.width() * (i + 1) / columns;
      svg.line("rule", new Vec2(edge, frame.top()), new Vec2(edge, frame.top() - 4));
      svg.line("rule", new Vec2(edge, frame.bottom()), new Vec2(edge, frame.bottom() + 4));
    }
    for (int i = 0; i < rows; i++) {
      double y = frame.top() + frame.height() * (i + 0.5) / rows;
      svg.turned("grid", new Vec2(frame.left() - 3, y + 0.9), 0, LETTERS.substring(i, i + 1));
      svg.turned("grid", new Vec2(frame.right() + 3, y + 0.9), 0, LETTERS.substring(i, i + 1));
      double edge = frame.top() + frame.height() * (i + 1) / rows;
      svg.line("rule", new Vec2(frame.left(), edge), new Vec2(frame.left() - 4, edge));
      svg.line("rule", new Vec2(frame.right(), edge), new Vec2(frame.right() + 4, edge));
    }
  }
}
