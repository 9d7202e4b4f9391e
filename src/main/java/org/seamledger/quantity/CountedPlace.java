package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.seamledger.detail.On;
import org.seamledger.quantity.layout.LinePiece;

/**
 * Where something lies at a junction: on one face, with its pieces between seams, or along the line as a whole.
 *
 * @param face its id, empty along the line
 * @param cut the pieces between seams that have a width: those that something can be cut for; along the line, those of the first face
 * @param seams that end at the line
 */
record CountedPlace(String face, List<LinePiece> cut, int seams) {

  /** Those of a line, by what lies there. */
  static Map<On, List<CountedPlace>> of(List<JunctionSide> sides) {
    List<CountedPlace> each = new ArrayList<>();
    List<CountedPlace> below = new ArrayList<>();
    List<CountedPlace> above = new ArrayList<>();
    for (JunctionSide side : sides) {
      CountedPlace place = new CountedPlace(side.face(), side.cut(), side.seams());
      each.add(place);
      (side.below() ? below : above).add(place);
    }
    CountedPlace line = each.isEmpty() ? new CountedPlace("", List.of(), 0) : new CountedPlace("", each.get(0).cut(), each.get(0).seams());
    Map<On, List<CountedPlace>> places = new EnumMap<>(On.class);
    for (On on : On.values()) {
      places.put(on, on == On.LINE ? List.of(line) : on == On.EACH_FACE ? each : on == On.FACE_BELOW ? below : above);
    }
    return places;
  }
}
