package org.seamledger.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.finding.Acceptance;
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.finding.Remark;
import org.seamledger.finding.TopicAnswer;

/** What people said: reviews of junctions, marks and comments on findings. */
public final class Reviews {

  private static final String REVIEW = "SELECT junction, state, note, kind, detail, reason, carried, version, updated,"
      + " EXISTS (SELECT 1 FROM stale s WHERE s.analysis = review.analysis AND s.junction = review.junction) FROM review ";

  private static final String WRITE = "INSERT INTO review(analysis, junction, state, note, kind, detail, reason, carried, version, updated)"
      + " VALUES(?,?,?,?,?,?,?,0,?,?) ON CONFLICT(analysis, junction) DO UPDATE SET state = excluded.state, note = excluded.note,"
      + " kind = excluded.kind, detail = excluded.detail, reason = excluded.reason, carried = excluded.carried,"
      + " version = excluded.version, updated = excluded.updated";

  private final Database db;

  Reviews(Database db) {
    this.db = db;
  }

  /** The reviews of an analysis, by junction id. */
  public List<Review> of(String analysis) {
    return db.read(() -> {
      requireAnalysis(analysis);
      return db.list(REVIEW + "WHERE analysis = ? ORDER BY junction", Reviews::review, analysis);
    });
  }

  private static Review review(ResultSet r) throws SQLException {
    return new Review(r.getString(1), r.getString(2), r.getString(3), r.getString(4), r.getString(5), r.getString(6),
        r.getBoolean(7), r.getBoolean(10), r.getLong(8), r.getString(9));
  }

  /**
   * Writes the review of one junction.
   *
   * @param review {@code version} is the one that its author saw, 0 for none; a newer one in storage is a conflict, so that two people
   *     never overwrite each other unseen
   * @return the review as stored, with its new version
   */
  public Review put(String analysis, Review review) {
    review.validate();
    return db.transaction(() -> {
      requireAnalysis(analysis);
      if (db.one("SELECT 1 FROM junction WHERE analysis = ? AND id = ?", r -> 1, analysis, review.junction()).isEmpty()) {
        throw new LedgerException(LedgerException.Reason.NOT_FOUND, "This analysis has no such junction.");
      }
      long stored = db.one("SELECT version FROM review WHERE analysis = ? AND junction = ?", r -> r.getLong(1), analysis, review.junction())
          .orElse(0L);
      requireSame(stored, review.version());
      db.run(WRITE, analysis, review.junction(), review.state(), review.note(),
          review.kind(), review.detail(), review.reason(), stored + 1, Analyses.now());
      db.run("DELETE FROM stale WHERE analysis = ? AND junction = ?", analysis, review.junction());
      return db.one(REVIEW + "WHERE analysis = ? AND junction = ?", Reviews::review, analysis, review.junction()).orElseThrow();
    });
  }

  /** The findings of an analysis with what was done about each, in the order of the result. */
  public List<FindingMark> findings(String analysis) {
    return db.read(() -> {
      requireAnalysis(analysis);
      List<FindingMark> all = new ArrayList<>();
      Map<String, List<FindingMark.Comment>> comments = new HashMap<>();
      db.list("SELECT finding, author, text, created FROM comment WHERE analysis = ? ORDER BY id", r -> comments
          .computeIfAbsent(r.getString(1), k -> new ArrayList<>())
          .add(new FindingMark.Comment(r.getString(2), r.getString(3), r.getString(4))), analysis);
      for (FindingMark m : db.list(MARK + "WHERE analysis = ? AND place >= 0 ORDER BY place", r -> mark(r, List.of()), analysis)) {
        all.add(with(m, comments.getOrDefault(m.id(), List.of())));
      }
      return all;
    });
  }

  private static final String MARK = "SELECT id, place, state, reason, accepted_by, accepted_at, assignee, version, updated FROM finding ";

  private static FindingMark mark(ResultSet r, List<FindingMark.Comment> comments) throws SQLException {
    return new FindingMark(r.getString(1), r.getInt(2), r.getString(3), r.getString(4), r.getString(5), r.getString(6), r.getString(7),
        r.getLong(8), r.getString(9), comments);
  }

  private static FindingMark with(FindingMark m, List<FindingMark.Comment> comments) {
    return new FindingMark(m.id(), m.place(), m.state(), m.reason(), m.acceptedBy(), m.acceptedAt(), m.assignee(), m.version(),
        m.updated(), comments);
  }

