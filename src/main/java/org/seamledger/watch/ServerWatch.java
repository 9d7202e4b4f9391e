package org.seamledger.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.Watch;
import org.seamledger.ledger.WatchedRevision.Stage;
import org.seamledger.ledger.WatchedRevision;
import org.seamledger.ledger.Watches;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;
import org.seamledger.takeoff.UnusableFileException;

/**
 * The watch on one server. A round (1) asks for the revisions of the watched projects and notes the new ones, then takes the open ones of each
 * project, the oldest first, (2) to an analysis and (3) to an answer. Each step has a connection of its own, since an analysis may outlast a
 * login. Where a step of a revision fails, later revisions of its project wait.
 */
final class ServerWatch {

  /** A model that its server can't deliver is asked for so often. */
  static final int MOST_DOWNLOADS = 3;
  /** A revision at which the program fails, or its own rules or settings stop it, is tried so often. */
  static final int MOST_FAULTS = 3;
  /** An answer that its server won't take is offered so often. */
  static final int MOST_ANSWERS = 5;

  private static final String INTERNAL = "internal";
  private static final Set<String> OUR_FAULTS = Set.of("settings/unusable", INTERNAL);
  private static final Set<String> PASSING = Set.of("server/unreachable", "server/timed-out");

  private final String server;
  private final Servers servers;
  private final WatchTarget wanted;
  private final Store store;
  private final Watches watches;
  private final Analyst analyst;
  private final Download download;
  private final Answers answers;
  private final Watching.Setting setting;
  /** Whether the last round found nobody there. */
  private boolean away;

  ServerWatch(String server, Watching.Setting setting) {
    this.server = server;
    this.setting = setting;
    this.servers = setting.servers();
    this.wanted = setting.wanted();
    this.store = setting.store();
    this.watches = store.watches();
    this.analyst = setting.analyst();
    this.download = setting.download();
    this.answers = new Answers(store);
  }

  String server() {
    return server;
  }

  /**
   * Does all that there is to do now; what fails is noted, and done in a later round. A fault of the program at a revision counts as an
   * attempt at it and is thrown when the other projects are done.
   */
  Outcome round() throws InterruptedException {
    if (!wanted.wantsAny(server)) {
      return Outcome.FINE;
    }
    try {
      List<ServedProject> projects = new ArrayList<>();
      Outcome outcome = look(projects);
      FirstFault fault = new FirstFault();
      for (ServedProject project : projects) {
        outcome = outcome.worse(work(project, fault));
      }
      fault.rethrow();
      return outcome;
    } catch (CancellationException e) {
      // So a talk with a server ends when its thread is interrupted.
      throw new InterruptedException();
    }
  }

  /** Finds out which revisions there are. */
  private Outcome look(List<ServedProject> projects) throws InterruptedException {
    Outcome outcome = Outcome.FINE;
    try (ModelServer s = connect()) {
      List<ServedProject> served = s.projects();
      tellReachable();
      outcome = missing(served);
      for (ServedProject project : served) {
        if (wanted.wants(server, project)) {
          projects.add(project);
          outcome = outcome.worse(look(s, project));
        }
      }
    } catch (ModelServerException e) {
      for (Watch w : watches.list()) {
        if (w.server().equals(server) && wanted.wants(server, new ServedProject(w.served(), w.name(), ""))) {
          watches.failed(server, w.served(), code(e), e.getMessage());
        }
      }
      projects.clear();
      away |= e.isPassing();
      return trouble("", 0, e);
    }
    return outcome;
  }

  /** Says that a server answers again; storage knows of a silence that began in an earlier process. */
  private void tellReachable() {
    boolean wasAway = watches.list().stream().filter(w -> w.server().equals(server))
        .anyMatch(w -> w.problemCode().filter(PASSING::contains).isPresent());
    if (away || wasAway) {
      setting.tell("reachable", server, "", 0, "it answers again");
    }
    away = false;
  }

