package org.seamledger.cli;

import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Progress;
import org.seamledger.takeoff.Takeoff;

/** Runs an analysis: {@link org.seamledger.takeoff.Analysis#run} in the program. */
@FunctionalInterface
interface Analyzer {

  Takeoff analyze(Inputs inputs, Progress progress);
}
