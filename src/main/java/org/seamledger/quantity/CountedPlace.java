package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.detail.On;
import org.seamledger.quantity.layout.LinePiece;

/**
 * Where something lies at a junction: on one face, with its pieces between seams, or along the line as a whole.
 *
 * @param face its id, empty along the line
 * @param pieces between seams; along the line, those of the first face
 * @param seams that end at the line
 */
record CountedPlace(String face, List<LinePiece> pieces, int seams) {

  static List<CountedPlace> of(On on, List<JunctionSide> sides) {
    if (on == On.LINE) {
      return List.of(new CountedPlace("", sides.isEmpty() ? List.of() : sides.get(0).pieces(), sides.isEmpty() ? 0 : sides.get(0).seams()));
    }
    return sides.stream().filter(s -> on == On.EACH_FACE || s.below() == (on == On.FACE_BELOW))
        .map(s -> new CountedPlace(s.face(), s.pieces(), s.seams())).toList();
  }

  /** The pieces that have a width: those that something can be cut for. */
  List<LinePiece> cut() {
    List<LinePiece> cut = new ArrayList<>(pieces);
    cut.removeIf(p -> p.widthM() == 0);
    return cut;
  }
}
