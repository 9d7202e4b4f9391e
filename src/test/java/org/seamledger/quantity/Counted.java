package org.seamledger.quantity;

import java.nio.file.Path;
import java.util.List;
import org.seamledger.progress.Progress;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Details;
import org.seamledger.detail.FixedLines;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.progress.Progress;
import org.seamledger.shacl.Rules;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Takeoff;

/** A model, read, measured and counted. */
record Counted(Takeoff takeoff, List<DetailedJunction> junctions, Quantities quantities) {

  static final Path SAMPLES = Path.of("ifc-samples");

  static Counted of(Path model, RoofSystem system) {
    Takeoff takeoff = Analysis.run(Inputs.ofFiles(List.of(model)), Progress.NONE);
    RoofLayout layout = RoofLayout.of(takeoff.faces(), system, Progress.NONE);
    Details.Result details =
        new Details(Rules.packaged()).choose(takeoff.junctions(), j -> DetailFacts.of(j, layout, system, GuttersAndParapets.NONE));
    return new Counted(takeoff, details.junctions(), Quantities.of(takeoff.faces(), details.junctions(), List.of(), layout, system,
        new FixedLines(Rules.packaged()), Progress.NONE));
  }

  static Counted worked(String name, RoofSystem system) {
    return of(SAMPLES.resolve("worked").resolve(name + ".ifc"), system);
  }

  static RoofSystem workedSystem(String name) {
    return RoofSystem.read(SAMPLES.resolve("worked").resolve(name + ".system.json"));
  }

  List<JunctionQuantities> ofKind(String kind) {
    return junctions.stream().filter(j -> j.junction().kind().equals(kind))
        .map(j -> quantities.byJunction().get(j.junction().junction().id()))
        .toList();
  }

  Detail detail(JunctionQuantities q) {
    return junctions.stream().filter(j -> j.junction().junction().id().equals(q.junction())).findFirst().orElseThrow().detail();
  }

  static int fasteners(JunctionQuantities q, String place) {
    return q.fasteners().stream().filter(f -> f.place().equals(place)).mapToInt(FastenerRow::count).sum();
  }

  static double tapeM(JunctionQuantities q) {
    return q.seals().stream().filter(s -> s.form() == Seal.Form.TAPE && s.run() != Run.PER_LAP && s.run() != Run.PER_SEAM)
        .mapToDouble(SealLine::lengthM).sum();
  }

  /** Beads behind something: what the worked examples count. */
  static double concealedBeadM(JunctionQuantities q) {
    return concealedBeads(q).stream().mapToDouble(SealLine::lengthM).sum();
  }

  static double concealedBeadM3(JunctionQuantities q) {
    return concealedBeads(q).stream().mapToDouble(SealLine::volumeM3).sum();
  }

  private static List<SealLine> concealedBeads(JunctionQuantities q) {
    return q.seals().stream().filter(s -> s.form() == Seal.Form.BEAD && s.exposure() == Seal.Exposure.CONCEALED).toList();
  }
}
