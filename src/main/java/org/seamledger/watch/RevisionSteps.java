package org.seamledger.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.WatchedRevision.Stage;
import org.seamledger.ledger.WatchedRevision;
import org.seamledger.ledger.Watches;
import org.seamledger.run.Failure;
import org.seamledger.run.Result;
import org.seamledger.source.Attachment;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;
import org.seamledger.takeoff.UnusableFileException;

/**
 * The steps of one revision: to an analysis and to an answer. Each has a connection of its own, since an analysis may outlast a login;
 * storage says how far a revision is.
 */
final class RevisionSteps {

  /** A revision at which the program fails, or its own rules or settings stop it, is tried so often. */
  static final int MOST_FAULTS = 3;
  /** An answer that its server won't take is offered so often. */
  static final int MOST_ANSWERS = 5;

  private final String server;
  private final ServerTalk talk;
  private final Store store;
  private final Watches watches;
  private final Analyst analyst;
  private final RevisionFetch models;
  private final Answers answers;

  RevisionSteps(ServerTalk talk) {
    this.server = talk.server();
    this.talk = talk;
    this.store = talk.setting().store();
    this.watches = store.watches();
    this.analyst = talk.setting().analyst();
    this.models = new RevisionFetch(talk);
    this.answers = new Answers(store);
  }

  RoundOutcome step(WatchedRevision r) throws InterruptedException {
    try {
      if (r.stage() == Stage.FOUND) {
        Optional<RoundOutcome> end = analyse(r);
        if (end.isPresent()) {
          return end.get();
        }
      }
      // An analysis takes its time: another process may watch by now, and answers.
      if (talk.setting().turn().test(server)) {
        answer(r.origin());
      }
      return RoundOutcome.FINE;
    } catch (ModelServerException e) {
      watches.failed(server, r.origin().project(), e.code(), e.getMessage());
      return talk.trouble(r.origin().projectName(), r.origin().number(), e);
    }
  }

  /** Takes a revision to the end of its analysis; gives an outcome where the way ends here without an answer. */
  private Optional<RoundOutcome> analyse(WatchedRevision r) throws InterruptedException {
    Origin origin = r.origin();
    Optional<StoredAnalysis> begun = r.analysis().or(() -> watches.done(server, origin.project(), origin.revision())).flatMap(this::stored)
        .filter(a -> !isOurFault(a));
    StoredAnalysis analysis = begun.isPresent() ? begun.get() : models.fetch(origin);
    if (!analysis.state().isFinal()) {
      models.fetchAgain(analysis, origin);
      talk.tell("analysing", origin, "");
      analyst.analyze(analysis);
    }
    Optional<StoredAnalysis> ended = stored(analysis.id());
    if (ended.isEmpty() || ended.get().state() == State.CANCELLED) {
      return Optional.of(giveUp(origin, ended.flatMap(StoredAnalysis::problem).orElse("Its analysis was removed.")));
    }
    if (isOurFault(ended.get())) {
      return Optional.of(ourFault(origin, ended.get()));
    }
    if (!ended.get().state().isFinal()) {
      throw new IllegalStateException("analysis " + analysis.id() + " did not end");
    }
    watches.analysed(origin, analysis.id());
    talk.tell("analysed", origin,
        "analysis " + analysis.id() + " " + ended.get().state().word() + ended.get().problem().map(p -> ": " + p).orElse(""));
    return Optional.empty();
  }

  /** Broken rules or a fault of the program say nothing about the model, so that there is nothing to tell its owner. */
  private static boolean isOurFault(StoredAnalysis a) {
    return a.problemCode().filter(Failure::isOurs).isPresent();
  }

  private RoundOutcome ourFault(Origin origin, StoredAnalysis ended) {
    String problem = ended.problem().orElse("");
    String code = ended.problemCode().orElse("");
    watches.failed(server, origin.project(), code, problem);
    if (watches.attempted(origin, problem) >= MOST_FAULTS) {
      return giveUp(origin, problem);
    }
    talk.tell("trouble", origin, code + ": " + problem);
    return Failure.isFault(code) ? RoundOutcome.PASSING : RoundOutcome.TROUBLE;
  }

  RoundOutcome giveUp(Origin origin, String why) {
    watches.gaveUp(origin, why);
    talk.tell("given-up", origin, why);
    return RoundOutcome.FINE;
  }

  private Optional<StoredAnalysis> stored(String id) {
    try {
      return Optional.of(store.analyses().get(id));
    } catch (LedgerException e) {
      if (e.reason() == LedgerException.Reason.NOT_FOUND) {
        return Optional.empty();
      }
      throw e;
    }
  }

  private void answer(Origin origin) throws InterruptedException {
    WatchedRevision now =
        watches.revisions(server, origin.project()).stream().filter(r -> r.origin().revision() == origin.revision()).findFirst()
            .orElseThrow();
    Optional<StoredAnalysis> analysis = now.analysis().flatMap(this::stored);
    if (analysis.isEmpty()) {
      giveUp(origin, "Its analysis was removed.");
      return;
    }
    List<Attachment> documents = new ArrayList<>(answers.of(analysis.get(), origin));
    documents.addAll(besides(analysis.get(), origin));
    try (ModelServer s = talk.connect()) {
      int left = Answers.attach(s, Download.revision(s, origin), documents);
      watches.reached(origin, Stage.ANSWERED);
      talk.tell("answered", origin, left + " documents");
    } catch (ModelServerException e) {
      if (!e.isPassing() && watches.attempted(origin, e.getMessage()) >= MOST_ANSWERS) {
        giveUp(origin, e.getMessage());
      }
      throw e;
    }
  }

  /** What the operator asks for besides; that it can't be had holds up no answer, and the log says so. */
  private List<Attachment> besides(StoredAnalysis analysis, Origin origin) {
    Set<String> wanted = talk.setting().servers().attached(server);
    if (wanted.isEmpty() || analysis.state() != State.DONE) {
      return List.of();
    }
    try {
      Optional<Result> result = analyst.result(analysis);
      if (result.isPresent()) {
        return answers.besides(analysis, origin, result.get(), wanted);
      }
      talk.tell("trouble", origin, "the result can't be had again for " + String.join(" and ", wanted));
    } catch (UnreadableModelException e) {
      talk.tell("trouble", origin, e.getMessage());
    }
    return List.of();
  }

  /** A fault of the program at a revision must not come back for ever. What it says stays in the log: it may be nobody else's business. */
  void count(Origin origin, Throwable fault) {
    String problem = fault instanceof UnusableFileException ? fault.getMessage()
        : "The program failed at this revision (" + fault.getClass().getSimpleName() + "); its log says where.";
    try {
      watches.failed(server, origin.project(), Failure.Fault.CODE, problem);
      if (watches.attempted(origin, problem) >= MOST_FAULTS) {
        giveUp(origin, problem);
      }
    } catch (RuntimeException | Error e) {
      fault.addSuppressed(e);
    }
  }
}
