package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.List;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Facts;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.layout.CrossLine;
import org.seamledger.quantity.physics.Thermal;
import org.seamledger.quantity.system.FixedAt;
import org.seamledger.roof.RoofFace;

/**
 * Lines within faces at which panels are divided that would be too long for the roof system: what {@link RoofLayout} laid, as lines for the
 * rules. They end no face, and so are none of its edges; the rules say which are end laps and which are step joints.
 */
public final class PanelJoints {

  private PanelJoints() {
  }

  /** All of them, face by face, from the lowest and the left. */
  public static List<Junction> of(List<RoofFace> faces, RoofLayout layout, RoofSystem system) {
    List<Junction> joints = new ArrayList<>();
    for (RoofFace face : faces) {
      for (CrossLine line : layout.face(face.id()).crossLines()) {
        joints.add(joint(face, line, system));
      }
    }
    return joints;
  }

  private static Junction joint(RoofFace face, CrossLine line, RoofSystem system) {
    List<Vec3> path = List.of(line.left(), line.right());
    return new Junction("", path, List.of(face.id()), face.elements(), Facts.builder()
        .word("against", "panel").count("faceCount", 1).number("inclinationDegrees", 0).number("obliquityDegrees", 90)
        .number("slopeDegrees", face.slopeDegrees()).number("minSlopeDegrees", face.slopeDegrees())
        .number("runM", line.runM()).number("runMovementM", movementM(line.runM(), system))
        .number("runGapM", system.panel().movementGap().value()).number("longestPieceM", system.panel().longest().value()).build())
        .identified();
  }

  /** How far the free end of a panel of this length moves: all of its change of length, or half where it is fixed in the middle. */
  static double movementM(double lengthM, RoofSystem system) {
    double range = system.site().highestMetal().value() - system.site().lowestMetal().value();
    boolean middle = system.panel().fixedAt() == FixedAt.MIDDLE;
    return Thermal.movementM(system.panel().metal(), middle ? lengthM / 2 : lengthM, range);
  }
}
