/**
 * The one way in which models become a result, whoever wants it: a command, the service, a watch.
 *
 * <p>In go {@link org.seamledger.takeoff.Inputs}, with what users overrode, and a {@link org.seamledger.progress.Progress}, which can
 * cancel. Out comes an {@link org.seamledger.run.Outcome}: what was wanted, or the one {@link org.seamledger.run.Failure} that says why
 * there is none. What storage has noted is run by {@link org.seamledger.run.StoredRuns}; a recalculation after an override is the same
 * call with the overrides.
 */
package org.seamledger.run;
