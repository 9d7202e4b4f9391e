package org.seamledger.export.section;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.seamledger.detail.Detail;
import org.seamledger.detail.Fastening;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;
import org.seamledger.export.wording.FastenerText;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.RoofSystem;

/** Screws where the detail has them, those of one row with one label. */
final class FastenerMarks {

  private final SectionView view;
  private final RoofSystem system;
  private final Detail detail;
  private final List<FastenerRow> rows;
  private final SectionLabels labels;

  FastenerMarks(SectionView view, RoofSystem system, Detail detail, List<FastenerRow> rows, SectionLabels labels) {
    this.rows = rows;
    this.view = view;
    this.system = system;
    this.detail = detail;
    this.labels = labels;
  }

  void draw(Svg svg) {
    for (Fastening f : detail.fastenings()) {
      String words = words(f);
      List<SectionScene.Screw> screws = view.scene().screwPlaces().getOrDefault(f.id(), List.of());
      if (screws.isEmpty()) {
        labels.unseen(words);
        continue;
      }
      screws.forEach(s -> screw(s, svg));
      SectionScene.Screw shown =
          screws.stream().max(Comparator.comparingDouble(s -> detail.fastenings().indexOf(f) % 2 == 0 ? s.head().u() : -s.head().u()))
              .orElseThrow();
      labels.add(words, shown.head());
    }
  }

  private String words(Fastening f) {
    String types = rows.stream().filter(r -> r.place().equals(f.place())).map(r -> FastenerText.of(r)).distinct()
        .collect(Collectors.joining("; "));
    return "fasteners, " + f.place() + ": " + (types.isEmpty() ? f.type().label() : types) + ", spacing at most "
        + system.spacing(f.spacing()) + (f.throughTape() ? ", through the tape" : "") + (f.exposed() ? ", EXPOSED" : "");
  }

  private void screw(SectionScene.Screw screw, Svg svg) {
    Vec2 head = view.paper(screw.head());
    Vec2 tip = view.paper(screw.point());
    Vec2 along = tip.minus(head).times(1 / Math.max(1e-9, head.distance(tip)));
    Vec2 side = along.left();
    Vec2 top = head.minus(along.times(1.5));
    svg.line("axis", top.minus(along.times(3)), tip.plus(along.times(2.5)));
    svg.line("shank", head, tip);
    svg.polygon("screw-head",
        List.of(head.plus(side.times(1.5)), head.minus(side.times(1.5)), top.minus(side.times(0.8)), top.plus(side.times(0.8))));
  }
}
