package org.seamledger.http.api;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.answer.JsonBodies;
import org.seamledger.http.job.JobStatus;
import org.seamledger.http.job.Jobs;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;

/** Analyses as clients see them. */
public record AnalysisBody(Store store, Jobs jobs) {

  /** What a page of them needs besides, asked once for all. */
  private record Besides(Map<String, JobStatus> statuses, Map<String, String> hashes, Map<String, Choices.Standing> standings,
      Map<String, String> troubles) {
  }

  Map<String, Object> of(StoredAnalysis a) {
    return of(List.of(a)).stream().findFirst().orElseThrow(() -> HttpProblem.notFound("There is no such analysis."));
  }

  /** Some, in their order, without those that were removed just now; as many questions to storage for one as for many. */
  List<Map<String, Object>> of(List<StoredAnalysis> all) {
    Set<String> done = all.stream().filter(a -> a.state() == State.DONE).map(StoredAnalysis::id).collect(Collectors.toSet());
    Besides besides =
        new Besides(jobs.statuses(all), store.analyses().ledgerHashes(done), store.choices().of(done), jobs.troubles(done));
    return all.stream().filter(a -> a.state() != State.DONE || besides.hashes.containsKey(a.id())).map(a -> body(a, besides)).toList();
  }

  private static Map<String, Object> body(StoredAnalysis a, Besides besides) {
    JobStatus p = besides.statuses.get(a.id());
    Map<String, Object> b = new LinkedHashMap<>();
    b.put("id", a.id());
    b.put("project", a.project());
    b.put("revision", a.revision().number());
    b.put("run", a.revision().run());
    b.put("label", a.revision().label());
    b.put("words", a.revision().words());
    a.revision().origin().ifPresent(o -> b.put("origin", ServedModels.body(o)));
    b.put("title", a.title());
    b.put("state", a.state() == State.QUEUED && p.state() == State.RUNNING ? p.state().word() : a.state().word());
    b.put("progress", JsonBodies.object("stage", p.stage(), "fraction", p.fraction()));
    b.put("files", a.files().stream().map(AnalysisBody::file).toList());
    b.put("created", a.created());
    a.finished().ifPresent(f -> b.put("finished", f));
    a.problem().ifPresent(m -> b.put("problem", JsonBodies.object("code", a.problemCode().orElse(""), "detail", m)));
    if (a.state() == State.DONE) {
      b.put("ledgerSha256", besides.hashes.get(a.id()));
      b.put("decisions", decisions(a.id(), besides));
    }
    b.put("links", links(a.id()));
    return b;
  }

  /** Whether the result follows what people chose by hand. */
  private static Map<String, Object> decisions(String id, Besides besides) {
    Choices.Standing standing = besides.standings.get(id);
    Map<String, Object> d =
        JsonBodies.object("inForce", standing.inForce().size(), "stale", standing.stale(), "followed", standing.followed());
    Optional.ofNullable(besides.troubles.get(id)).ifPresent(t -> d.put("problem", t));
    return d;
  }

  private static Map<String, Object> file(StoredFile f) {
    Map<String, Object> b = JsonBodies.object("name", f.name(), "bytes", f.bytes(), "role", f.role());
    f.origin().ifPresent(o -> b.put("origin", ServedModels.body(o)));
    f.placement().ifPresent(p -> b.put("placement", p));
    return b;
  }

  static Map<String, String> links(String id) {
    String self = "/api/analyses/" + id;
    Map<String, String> links = new LinkedHashMap<>();
    links.put("self", self);
    links.put("events", self + "/events");
    links.put("ledger", self + "/ledger");
    links.put("outline", self + "/outline");
    links.put("reviews", self + "/reviews");
    links.put("decisions", self + "/decisions");
    links.put("plan", self + "/plan.svg");
    links.put("cuts", self + "/cuts.csv");
    links.put("submittal", self + "/submittal.pdf");
    links.put("order", self + "/order.csv");
    links.put("junctions", self + "/junctions.csv");
    links.put("report", self + "/report.txt");
    links.put("page", "/?analysis=" + id);
    return links;
  }
}
