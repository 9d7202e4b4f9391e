package org.seamledger.samples;

import java.util.List;
import org.seamledger.detail.Kinds;
import org.seamledger.element.Building;
import org.seamledger.geometry.Tolerance;
import org.seamledger.junction.Junction;
import org.seamledger.junction.JunctionFinder;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofBuilder;
import org.seamledger.shacl.Rules;

/** The program as the tests of this package use it. */
final class Pipeline {

  /** A junction line. */
  record Line(String kind, double lengthM) {
  }

  private static final Rules RULES = Rules.packaged();

  private Pipeline() {
  }

  /** From the text of a file on. */
  static List<Line> lines(House house, Form form) {
    return lines(HouseBuilding.of(house, form.cut()));
  }

  /** All but the reading of a file. */
  static List<Line> lines(Building building) {
    Roof roof = RoofBuilder.build(building, Tolerance.DEFAULT);
    List<Junction> junctions = JunctionFinder.find(roof);
    return Kinds.classify(junctions, RULES).junctions().stream().map(j -> new Line(j.kind(), j.junction().lengthM())).toList();
  }
}
