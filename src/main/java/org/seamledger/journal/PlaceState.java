package org.seamledger.journal;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How a junction or node stands, worked out from its events in their order.
 *
 * <p>An answer about a point takes the place of those that its sender had seen: all up to its {@code base}, and the sender's own before it
 * ({@code after}). Answers that are left beside each other and agree are one; where they don't, the point is in conflict until somebody who
 * has seen them all answers.
 */
public final class PlaceState {

  /** A whole number of millimetres may differ by one from rounding. */
  private static final long SAME_MM = 1;

  /** How the place stands as a whole. */
  public enum Stage {
    OPEN, BEGUN, FAILED, CONFLICT,
    /** All hold points are settled. */
    CHECKED, SIGNED,
    /** It was signed off, and then it, or what is known of it, changed: somebody has to look and sign again. */
    RECHECK;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  private final WorkPlace place;
  private final List<SiteEvent> events;
  private final List<ItemState> items;
  private final Optional<SiteEvent> signature;
  private final boolean isStale;

  private PlaceState(WorkPlace place, List<SiteEvent> events) {
    this.place = place;
    this.events = List.copyOf(events);
    Map<String, List<SiteEvent>> answers = answers(events);
    Set<String> ticked = place.items().stream().map(WorkItem::id)
        .filter(id -> standing(answers.getOrDefault(id, List.of())) == ItemState.Standing.TICKED).collect(Collectors.toSet());
    items = place.items().stream().map(i -> new ItemState(i, standing(answers.getOrDefault(i.id(), List.of())),
        answers.getOrDefault(i.id(), List.of()), !ticked.containsAll(i.needs()))).toList();
    signature = signature(events);
    isStale = signature.isPresent() && (isChangedSince(signature.get()) || !isSame(signature.get().basis(), place.basis()));
  }

  /** @param events about this place, in their order */
  public static PlaceState of(WorkPlace place, List<SiteEvent> events) {
    return new PlaceState(place, events);
  }

  /** By point the answers that nobody who knew them has answered. */
  private static Map<String, List<SiteEvent>> answers(List<SiteEvent> events) {
    Map<String, List<SiteEvent>> heads = new LinkedHashMap<>();
    for (SiteEvent e : events) {
      if (e.kind().isAnswer() && !e.point().isEmpty()) {
        List<SiteEvent> before = heads.computeIfAbsent(e.point(), p -> new ArrayList<>());
        before.removeIf(h -> h.seq() <= e.base() || h.id().equals(e.text("after")));
        before.add(e);
      }
    }
    return heads;
  }

  private static ItemState.Standing standing(List<SiteEvent> answers) {
    List<ItemState.Standing> said = answers.stream().map(a -> said(a.kind())).distinct().toList();
    return said.isEmpty() ? ItemState.Standing.OPEN : said.size() == 1 ? said.get(0) : ItemState.Standing.CONFLICT;
  }

  private static ItemState.Standing said(EventKind kind) {
    return switch (kind) {
      case TICK -> ItemState.Standing.TICKED;
      case FAILURE -> ItemState.Standing.FAILED;
      case DEVIATION -> ItemState.Standing.DEVIATES;
      default -> ItemState.Standing.OPEN;
    };
  }

  private static Optional<SiteEvent> signature(List<SiteEvent> events) {
    return events.stream().filter(e -> e.kind().needsSigner()).reduce((a, b) -> b).filter(e -> e.kind() == EventKind.SIGN_OFF);
  }

  private boolean isChangedSince(SiteEvent signed) {
    return events.stream().anyMatch(e -> e.seq() > signed.seq() && e.kind().isAnswer());
  }

  /** Whether what was signed is what is there now; lengths and places may differ by what rounding does. */
  private static boolean isSame(JsonNode signed, JsonNode now) {
    if (signed.isNumber() && now.isNumber()) {
      return Math.abs(signed.longValue() - now.longValue()) <= SAME_MM;
    }
    if (!signed.isContainerNode() || signed.getNodeType() != now.getNodeType() || signed.size() != now.size()) {
      return signed.equals(now);
    }
    if (signed.isArray()) {
      for (int i = 0; i < signed.size(); i++) {
        if (!isSame(signed.get(i), now.get(i))) {
          return false;
        }
      }
      return true;
    }
    return signed.properties().stream().allMatch(f -> isSame(f.getValue(), now.path(f.getKey())));
  }

  public WorkPlace place() {
    return place;
  }

  /** Everything that was ever said about the place. */
  public List<SiteEvent> events() {
    return events;
  }

  public List<ItemState> items() {
    return items;
  }

  /** The sign-off that was not taken back, whether it still holds or not. */
  public Optional<SiteEvent> signature() {
    return signature;
  }

  /** Hold points that nobody has settled. */
  public List<ItemState> open() {
    return items.stream().filter(i -> !i.item().isStep() && !i.isSettled()).toList();
  }

  /** Whether all hold points are settled and nothing done is locked by one that isn't. */
  public boolean isChecked() {
    boolean isAhead = items.stream().anyMatch(i -> i.isLocked() && i.isSettled());
    return place.holdPoints().findAny().isPresent() && open().isEmpty() && !isAhead;
  }

  public Stage stage() {
    if (has(ItemState.Standing.CONFLICT)) {
      return Stage.CONFLICT;
    }
    if (has(ItemState.Standing.FAILED)) {
      return Stage.FAILED;
    }
    if (signature.isPresent()) {
      return isStale ? Stage.RECHECK : Stage.SIGNED;
    }
    return isChecked() ? Stage.CHECKED : items.stream().anyMatch(ItemState::isSettled) ? Stage.BEGUN : Stage.OPEN;
  }

  private boolean has(ItemState.Standing standing) {
    return items.stream().anyMatch(i -> i.standing() == standing);
  }
}
