package org.seamledger.samples;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.seamledger.detail.KindedJunction;
import org.seamledger.detail.Kinds;
import org.seamledger.element.Building;
import org.seamledger.geometry.Tolerance;
import org.seamledger.junction.Junction;
import org.seamledger.junction.JunctionFinder;
import org.seamledger.progress.Progress;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofBuilder;
import org.seamledger.roof.SurfaceLimits;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Takeoff;

/** The program as the tests of this package use it. */
final class Pipeline {

  /** A junction line. */
  record Line(String kind, double lengthM) {
  }

  private static final Rules RULES = Rules.packaged();

  private Pipeline() {
  }

  /** The whole program: the house is written as a file, and the file is analysed. */
  static List<Line> lines(House house, Form form) {
    return lines(analyse(house, form).junctions());
  }

  static Takeoff analyse(House house, Form form) {
    try {
      Path file = Files.createTempFile("house", ".ifc");
      try {
        return analyse(IfcWriter.write(house, form, file));
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The whole program on a file. */
  static List<Line> lines(Path file) {
    return lines(analyse(file).junctions());
  }

  static Takeoff analyse(Path file) {
    return Analysis.run(Inputs.ofFiles(List.of(file)), Progress.NONE);
  }

  private static List<Line> lines(List<KindedJunction> junctions) {
    return junctions.stream().map(j -> new Line(j.kind(), j.junction().lengthM())).toList();
  }

  /** All but the reading of a file. */
  static List<Line> lines(Building building) {
    Roof roof = RoofBuilder.build(building, Tolerance.DEFAULT, SurfaceLimits.DEFAULT, Progress.NONE);
    List<Junction> junctions = JunctionFinder.find(roof, Progress.NONE);
    return lines(Kinds.classify(junctions, RULES, Progress.NONE).junctions());
  }
}
