package org.seamledger.http.job;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.run.ClientWords;
import org.seamledger.run.Failure;
import org.seamledger.run.PatientStorage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The first run of an analysis, by the rules alone. */
record FirstRun(Store store, JobRuns runs, Fetching fetching) {

  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);

  /** Takes an analysis to its end, unless storage says that it has ended or the job was stopped before its turn. */
  void run(Job job, StoredAnalysis analysis) {
    try {
      job.isOnThisThread();
      if (job.stop().isPresent() || !PatientStorage.ask(() -> store.analyses().begin(job.id))) {
        return;
      }
      job.tell(new JobStatus(State.RUNNING, "Starting", 0));
      LOG.atInfo().addKeyValue("analysis", job.id).addKeyValue("files", analysis.files().size())
          .addKeyValue("bytes", analysis.files().stream().mapToLong(StoredFile::bytes).sum()).log("analysis begins");
      runs.run(job, analysis, Optional.empty(), () -> fetching.fetch(job, analysis)).ifPresent(f -> end(job, f));
    } catch (IOException | CancellationException e) {
      // The server ends while the database is away: the analysis runs again at its next start.
      LOG.atWarn().addKeyValue("analysis", job.id).setCause(e).log("analysis not begun");
    }
  }

  private void end(Job job, Failure failure) {
    if (failure instanceof Failure.Cancelled) {
      return;
    }
    try {
      PatientStorage.ask(() -> store.analyses().end(job.id, State.FAILED, failure.code(), ClientWords.of(failure)));
    } catch (IOException | CancellationException e) {
      LOG.atWarn().addKeyValue("analysis", job.id).addKeyValue("code", failure.code()).setCause(e).log("end not stored");
    }
  }

  /** Notes the end of an analysis that was cut off by a fault which got through all else; one that had ended stays as it is. */
  void cutOff(Job job, Failure fault, Supplier<State> stored) {
    try {
      store.analyses().end(job.id, State.FAILED, fault.code(), fault.text());
      State state = stored.get();
      job.tell(new JobStatus(state.isFinal() ? state : State.FAILED, "", 0));
    } catch (RuntimeException | Error second) {
      LOG.atError().addKeyValue("analysis", job.id).setCause(second).log("end not stored");
    }
  }
}
