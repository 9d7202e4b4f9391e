package org.seamledger.ifc.entity;

import java.util.List;
import java.util.Locale;
import org.seamledger.finding.UnreadableModelException;

/**
 * The schemas that are read, and the one place that knows where their attributes differ.
 *
 * <p>Positions count from 0 in the order of ISO 10303-21 external mapping: inherited attributes first. Of the entities used here the
 * schemas mostly appended attributes at the end; what moved is listed below, everything else has the same position in all three.
 *
 * <table>
 * <caption>What moved</caption>
 * <tr><th>entity</th><th>IFC2X3</th><th>IFC4</th><th>IFC4X3</th></tr>
 * <tr><td>IfcBuildingElementProxy at 8</td><td>CompositionType</td><td>PredefinedType</td><td>PredefinedType</td></tr>
 * <tr><td>IfcPlate, IfcWall, IfcMember at 8</td><td>-</td><td>PredefinedType</td><td>PredefinedType</td></tr>
 * <tr><td>IfcTriangulatedFaceSet at 1, 2</td><td>-</td><td>Normals, Closed</td><td>Closed, Normals</td></tr>
 * <tr><td>IfcTriangulatedFaceSet at 4</td><td>-</td><td>NormalIndex (first edition), PnIndex</td><td>PnIndex</td></tr>
 * <tr><td>IfcRelDefinesByProperties at 5</td><td>a set</td><td>a set, or several</td><td>a set, or several</td></tr>
 * <tr><td>IfcBezierCurve, IfcRationalBezierCurve</td><td>yes</td><td>-</td><td>-</td></tr>
 * <tr><td>IfcRelNests at 4, 5</td><td>whole, parts</td><td>whole, parts</td><td>whole, parts</td></tr>
 * </table>
 */
public enum IfcSchema {
  /** Editions before IFC2X3: what is used here of them has the same attributes in the same places (from memory of those editions). */
  IFC2X, IFC2X2,
  /** The three that the table tells apart. */
  IFC2X3, IFC4, IFC4X3;

  /**
   * The schema that a header names.
   *
   * @param identifiers FILE_SCHEMA's, such as {@code IFC4X3_ADD2}
   */
  static IfcSchema of(List<String> identifiers, String file) {
    for (String identifier : identifiers) {
      String name = identifier.toUpperCase(Locale.ROOT).trim();
      if (name.startsWith("IFC2X3")) {
        return IFC2X3;
      }
      if (name.startsWith("IFC2X2")) {
        return IFC2X2;
      }
      if (name.equals("IFC2X") || name.startsWith("IFC2X_")) {
        return IFC2X;
      }
      if (name.startsWith("IFC4X3")) {
        return IFC4X3;
      }
      if (name.equals("IFC4") || name.startsWith("IFC4_") || name.startsWith("IFC4 ")) {
        return IFC4;
      }
    }
    throw new UnreadableModelException(file, 0, 0, "schema IFC2X, IFC2X2, IFC2X3, IFC4 or IFC4X3 in FILE_SCHEMA",
        identifiers.isEmpty() ? "none" : String.join(", ", identifiers));
  }

  /** Whether attribute 8 of a product of this class is its PredefinedType (or the like, such as ShapeType). */
  public boolean hasPredefinedType(String keyword) {
    return compareTo(IFC4) >= 0 || switch (keyword) {
      case "IFCSLAB", "IFCROOF", "IFCCOVERING" -> true;
      default -> false;
    };
  }
}
