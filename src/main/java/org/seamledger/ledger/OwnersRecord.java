package org.seamledger.ledger;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.seamledger.journal.EventKind;
import org.seamledger.journal.SiteEvent;
import org.seamledger.journal.SiteRecord;

/**
 * What the owner of a roof gets: what was said of the work on it, seen from one revision.
 *
 * @param project its name
 * @param result hash of the result that the places are those of
 * @param photos by the id of the event that shows each
 * @param links those that events came by
 */
public record OwnersRecord(StoredAnalysis analysis, String project, String result, SiteRecord record, Map<String, SitePhotos.Photo> photos,
    List<SiteLinks.Link> links) {

  public OwnersRecord {
    photos = Map.copyOf(photos);
    links = List.copyOf(links);
  }

  /** @throws LedgerException where there is no such analysis, or it has no result */
  public static OwnersRecord of(Store store, String id) {
    StoredAnalysis analysis = store.analyses().get(id);
    SiteRecord record = store.records().of(id);
    Set<String> used = record.events().stream().map(e -> e.text("link")).collect(Collectors.toSet());
    return new OwnersRecord(analysis, store.analyses().project(analysis.project()).name(), store.analyses().ledgerHash(id), record,
        store.photos().ofProject(analysis.project()),
        store.links().ofProject(analysis.project()).stream().filter(l -> used.contains(l.id())).toList());
  }

  /** Events of some kinds, in their order. */
  public List<SiteEvent> events(EventKind... kinds) {
    Set<EventKind> wanted = Set.of(kinds);
    return record.events().stream().filter(e -> wanted.contains(e.kind())).toList();
  }

  /** Who an event comes from, with the link that let them in. */
  public String author(SiteEvent event) {
    return event.by() + links.stream().filter(l -> l.id().equals(event.text("link"))).map(l -> " (link of " + l.name() + ")").findFirst()
        .orElse("");
  }
}
