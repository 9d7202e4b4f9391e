package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.Fastening;
import org.seamledger.detail.Joins;
import org.seamledger.detail.Run;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.formula.FastenerLine;
import org.seamledger.quantity.layout.LinePiece;

/** Counts the fasteners of one junction, line by line. */
final class FastenerCounter {

  private final CountedLine line;
  private final RoofSystem system;
  private final FastenerLengths lengths;
  private final StepText text;
  private final List<String> steps;
  private final List<FastenerRow> rows = new ArrayList<>();

  FastenerCounter(CountedLine line, StepText text, List<String> steps) {
    this.line = line;
    this.system = line.system();
    this.lengths = new FastenerLengths(line.system());
    this.text = text;
    this.steps = steps;
  }

  List<FastenerRow> rows() {
    return rows;
  }

  void count(Fastening fastening) {
    Measure spacing = system.spacing(fastening.spacing());
    for (CountedPlace place : line.places(fastening.on())) {
      for (int i = 0; i < Math.max(1, fastening.lines()); i++) {
        switch (fastening.run()) {
          case PER_PIECE -> pieces(fastening, place, spacing);
          case RING -> ring(fastening, place, line.ringM(fastening.id()), spacing);
          case COLLAR -> ring(fastening, place, line.collarM(), spacing);
          case PER_SEAM, PER_LAP, ONCE, AT_INTERVALS, BETWEEN_INTERVALS -> {
            int count = fastening.run() == Run.PER_SEAM ? place.seams() : fastening.run() == Run.PER_LAP ? line.lapped("", 0).laps() : 1;
            add(fastening, place, count, 0, 1, text.fasteners(fastening.place(), place, count));
          }
          case CONTINUOUS, AT_SPACING -> {
            FastenerLine open = open(line.lengthM(fastening.id()), spacing);
            add(fastening, place, open.count(), open.spacingM(), open.coverage(reach()),
                text.line(fastening.place(), place, line.lengthM(fastening.id()), spacing, open.count()));
          }
        }
      }
    }
  }

  private void add(Fastening f, CountedPlace place, int count, double spacingM, double coverage, String step) {
    add(f, place, count, spacingM, coverage, false, step);
  }

  /** @param fixed whether the panels behind are fixed by this line */
  private void add(Fastening f, CountedPlace place, int count, double spacingM, double coverage, boolean fixed, String step) {
    Joins joins = fixed ? Joins.PANEL_DECK : f.joins();
    FastenerType type = fixed ? FastenerType.DECK_SCREW : f.type();
    String id = line.junction().id();
    double slot = !f.slides() ? 0 : place.face().isEmpty() ? line.fixity().slotM(id) : line.fixity().slotM(id, place.face());
    rows.add(new FastenerRow(f.place(), f.id(), place.face(), count, spacingM, f.throughTape(), f.throughTape() ? coverage : 1, joins, type,
        lengths.lengthM(f, joins, type), slot, f.exposed()));
    steps.add(step);
  }

  private FastenerLine open(double length, Measure spacing) {
    return FastenerLine.open(length, spacing.value(), system.fasteners().endDistance().value(), system.fasteners().minimumPerPiece());
  }

  private double reach() {
    return system.tape().reach().value();
  }

  private void pieces(Fastening f, CountedPlace place, Measure spacing) {
    List<LinePiece> fixed = new ArrayList<>();
    List<LinePiece> others = new ArrayList<>();
    for (LinePiece p : place.cut()) {
      (f.fixes() && line.fixity().fixes(line.junction().id(), place.face(), p) ? fixed : others).add(p);
    }
    if (fixed.isEmpty() || !others.isEmpty()) {
      pieces(f, place, spacing, others, false);
    }
    if (!fixed.isEmpty()) {
      pieces(f, place, spacing, fixed, true);
    }
  }

  private void pieces(Fastening f, CountedPlace place, Measure spacing, List<LinePiece> some, boolean fixed) {
    int count = 0;
    double widest = 0;
    double pressed = 0;
    double total = 0;
    TreeMap<Integer, Integer> piecesByCount = new TreeMap<>(Comparator.reverseOrder());
    for (LinePiece piece : some) {
      FastenerLine each = open(piece.lengthM(), spacing);
      count += each.count();
      widest = Math.max(widest, each.spacingM());
      pressed += each.coverage(reach()) * piece.lengthM();
      total += piece.lengthM();
      piecesByCount.merge(each.count(), 1, Integer::sum);
    }
    add(f, place, count, widest, total == 0 ? 1 : pressed / total, fixed,
        text.piecewise(f.place(), place, spacing, piecesByCount, count) + (fixed ? ", the panels' fixed line: into the deck" : ""));
  }

  private void ring(Fastening f, CountedPlace place, double perimeterM, Measure spacing) {
    FastenerLine closed = FastenerLine.closed(perimeterM, spacing.value());
    add(f, place, closed.count(), closed.spacingM(), closed.coverage(reach()),
        text.ring(f.place(), place, perimeterM, spacing, closed.count()));
  }
}
