package org.seamledger.ledger;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.seamledger.journal.EventChain;
import org.seamledger.journal.EventDraft;
import org.seamledger.journal.SiteEvent;
import org.seamledger.journal.SiteRecord;
import org.seamledger.journal.WorkPlace;

/**
 * The record of what is done on a roof: a chain of events for each project, through all its revisions. Events are added and read; nothing
 * here changes or removes one, but that a project which is removed takes its record with it.
 */
public final class SiteRecords {

  /** So that nobody fills the disk of a server through a link. */
  static final int MOST_EVENTS = 100_000;
  private static final int KEPT = 8;

  private final Database db;
  /** Places by the result's hash, for reading a large result takes long. */
  private final Map<String, List<WorkPlace>> recent = new LinkedHashMap<>(KEPT, 0.75f, true) {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, List<WorkPlace>> eldest) {
      return size() > KEPT;
    }
  };

  SiteRecords(Database db) {
    this.db = db;
  }

  /** An event as it stands in the record now, and whether it came just now or was there before. */
  public record Kept(SiteEvent event, boolean isNew) {
  }

  /**
   * Adds an event, or finds it there: an event that is sent twice is one.
   *
   * @param analysis the revision that the sender has
   * @param link who let the sender in
   * @throws LedgerException of {@link LedgerException.Reason#CONFLICT} where it must not be yet, in words for who sent it
   */
  public Kept add(String analysis, EventDraft draft, String link) {
    draft.fault().ifPresent(f -> {
      throw new LedgerException(LedgerException.Reason.INVALID, f);
    });
    List<WorkPlace> places = places(analysis);
    return db.transaction(() -> {
      String project = project(analysis);
      take(project);
      Optional<SiteEvent> known = event(project, draft.id());
      return known.isPresent() ? new Kept(known.get(), false) : new Kept(append(project, analysis, draft, link, places), true);
    });
  }

  /** Whoever holds this row adds the next event; others wait. */
  private void take(String project) throws SQLException {
    db.run("INSERT INTO site_chain(project, events, head) VALUES(?,?,?) ON CONFLICT(project) DO NOTHING", project, 0L, EventChain.START);
    db.run("UPDATE site_chain SET events = events WHERE project = ?", project);
  }

  private Optional<SiteEvent> event(String project, String id) throws SQLException {
    return db.one("SELECT body, hash FROM site_event WHERE project = ? AND id = ?",
        r -> SiteEvent.stored(r.getString(1), r.getString(2)), project, id);
  }

  private SiteEvent append(String project, String analysis, EventDraft draft, String link, List<WorkPlace> places) throws SQLException {
    long count = db.one("SELECT events FROM site_chain WHERE project = ?", r -> r.getLong(1), project).orElseThrow();
    if (count >= MOST_EVENTS) {
      throw new LedgerException(LedgerException.Reason.INVALID, "This record is full: it has " + MOST_EVENTS + " events.");
    }
    String head = db.one("SELECT head FROM site_chain WHERE project = ?", r -> r.getString(1), project).orElseThrow();
    Optional<WorkPlace> place = places.stream().filter(p -> p.id().equals(draft.place())).findFirst();
    if (!draft.place().isEmpty() && place.isEmpty()) {
      throw new LedgerException(LedgerException.Reason.INVALID, "This roof has no junction and no node " + draft.place() + ".");
    }
    ObjectNode fields = fields(project, analysis, draft, link);
    fields.put("line", place.map(WorkPlace::line).orElse(""));
    fields.put("photo", photo(project, draft));
    if (place.isPresent()) {
      new EventGate(place.get(), ofLine(project, place.get().line())).check(draft, fields);
    }
    SiteEvent e = EventChain.next(fields, count + 1, head);
    db.run("INSERT INTO site_event(project, seq, id, line, body, hash) VALUES(?,?,?,?,?,?)", project, e.seq(), e.id(), e.line(), e.body(),
        e.hash());
    db.run("UPDATE site_chain SET events = ?, head = ? WHERE project = ?", e.seq(), e.hash(), project);
    return e;
  }

  private static ObjectNode fields(String project, String analysis, EventDraft draft, String link) {
    ObjectNode f = JsonNodeFactory.instance.objectNode();
    f.put("id", draft.id()).put("kind", draft.kind()).put("project", project).put("analysis", analysis);
    f.put("place", draft.place()).put("point", draft.point()).put("by", storable(draft.by().strip())).put("link", link);
    f.put("at", draft.at()).put("received", Analyses.now()).put("base", draft.base()).put("after", draft.after());
    return f.put("text", storable(draft.text().strip()));
  }

  /** As every engine gives it back, or the hash would be another's. */
  private static String storable(String text) {
    return Database.storable(text);
  }

  private String photo(String project, EventDraft draft) throws SQLException {
    if (!draft.kind().equals("photo")) {
      return "";
    }
    return db.one("SELECT sha256 FROM site_photo WHERE project = ? AND event = ?", r -> r.getString(1), project, draft.id())
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.INVALID,
            "The picture of this event is not here; send it first, under the same id."));
  }

  private List<SiteEvent> ofLine(String project, String line) throws SQLException {
    return db.list("SELECT body, hash FROM site_event WHERE project = ? AND line = ? ORDER BY seq",
        r -> SiteEvent.stored(r.getString(1), r.getString(2)), project, line);
  }

  /** How the work stands, seen from one revision of the roof. */
  public SiteRecord of(String analysis) {
    List<WorkPlace> places = places(analysis);
    return SiteRecord.of(places, db.transaction(() -> db.list("SELECT body, hash FROM site_event WHERE project = ? ORDER BY seq",
        r -> SiteEvent.stored(r.getString(1), r.getString(2)), project(analysis))));
  }

  /** Junctions and nodes of an analysis with what there is to tick. */
  public List<WorkPlace> places(String analysis) {
    String hash = db.transaction(() -> {
      project(analysis);
      return db.one("SELECT sha256 FROM ledger WHERE analysis = ?", r -> r.getString(1), analysis)
          .orElseThrow(() -> new LedgerException(LedgerException.Reason.CONFLICT, "This analysis has no result."));
    });
    synchronized (recent) {
      return recent.computeIfAbsent(analysis + hash, k -> read(analysis));
    }
  }

  private List<WorkPlace> read(String analysis) {
    return db.transaction(() -> {
      Map<String, String> lines = db.list("SELECT place, line FROM site_line WHERE analysis = ?",
          r -> Map.entry(r.getString(1), r.getString(2)), analysis).stream()
          .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
      StoredLedger ledger = db.one("SELECT sha256, bytes, gzip FROM ledger WHERE analysis = ?",
          r -> new StoredLedger(r.getString(1), r.getLong(2), r.getBytes(3)), analysis)
          .orElseThrow(() -> new LedgerException(LedgerException.Reason.CONFLICT, "This analysis has no result."));
      return WorkPlaces.of(ledger, lines);
    });
  }

  private String project(String analysis) throws SQLException {
    return db.one("SELECT project FROM analysis WHERE id = ?", r -> r.getString(1), analysis)
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such analysis."));
  }

  /** Notes under which id a junction that was found again in the next revision goes on; within a transaction. */
  static void carry(Database db, String before, String place, String after, String placeNow) throws SQLException {
    String line = db.one("SELECT line FROM site_line WHERE analysis = ? AND place = ?", r -> r.getString(1), before, place).orElse(place);
    if (!line.equals(placeNow)) {
      db.run("INSERT INTO site_line(analysis, place, line) VALUES(?,?,?)", after, placeNow, line);
    }
  }
}
