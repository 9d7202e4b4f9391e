package org.seamledger.ledger;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import org.seamledger.journal.EventDraft;
import org.seamledger.journal.EventKind;
import org.seamledger.journal.ItemState;
import org.seamledger.journal.PlaceState;
import org.seamledger.journal.SiteEvent;
import org.seamledger.journal.WorkItem;
import org.seamledger.journal.WorkPlace;

/** What may not be said yet about a place: a step that a hold point locks, a sign-off with something open. */
final class EventGate {

  private final WorkPlace place;
  private final PlaceState now;

  EventGate(WorkPlace place, List<SiteEvent> events) {
    this.place = place;
    this.now = PlaceState.of(place, events);
  }

  /**
   * @param fields of the event; a sign-off gets what it signs
   * @throws LedgerException of {@link LedgerException.Reason#CONFLICT} in words for who sent it
   */
  void check(EventDraft draft, ObjectNode fields) {
    if (!draft.point().isEmpty()) {
      point(draft);
    }
    if (draft.kind().equals(EventKind.SIGN_OFF.word())) {
      sign(draft);
      fields.set("basis", place.basis());
    }
  }

  /** A step that is locked is not done, whatever words say so: neither as it should be nor otherwise. */
  private void point(EventDraft draft) {
    ItemState item = now.items().stream().filter(i -> i.item().id().equals(draft.point())).findFirst()
        .orElseThrow(() -> new LedgerException(LedgerException.Reason.INVALID,
            place.id() + " has no hold point and no step " + draft.point() + " in this revision."));
    boolean isDone = draft.kind().equals(EventKind.TICK.word()) || draft.kind().equals(EventKind.DEVIATION.word());
    if (isDone && item.isLocked()) {
      refuse(item);
    }
  }

  private void refuse(ItemState locked) {
    String open = locked.item().needs().stream().map(this::label).filter(Optional::isPresent).map(Optional::get).findFirst().orElse("");
    throw conflict(place.id() + " is locked: before " + locked.item().label() + ", somebody has to look and tick under their name: "
        + open + ".");
  }

  private Optional<String> label(String id) {
    return now.items().stream().filter(i -> i.item().id().equals(id) && i.standing() != ItemState.Standing.TICKED).map(ItemState::item)
        .map(WorkItem::check).findFirst();
  }

  private void sign(EventDraft draft) {
    if (now.events().stream().anyMatch(e -> e.seq() > draft.base())) {
      throw conflict("Something was said of " + place.id() + " that you had not seen when you signed; look again, and sign then.");
    }
    if (now.items().stream().anyMatch(i -> i.standing() == ItemState.Standing.CONFLICT)) {
      throw conflict("Two people said different things of " + place.id() + "; say first what holds.");
    }
    if (!now.open().isEmpty()) {
      throw conflict(place.id() + " can't be signed off: " + now.open().size() + " of its hold points are open, first: before "
          + now.open().get(0).item().label() + ".");
    }
    if (now.items().stream().anyMatch(i -> i.isLocked() && i.isSettled())) {
      throw conflict(place.id() + " can't be signed off: a step was done before the recheck that it waits for.");
    }
  }

  private static LedgerException conflict(String words) {
    return new LedgerException(LedgerException.Reason.CONFLICT, words);
  }
}
