package org.seamledger.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Watch;
import org.seamledger.ledger.WatchedRevision;
import org.seamledger.ledger.Watches;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;

/**
 * The watch on one server. A round (1) asks for the revisions of the watched projects and notes the new ones, then takes the open ones of
 * each project, the oldest first, (2) to an analysis and (3) to an answer ({@link RevisionSteps}). Where a step of a revision fails,
 * later revisions of its project wait.
 */
final class ServerWatch {

  private static final Set<String> PASSING = Set.of("server/unreachable", "server/timed-out");

  private final String server;
  private final WatchTarget wanted;
  private final Watches watches;
  private final ServerTalk talk;
  private final RevisionSteps steps;
  private final Watching.Setting setting;
  /** Whether the last round found nobody there. */
  private boolean away;

  ServerWatch(String server, Watching.Setting setting) {
    this.server = server;
    this.setting = setting;
    this.wanted = setting.wanted();
    this.watches = setting.store().watches();
    this.talk = new ServerTalk(server, setting);
    this.steps = new RevisionSteps(talk);
  }

  /**
   * Does all that there is to do now; what fails is noted, and done in a later round. A fault of the program at a revision counts as an
   * attempt at it and is thrown when the other projects are done.
   */
  RoundOutcome round() throws InterruptedException {
    if (!wanted.wantsAny(server) || !setting.turn().test(server)) {
      return RoundOutcome.FINE;
    }
    try {
      List<ServedProject> projects = new ArrayList<>();
      RoundOutcome outcome = look(projects);
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
  private RoundOutcome look(List<ServedProject> projects) throws InterruptedException {
    RoundOutcome outcome = RoundOutcome.FINE;
    try (ModelServer s = talk.connect()) {
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
          watches.failed(server, w.served(), e.code(), e.getMessage());
        }
      }
      projects.clear();
      away |= e.isPassing();
      return talk.trouble("", 0, e);
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

  private RoundOutcome look(ModelServer s, ServedProject project) {
    watches.note(server, project.id(), project.name());
    try {
      Set<Long> known = watches.revisions(server, project.id()).stream().map(r -> r.origin().revision()).collect(Collectors.toSet());
      List<ServedRevision> revisions = s.revisions(project.id());
      watches.found(server, project.id(), revisions.stream()
          .map(r -> new Watches.Listed(r.id(), r.number(), r.comment(), r.created().toString())).toList());
      watches.checked(server, project.id());
      watches.open(server, project.id()).stream().filter(r -> !known.contains(r.origin().revision()))
          .forEach(r -> talk.tell("found", r.origin(), r.origin().comment()));
      return RoundOutcome.FINE;
    } catch (ModelServerException e) {
      if (e.isPassing()) {
        throw e;
      }
      watches.failed(server, project.id(), e.code(), e.getMessage());
      return talk.trouble(project.name(), 0, e);
    }
  }

  /** Projects that are to be watched and are not there any more. */
  private RoundOutcome missing(List<ServedProject> served) {
    Set<Long> there = served.stream().map(ServedProject::id).collect(Collectors.toSet());
    RoundOutcome outcome = RoundOutcome.FINE;
    for (Watch w : watches.list()) {
      if (w.server().equals(server) && !there.contains(w.served()) && wanted.wants(server, new ServedProject(w.served(), w.name(), ""))) {
        ModelServerException gone = new ModelServerException(Reason.NOT_FOUND, "The server shows no project " + w.name() + " now.");
        watches.failed(server, w.served(), gone.code(), gone.getMessage());
        outcome = talk.trouble(w.name(), 0, gone);
      }
    }
    return outcome;
  }

  private RoundOutcome work(ServedProject project, FirstFault fault) throws InterruptedException {
    for (WatchedRevision revision : watches.open(server, project.id())) {
      try {
        RoundOutcome outcome = steps.step(revision);
        if (outcome != RoundOutcome.FINE) {
          return outcome;
        }
      } catch (CancellationException | LedgerException e) {
        // The end of the process, or storage that fails: neither says anything about this revision.
        throw e;
      } catch (RuntimeException | Error e) {
        steps.count(revision.origin(), e);
        fault.add(e);
        return RoundOutcome.PASSING;
      }
    }
    return RoundOutcome.FINE;
  }

}
