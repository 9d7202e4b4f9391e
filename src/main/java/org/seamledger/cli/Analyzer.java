package org.seamledger.cli;

import org.seamledger.detail.Explanation;
import org.seamledger.junction.Junction;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Progress;
import org.seamledger.takeoff.Takeoff;

/** Runs analyses: {@link Analysis} in the program. */
interface Analyzer {

  Analyzer ANALYSIS = new Analyzer() {
    @Override
    public Takeoff analyze(Inputs inputs, Progress progress) {
      return Analysis.run(inputs, progress);
    }

    @Override
    public Explanation explain(Junction junction, Inputs inputs) {
      return Analysis.explain(junction, inputs);
    }
  };

  Takeoff analyze(Inputs inputs, Progress progress);

  Explanation explain(Junction junction, Inputs inputs);
}
