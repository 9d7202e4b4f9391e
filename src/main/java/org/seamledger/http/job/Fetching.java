package org.seamledger.http.job;

import org.seamledger.ledger.Origin;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.source.ModelServer;
import org.seamledger.watch.Download;
import org.seamledger.watch.Servers;

/** Brings the models of an analysis from their servers when its turn comes, unless a watch or an earlier run did. */
record Fetching(Store store, Servers servers, Download download) {

  void fetch(Job job, StoredAnalysis analysis) {
    for (StoredFile file : analysis.files()) {
      if (file.origin().isPresent() && !store.has(file)) {
        fetch(job, file.origin().get(), file);
      }
    }
  }

  private void fetch(Job job, Origin origin, StoredFile file) {
    job.tell(new JobStatus(State.RUNNING, "Fetching the model from " + origin.server(), 0));
    boolean arrived = false;
    try (ModelServer server = servers.connect(origin.server())) {
      store.watches().arrived(job.id, download.fetch(server, file, origin));
      arrived = true;
    } finally {
      if (!arrived) {
        download.forget(file);
      }
    }
  }
}