  private Outcome look(ModelServer s, ServedProject project) {
    watches.note(server, project.id(), project.name());
    try {
      Set<Long> known = watches.revisions(server, project.id()).stream().map(r -> r.origin().revision()).collect(Collectors.toSet());
      List<ServedRevision> revisions = s.revisions(project.id());
      watches.found(server, project.id(), revisions.stream()
          .map(r -> new Watches.Listed(r.id(), r.number(), r.comment(), r.created().toString())).toList());
      watches.checked(server, project.id());
      watches.open(server, project.id()).stream().filter(r -> !known.contains(r.origin().revision()))
          .forEach(r -> tell("found", r.origin(), r.origin().comment()));
      return Outcome.FINE;
    } catch (ModelServerException e) {
      if (e.isPassing()) {
        throw e;
      }
      watches.failed(server, project.id(), code(e), e.getMessage());
      return trouble(project.name(), 0, e);
    }
  }

  /** Projects that are to be watched and are not there any more. */
  private Outcome missing(List<ServedProject> served) {
    Set<Long> there = served.stream().map(ServedProject::id).collect(Collectors.toSet());
    Outcome outcome = Outcome.FINE;
    for (Watch w : watches.list()) {
      if (w.server().equals(server) && !there.contains(w.served()) && wanted.wants(server, new ServedProject(w.served(), w.name(), ""))) {
        ModelServerException gone = new ModelServerException(Reason.NOT_FOUND, "The server shows no project " + w.name() + " now.");
        watches.failed(server, w.served(), code(gone), gone.getMessage());
        outcome = trouble(w.name(), 0, gone);
      }
    }
    return outcome;
  }

  private Outcome work(ServedProject project, FirstFault fault) throws InterruptedException {
    for (WatchedRevision revision : watches.open(server, project.id())) {
      try {
        Outcome outcome = step(revision);
        if (outcome != Outcome.FINE) {
          return outcome;
        }
      } catch (CancellationException | LedgerException e) {
        // The end of the process, or storage that fails: neither says anything about this revision.
        throw e;
      } catch (RuntimeException | Error e) {
        count(revision.origin(), e);
        fault.add(e);
        return Outcome.PASSING;
      }
    }
    return Outcome.FINE;
  }

  /** A fault of the program at a revision must not come back for ever. What it says stays in the log: it may be nobody else's business. */
  private void count(Origin origin, Throwable fault) {
    String problem = fault instanceof UnusableFileException ? fault.getMessage()
        : "The program failed at this revision (" + fault.getClass().getSimpleName() + "); its log says where.";
    try {
      watches.failed(server, origin.project(), INTERNAL, problem);
      if (watches.attempted(origin, problem) >= MOST_FAULTS) {
        giveUp(origin, problem);
      }
    } catch (RuntimeException | Error e) {
      fault.addSuppressed(e);
    }
  }

  private Outcome step(WatchedRevision r) throws InterruptedException {
    try {
      if (r.stage() == Stage.FOUND) {
        Optional<Outcome> end = analyse(r);
        if (end.isPresent()) {
          return end.get();
        }
      }
      answer(r.origin());
      return Outcome.FINE;
    } catch (ModelServerException e) {
      watches.failed(server, r.origin().project(), code(e), e.getMessage());
      return trouble(r.origin().projectName(), r.origin().number(), e);
    }
  }

