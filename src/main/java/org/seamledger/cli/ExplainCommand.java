package org.seamledger.cli;

import java.util.List;
import java.util.Optional;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.JunctionReport;
import org.seamledger.export.NodeReport;
import org.seamledger.node.KindedNode;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.export.SystemFieldReport;
import org.seamledger.quantity.SystemField;
import org.seamledger.quantity.SystemForm;
import org.seamledger.takeoff.Takeoff;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Command(name = "explain", customSynopsis = "seamledger explain [--shapes DIR] [--system FILE] [--decisions FILE] MODEL... JUNCTION",
    description = "Show why a junction has its kind: what was measured, the shape that it meets, the nearest that it misses.")
final class ExplainCommand implements Task {

  @Parameters(arity = "2..*", paramLabel = "MODEL... JUNCTION",
      description = "Models as for analyze, then the id of a junction or a node, or its beginning, or a value of the system: tape.reach.")
  private List<String> words;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Override
  public int run(Session session) {
    Inputs inputs;
    Takeoff takeoff;
    try (ChosenModels chosen = ChosenModels.of(words.subList(0, words.size() - 1), servers)) {
      inputs = settings.on(chosen, session.environment());
      takeoff = session.analyze(inputs);
    }
    String asked = words.get(words.size() - 1);
    Optional<SystemField> field = SystemForm.fields().stream().filter(f -> f.path().equals(asked)).findFirst();
    if (field.isPresent()) {
      session.print(Optional.empty(), out -> SystemFieldReport.write(takeoff.system(), field.get(), out));
      return ExitStatus.DONE;
    }
    Optional<KindedNode> node = JunctionChoice.node(takeoff, asked);
    if (node.isPresent()) {
      session.print(Optional.empty(), out -> NodeReport.write(takeoff, node.get(), out));
      return ExitStatus.DONE;
    }
    DetailedJunction found = JunctionChoice.find(takeoff, asked);
    Explanation why = Analysis.explain(found.junction().junction(), inputs);
    session.print(Optional.empty(), out -> JunctionReport.write(takeoff, found, why, out));
    return ExitStatus.DONE;
  }
}