  private FindingMark requireMark(String analysis, String id) throws SQLException {
    FindingMark m = db.one(MARK + "WHERE analysis = ? AND place >= 0 AND id = ?", r -> mark(r, List.of()), analysis, id)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "This analysis has no such finding."));
    return with(m, db.list("SELECT author, text, created FROM comment WHERE analysis = ? AND finding = ? ORDER BY id",
        r -> new FindingMark.Comment(r.getString(1), r.getString(2), r.getString(3)), analysis, id));
  }

  /** Accepts, reopens or assigns a finding; {@code version} as for reviews. */
  public FindingMark put(String analysis, FindingMark mark) {
    mark.validate();
    return db.transaction(() -> {
      requireAnalysis(analysis);
      FindingMark stored = requireMark(analysis, mark.id());
      requireSame(stored.version(), mark.version());
      boolean isAccepted = mark.state().equals("accepted");
      boolean isAsBefore = stored.state().equals(mark.state()) && stored.reason().equals(mark.reason())
          && stored.acceptedBy().equals(mark.acceptedBy());
      String now = Analyses.now();
      db.run("UPDATE finding SET state = ?, reason = ?, accepted_by = ?, accepted_at = ?, assignee = ?, version = version + 1, updated = ?"
          + " WHERE analysis = ? AND id = ?", mark.state(), mark.reason(), isAccepted ? mark.acceptedBy() : "",
          isAccepted ? isAsBefore ? stored.acceptedAt() : now : "", mark.assignee(), now, analysis, mark.id());
      return requireMark(analysis, mark.id());
    });
  }

  /** The findings of an analysis that people accepted, in the order of the result, in a form that stays true in the next export. */
  public List<AcceptedFinding> accepted(String analysis) {
    return db.read(() -> {
      requireAnalysis(analysis);
      List<FindingMark> marks = db.list(MARK + "WHERE analysis = ? AND place >= 0 AND state = 'accepted' ORDER BY place",
          r -> mark(r, List.of()), analysis);
      Optional<StoredLedger> ledger =
          marks.isEmpty() ? Optional.empty() : db.one("SELECT sha256, bytes, gzip FROM ledger WHERE analysis = ?",
              r -> new StoredLedger(r.getString(1), r.getLong(2), r.getBytes(3)), analysis);
      return ledger.map(l -> ResultOutline.of(l).accepted(marks)).orElse(List.of());
    });
  }

  /** Adds a remark to a finding. */
  public FindingMark comment(String analysis, String finding, String author, String text) {
    if (text.isBlank() || text.length() > Review.LONGEST_TEXT || author.length() > 200) {
      throw new LedgerException(LedgerException.Reason.INVALID,
          "a comment needs text, at most " + Review.LONGEST_TEXT + " characters, and an author's name of at most 200");
    }
    return db.transaction(() -> {
      requireAnalysis(analysis);
      requireMark(analysis, finding);
      db.run("INSERT INTO comment(analysis, finding, author, text, created) VALUES(?,?,?,?,?)", analysis, finding, author, text,
          Analyses.now());
      db.run("UPDATE finding SET version = version + 1, updated = ? WHERE analysis = ? AND id = ?", Analyses.now(), analysis, finding);
      return requireMark(analysis, finding);
    });
  }

  /**
   * Takes in what came back on findings that were handed on: closed topics accept, reopened ones reopen, with who said so, when and why.
   * Whatever was known before stays as it is, so that the same file twice changes nothing more.
   *
   * @param answers by the finding's place in the result
   */
  public TopicOutcome take(String analysis, Map<Integer, TopicAnswer> answers) {
    return db.transaction(() -> {
      TopicOutcome outcome = TopicOutcome.NONE;
      for (FindingMark m : findings(analysis)) {
        TopicAnswer answer = answers.get(m.place());
        if (answer != null) {
          outcome = outcome.and(take(analysis, m, answer));
        }
      }
      return outcome;
    });
  }

  private TopicOutcome take(String analysis, FindingMark m, TopicAnswer answer) throws SQLException {
    boolean isAccepted = m.state().equals("accepted");
    boolean accepts = !isAccepted && answer.verdict() == TopicAnswer.Verdict.CLOSED;
    boolean reopens = isAccepted && answer.reopens(m.acceptedAt());
    List<Remark> remarks = new ArrayList<>(reopens ? List.of(new Remark(m.acceptedBy(), m.acceptedAt(), m.reason())) : List.of());
    remarks.addAll(accepts && answer.isLastTheReason() ? answer.remarks().subList(0, answer.remarks().size() - 1) : answer.remarks());
    remarks.removeIf(r -> isKnown(r, m, reopens));
    for (Remark r : remarks) {
      db.run("INSERT INTO comment(analysis, finding, author, text, created) VALUES(?,?,?,?,?)", analysis, m.id(), r.by(), r.text(),
          r.when().isEmpty() ? Analyses.now() : r.when());
    }
    String assignee = answer.assignee().isBlank() ? m.assignee() : answer.assignee();
    if (accepts || reopens || !remarks.isEmpty() || !assignee.equals(m.assignee())) {
      Acceptance a = accepts ? answer.acceptance() : new Acceptance(m.acceptedBy(), m.acceptedAt(), m.reason());
      boolean standing = accepts || isAccepted && !reopens;
      db.run("UPDATE finding SET state = ?, reason = ?, accepted_by = ?, accepted_at = ?, assignee = ?, version = version + 1, updated = ?"
          + " WHERE analysis = ? AND id = ?", standing ? "accepted" : "open", standing ? a.reason() : "", standing ? a.by() : "",
          standing ? a.when().isEmpty() ? Analyses.now() : a.when() : "", assignee, Analyses.now(), analysis, m.id());
    }
    return new TopicOutcome(accepts ? 1 : 0, reopens ? 1 : 0, remarks.size() - (reopens ? 1 : 0));
  }

  private static boolean isKnown(Remark r, FindingMark m, boolean reopens) {
    return m.comments().stream().anyMatch(c -> TopicAnswer.isSame(r, new Remark(c.author(), c.created(), c.text())))
        || !reopens && m.state().equals("accepted") && TopicAnswer.isSame(r, new Remark(m.acceptedBy(), m.acceptedAt(), m.reason()));
  }

  private void requireAnalysis(String analysis) throws SQLException {
    if (db.one("SELECT 1 FROM analysis WHERE id = ?", r -> 1, analysis).isEmpty()) {
      throw new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such analysis.");
    }
  }

  private static void requireSame(long stored, long seen) {
    if (stored != seen) {
      throw new LedgerException(LedgerException.Reason.CONFLICT,
          "Somebody else changed this meanwhile; look at it again and repeat your change.");
    }
  }
}
