package org.seamledger.watch;

import org.seamledger.ledger.Origin;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;

/** Talks with one server, and what is told of them. */
record ServerTalk(String server, Watching.Setting setting) {

  /** Every talk with the server is a place where the watch can end. */
  ModelServer connect() throws InterruptedException {
    if (Thread.interrupted()) {
      throw new InterruptedException();
    }
    return setting.servers().connect(server);
  }

  RoundOutcome trouble(String project, int revision, ModelServerException e) {
    setting.tell("trouble", server, project, revision, e.code() + ": " + e.getMessage());
    // A BIMserver was seen to leave a project out of its list for a moment, about when a model was checked in: what is missing may be back
    // soon.
    return e.isPassing() || e.reason() == Reason.NOT_FOUND ? RoundOutcome.PASSING : RoundOutcome.TROUBLE;
  }

  void tell(String what, Origin o, String detail) {
    setting.tell(what, server, o.projectName(), o.number(), detail);
  }
}
