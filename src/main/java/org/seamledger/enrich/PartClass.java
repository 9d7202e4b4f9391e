package org.seamledger.enrich;

import org.seamledger.detail.FastenerType;
import org.seamledger.quantity.FastenerRow;

/**
 * What a part is in the standard's classes.
 *
 * @param entity the class, as the schemas write it
 * @param word of its predefined types; schemas that don't have it take {@code USERDEFINED}, and the object type says what is meant
 * @param objectType in words
 * @param lengthM nominal length of a fastener; 0 for what has none
 */
record PartClass(String entity, String word, String objectType, double lengthM) {

  static final PartClass FLASHING = new PartClass("IfcDiscreteAccessory", "FLASHING", "flashing", 0);
  static final PartClass FILLER = new PartClass("IfcDiscreteAccessory", "FILLER", "filler", 0);

  static PartClass of(FastenerRow row) {
    return new PartClass("IfcMechanicalFastener", word(row.type()), row.type().label(), row.lengthM());
  }

  /** Words of IfcMechanicalFastenerTypeEnum. */
  private static String word(FastenerType type) {
    return switch (type) {
      case RIVET -> "RIVET";
      case WALL_ANCHOR -> "ANCHORBOLT";
      case WEDGE -> "USERDEFINED";
      case STITCH_SCREW, DECK_SCREW, PANCAKE_SCREW -> "SCREW";
    };
  }
}
