package org.seamledger.export.sheet;

import org.seamledger.geometry.Vec2;

/** An upright place on paper, millimetres, y downwards. */
public record PaperBox(double left, double top, double right, double bottom) {

  public double width() {
    return right - left;
  }

  public double height() {
    return bottom - top;
  }

  public Vec2 middle() {
    return new Vec2((left + right) / 2, (top + bottom) / 2);
  }

  /** Smaller by a margin on every side. */
  public PaperBox inset(double margin) {
    return new PaperBox(left + margin, top + margin, right - margin, bottom - margin);
  }

  public boolean has(Vec2 p) {
    return p.u() >= left && p.u() <= right && p.v() >= top && p.v() <= bottom;
  }
}