  /** Takes a revision to the end of its analysis; gives an outcome where the way ends here without an answer. */
  private Optional<Outcome> analyse(WatchedRevision r) throws InterruptedException {
    Origin origin = r.origin();
    Optional<StoredAnalysis> begun = r.analysis().or(() -> watches.done(server, origin.project(), origin.revision())).flatMap(this::stored)
        .filter(a -> !isOurFault(a));
    StoredAnalysis analysis = begun.isPresent() ? begun.get() : fetch(origin);
    if (!analysis.state().isFinal()) {
      fetchAgain(analysis, origin);
      tell("analysing", origin, "");
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
    tell("analysed", origin,
        "analysis " + analysis.id() + " " + ended.get().state().word() + ended.get().problem().map(p -> ": " + p).orElse(""));
    return Optional.empty();
  }

  /** Broken rules or a fault of the program say nothing about the model, so that there is nothing to tell its owner. */
  private static boolean isOurFault(StoredAnalysis a) {
    return a.problemCode().filter(OUR_FAULTS::contains).isPresent();
  }

  private Outcome ourFault(Origin origin, StoredAnalysis ended) {
    String problem = ended.problem().orElse("");
    String code = ended.problemCode().orElse("");
    watches.failed(server, origin.project(), code, problem);
    if (watches.attempted(origin, problem) >= MOST_FAULTS) {
      return giveUp(origin, problem);
    }
    tell("trouble", origin, code + ": " + problem);
    return code.equals(INTERNAL) ? Outcome.PASSING : Outcome.TROUBLE;
  }

  private Outcome giveUp(Origin origin, String why) {
    watches.gaveUp(origin, why);
    tell("given-up", origin, why);
    return Outcome.FINE;
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

  /** Downloads a revision's model and notes its analysis. A model that can't be read is an analysis that failed. */
  private StoredAnalysis fetch(Origin origin) throws InterruptedException {
    String id = Analyses.newId();
    try (ModelServer s = connect()) {
      StoredFile file = download.fetch(s, id, origin);
      tell("downloaded", origin, file.bytes() + " bytes");
      return watches.begin(id, origin, List.of(file));
    } catch (UnreadableModelException e) {
      return failed(id, origin, "model/unreadable", e.getMessage());
    } catch (ModelServerException e) {
      download.forget(id);
      boolean hopeless = e.reason() == Reason.UNUSABLE && watches.attempted(origin, e.getMessage()) >= MOST_DOWNLOADS;
      if (!hopeless) {
        throw e;
      }
      return failed(id, origin, code(e), e.getMessage());
    } catch (RuntimeException | Error e) {
      download.forget(id);
      throw e;
    }
  }

  /** An analysis may be noted and its model gone: where storage failed just when it was noted, or somebody removed the file. */
  private void fetchAgain(StoredAnalysis analysis, Origin origin) throws InterruptedException {
    if (!Download.has(analysis.files().get(0))) {
      try (ModelServer s = connect()) {
        watches.arrived(analysis.id(), download.fetch(s, analysis.id(), origin));
      } catch (UnreadableModelException e) {
        store.analyses().end(analysis.id(), State.FAILED, "model/unreadable", e.getMessage());
      }
    }
  }

  private StoredAnalysis failed(String id, Origin origin, String code, String problem) {
    download.forget(id);
    watches.begin(id, origin, List.of(download.file(id, origin)));
    store.analyses().end(id, State.FAILED, code, problem);
    return store.analyses().get(id);
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
    try (ModelServer s = connect()) {
      int left = Answers.attach(s, Download.revision(s, origin), answers.of(analysis.get(), origin));
      watches.reached(origin, Stage.ANSWERED);
      tell("answered", origin, left + " documents");
    } catch (ModelServerException e) {
      if (!e.isPassing() && watches.attempted(origin, e.getMessage()) >= MOST_ANSWERS) {
        giveUp(origin, e.getMessage());
      }
      throw e;
    }
  }

  /** Every talk with the server is a place where the watch can end. */
  private ModelServer connect() throws InterruptedException {
    if (Thread.interrupted()) {
      throw new InterruptedException();
    }
    return servers.connect(server);
  }

  static String code(ModelServerException e) {
    return "server/" + e.reason().name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private Outcome trouble(String project, int revision, ModelServerException e) {
    setting.tell("trouble", server, project, revision, code(e) + ": " + e.getMessage());
    // A BIMserver was seen to leave a project out of its list for a moment, about when a model was checked in: what is missing may be back soon.
    return e.isPassing() || e.reason() == Reason.NOT_FOUND ? Outcome.PASSING : Outcome.TROUBLE;
  }

  private void tell(String what, Origin o, String detail) {
    setting.tell(what, server, o.projectName(), o.number(), detail);
  }
}
