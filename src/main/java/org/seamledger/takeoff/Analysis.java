package org.seamledger.takeoff;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import org.seamledger.detail.Decisions;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Details;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.FixedLines;
import org.seamledger.detail.KindedJunction;
import org.seamledger.detail.Kinds;
import org.seamledger.drainage.DrainageTrace;
import org.seamledger.element.Building;
import org.seamledger.finding.Finding;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.geometry.DegenerateGeometryException;
import org.seamledger.junction.Junction;
import org.seamledger.junction.JunctionFinder;
import org.seamledger.junction.ModelledFinder;
import org.seamledger.junction.NodeFinder;
import org.seamledger.junction.PerimeterLaw;
import org.seamledger.node.KindedNode;
import org.seamledger.node.NodeKinds;
import org.seamledger.progress.Aside;
import org.seamledger.progress.Progress;
import org.seamledger.quantity.BelowRoof;
import org.seamledger.quantity.DetailFacts;
import org.seamledger.quantity.PanelJoints;
import org.seamledger.quantity.Quantities;
import org.seamledger.quantity.RoofLayout;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.GuttersAndParapets;
import org.seamledger.quantity.SystemFormatException;
import org.seamledger.roof.CoverageCheck;
import org.seamledger.roof.ElementCoverage;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofBuilder;
import org.seamledger.roof.SurfaceLimits;
import org.seamledger.sequence.JobSequence;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Rules;

/** The whole program: from models to a takeoff. */
public final class Analysis {

  private Analysis() {
  }

  /**
   * Runs every stage in its order. Pure: the same inputs give an equal takeoff.
   *
   * @throws org.seamledger.finding.UnreadableModelException where a model can't be read
   * @throws UnusableFileException where the shapes or the roof system can't be used
   */
  public static Takeoff run(Inputs inputs, Progress progress) {
    try {
      return stages(inputs, progress);
    } catch (BrokenRulesException e) {
      // Some mistakes in the rules show only when a detail is made of them.
      throw new UnusableFileException(e);
    } catch (DegenerateGeometryException e) {
      throw new UnreadableModelException(String.join(" + ", inputs.names()), 0, 0, "geometry that can be computed with", e.getMessage());
    }
  }

  private static Takeoff stages(Inputs inputs, Progress progress) {
    RoofSystem system = system(inputs);
    try (Aside<Rules> loading = Aside.of(() -> rules(inputs))) {
      Building building = read(inputs, loading, Stage.READING.of(progress));
      return stages(inputs, system, building, loading.get(), progress);
    }
  }

  private static Takeoff stages(Inputs inputs, RoofSystem system, Building building, Rules rules, Progress progress) {
    Roof roof = RoofBuilder.build(building, inputs.tolerance(), SurfaceLimits.DEFAULT, Stage.ROOF.of(progress));
    List<ElementCoverage> coverage = CoverageCheck.of(building, roof);
    List<Junction> junctions = JunctionFinder.find(roof, Stage.JUNCTIONS.of(progress));
    ModelledFinder.Result modelled = ModelledFinder.find(junctions, building.flashings(), inputs.tolerance().flashingM());
    DrainageTrace drainage = DrainageTrace.of(roof, junctions, modelled.gutters(junctions));
    Kinds.Result byShapes = Kinds.classify(junctions, rules, Stage.KINDS.of(progress));
    RoofLayout layout = RoofLayout.of(roof.faces(), system, Stage.LAYOUT.of(progress));
    GuttersAndParapets around = GutterAndParapetFinder.of(building, junctions, modelled.byJunction());
    Kinds kinds = new Kinds(rules);
    Details details = new Details(rules);
    Details.Result byRules = details.choose(byShapes.junctions(), j -> DetailFacts.of(j, layout, system, around),
        Stage.DETAILS.of(progress)).with(byShapes.findings());
    Details.Result decided =
        Decisions.apply(inputs.decisions(), byRules, kinds, details, j -> DetailFacts.of(j, layout, system, around));
    NodeKinds nodeKinds = new NodeKinds(rules);
    List<KindedNode> nodes = nodeKinds.classify(
        NodeFinder.find(junctions, inputs.tolerance().gapM(), Progress.NONE), decided.junctions(), roof.faces(), Stage.NODES.of(progress));
    Details.Result joints =
        joints(PanelJoints.of(roof.faces(), layout, system), rules, details, j -> DetailFacts.of(j, layout, system, around));
    List<DetailedJunction> lines = Stream.concat(decided.junctions().stream(), joints.junctions().stream()).toList();
    Quantities quantities = Quantities.of(roof.faces(), lines, nodes, layout, system, new FixedLines(rules),
        Stage.QUANTITIES.of(progress));
    JobSequence sequence = JobSequence.of(roof.faces(), lines, nodes, quantities, rules);
    BelowRoof below = BelowRoofFinder.of(building, roof.faces(), decided.junctions(), around);
    Reviewed reviewed = Reviewed.of(roof.faces(), decided.junctions(), joints.junctions(), nodes, quantities, drainage, below, rules,
        Stage.REVIEW.of(progress));
    List<Finding> findings = Reviewed.together(List.of(building.findings(), CoverageCheck.findings(coverage, roof),
        PerimeterLaw.findings(roof, junctions), modelled.findings(), drainage.findings(roof.faces()),
        decided.findings(), joints.findings(), quantities.findings(), sequence.findings(), reviewed.findings()), reviewed.advice());
    return new Takeoff(Program.version(), rules.hash(), building.models(), building.offset(), roof.tolerance(), roof.limits(),
        ElementLabel.all(building, findings), roof.faces(), decided.junctions(), joints.junctions(), quantities, findings,
        reviewed.advice(), kinds.book().all(), details.titles(), modelled.byJunction(), coverage, nodes, nodeKinds.all(), drainage,
        sequence, Surroundings.of(building, around))
        .withAccepted(inputs.accepted());
  }

  /** Reads while the rules are loaded. What is wrong with the rules is said first, whatever is wrong with the models. */
  private static Building read(Inputs inputs, Aside<Rules> rules, Progress progress) {
    try {
      return Models.read(inputs, (stage, share) -> {
        rules.check();
        progress.at(stage, share);
      });
    } catch (UnreadableModelException | DegenerateGeometryException e) {
      rules.get();
      throw e;
    }
  }

  private static Details.Result joints(List<Junction> joints, Rules rules, Details details,
      Function<KindedJunction, Map<String, ?>> facts) {
    if (joints.isEmpty()) {
      return new Details.Result(List.of(), List.of());
    }
    Kinds.Result kinded = Kinds.classify(joints, rules, Progress.NONE);
    return details.choose(kinded.junctions(), facts).with(kinded.findings());
  }

  /** Why a junction has its kind, and which kind it just missed. */
  public static Explanation explain(Junction junction, Inputs inputs) {
    return new Kinds(rules(inputs)).explain(junction.facts());
  }

  private static RoofSystem system(Inputs inputs) {
    try {
      return inputs.system().map(f -> RoofSystem.read(f.path(), f.name())).orElse(RoofSystem.DEFAULT);
    } catch (SystemFormatException e) {
      throw new UnusableFileException(e);
    }
  }

  private static Rules rules(Inputs inputs) {
    try {
      return inputs.shapes().map(Rules::load).orElseGet(Rules::packaged);
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }
}
