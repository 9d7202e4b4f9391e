package org.seamledger.export.section;

import org.seamledger.detail.Detail;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Svg;
import org.seamledger.quantity.RoofSystem;

/**
 * The section itself on paper: ground, seals, fasteners, sheets, dimensions and numbers of a scene. Each part of the detail is drawn in one
 * group that bears its id.
 *
 * @param attribute by which a part's group bears its id
 */
record SectionFigure(RoofSystem system, Detail detail, SectionCounts counts, Keynotes notes, String attribute) {

  SectionFigure(RoofSystem system, Detail detail, SectionCounts counts) {
    this(system, detail, counts, new Keynotes(), "data-part");
  }

  /** The same without notes, for what is drawn a second time. */
  SectionFigure forEnlargement() {
    return new SectionFigure(system, detail, counts, new Keynotes(), "data-enlarged");
  }

  /** Adds the figure to the drawing; what it can't show is among the notes. */
  void draw(SectionView view, SectionView large, PaperRoom room, Svg svg) {
    svg.open("g", "class", "cut", "data-view", view.extent());
    parts(view, svg);
    view.scene().labels().forEach(l -> notes.add(Keynotes.Group.REST, l.words(), view.paper(l.at())));
    SectionInk.mark(view, room);
    if (view.denominator() >= Enlargement.WANTED) {
      Enlargement.draw(this, view, large, room, svg);
    }
    notes.mark(room);
    new DimensionMarks(view, room, notes).draw(svg);
    notes.draw(room, svg);
    svg.close("g");
  }

  /** Ground, seals, fasteners, sheets. */
  void parts(SectionView view, Svg svg) {
    SectionInk.ground(view, attribute, svg);
    new MetalMarks(view, this).faceParts(svg);
    new SealMarks(view, this).draw(svg);
    new FastenerMarks(view, this).draw(svg);
    new MetalMarks(view, this).draw(svg);
  }
}
