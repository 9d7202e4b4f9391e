package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.seamledger.export.sheet.LeaderRing;
import org.seamledger.export.sheet.PaperBox;
import org.seamledger.export.sheet.PaperRoom;
import org.seamledger.export.sheet.Sheet;
import org.seamledger.export.sheet.Svg;
import org.seamledger.geometry.Vec2;

/**
 * Numbers beside what a section shows, each with a leader to it, and the list that says what they are. No leader crosses another, or words;
 * where a part can be pointed to at several places, the one is chosen from which its number is nearest.
 */
final class Keynotes {

  /** Half of the square that a number's ring takes. */
  private static final double HALF = 2.3;
  /** So often numbers are placed anew, those without room first. */
  private static final int ATTEMPTS = 24;

  /** What is listed together. */
  enum Group {
    METAL("Metal, in the order of fitting"), SEALS("Seals"), FASTENERS("Fasteners"), REST("Also shown");

    private final String head;

    Group(String head) {
      this.head = head;
    }
  }

  private record Note(Group group, String words, List<Vec2> places) {
  }

  private final List<Note> notes = new ArrayList<>();
  private final List<String> unseen = new ArrayList<>();

  /** Names a part; the leader may go to any of the places, on paper. Words that stand already are not repeated. */
  void add(Group group, String words, List<Vec2> places) {
    if (notes.stream().noneMatch(n -> n.words.equals(words))) {
      notes.add(new Note(group, words, List.copyOf(places)));
    }
  }

  /** Names a part of the detail that no place of the section shows. */
  void unseen(String words) {
    unseen.add(words);
  }

  private List<Note> sorted() {
    List<Note> sorted = new ArrayList<>();
    for (Group g : Group.values()) {
      notes.stream().filter(n -> n.group == g).forEach(sorted::add);
    }
    return sorted;
  }

  /** Tells dimensions to keep away from the places that leaders will go to. */
  void mark(PaperRoom room) {
    for (Note note : notes) {
      note.places.forEach(p -> room.line(List.of(p.plus(new Vec2(-1, 0)), p.plus(new Vec2(1, 0)))));
    }
  }

  /** Draws numbers and leaders where there is room. */
  void draw(PaperRoom room, Svg svg) {
    List<Note> sorted = sorted();
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < sorted.size(); i++) {
      order.add(i);
    }
    // What can be pointed to at few places has the first choice; then what found no room, until all have some.
    order.sort((a, b) -> Integer.compare(sorted.get(a).places.size(), sorted.get(b).places.size()));
    LeaderRing[] best = rings(sorted, order, room.copy());
    for (int attempt = 0; attempt < ATTEMPTS && missing(best) > 0; attempt++) {
      LeaderRing[] last = rings(sorted, order, room.copy());
      best = missing(last) < missing(best) ? last : best;
      order.sort((a, b) -> Boolean.compare(last[a] != null, last[b] != null));
    }
    for (int i = 0; i < best.length; i++) {
      if (best[i] == null) {
        makeRoom(sorted, best, i, room);
      }
    }
    for (int i = 0; i < best.length; i++) {
      draw(sorted.get(i), i + 1, best[i], room, svg);
    }
  }

  /** Looks for a number that can give up its place to one that has none, and go elsewhere. */
  private static void makeRoom(List<Note> notes, LeaderRing[] rings, int without, PaperRoom room) {
    for (int other = 0; other < rings.length && rings[without] == null; other++) {
      if (rings[other] != null) {
        LeaderRing kept = rings[other];
        PaperRoom rest = room.copy();
        rings[other] = null;
        Stream.of(rings).filter(Objects::nonNull).forEach(r -> r.close(rest));
        Optional<LeaderRing> here = LeaderRing.find(notes.get(without).places, HALF, rest);
        here.ifPresent(r -> r.close(rest));
        Optional<LeaderRing> there = here.isEmpty() ? here : LeaderRing.find(notes.get(other).places, HALF, rest);
        rings[without] = there.isPresent() ? here.get() : null;
        rings[other] = there.orElse(kept);
      }
    }
  }

  private static int missing(LeaderRing[] rings) {
    return (int) Stream.of(rings).filter(Objects::isNull).count();
  }

  private static LeaderRing[] rings(List<Note> notes, List<Integer> order, PaperRoom room) {
    LeaderRing[] rings = new LeaderRing[notes.size()];
    for (int i : order) {
      rings[i] = LeaderRing.find(notes.get(i).places, HALF, room).orElse(null);
      if (rings[i] != null) {
        rings[i].close(room);
      }
    }
    return rings;
  }

  private static void draw(Note note, int number, LeaderRing ring, PaperRoom room, Svg svg) {
    svg.open("g", "class", "pointed", "data-number", Integer.toString(number), "data-words", note.words);
    if (ring != null) {
      ring.close(room);
      ring.draw(Integer.toString(number), "ring", "number", svg);
    }
    svg.close("g");
  }

  /** The list of all numbers in a column, as large as it has room; gives y below it. */
  double list(PaperBox column, Svg svg) {
    double size = 2.6;
    while (size > 1.5 && height(column, size) > column.height()) {
      size -= 0.1;
    }
    double y = column.top();
    Group group = null;
    int number = 0;
    for (Note note : sorted()) {
      number++;
      if (note.group != group) {
        group = note.group;
        svg.text("head", new Vec2(column.left(), y + size), group.head);
        y += size * 1.9;
      }
      svg.turned("list-number", new Vec2(column.left() + 2.4, y + size), 0, Integer.toString(number));
      for (String line : Sheet.wrapped(note.words, columns(column, size))) {
        svg.sized("list", size, new Vec2(column.left() + 6, y + size), line);
        y += size * 1.32;
      }
      y += size * 0.35;
    }
    if (!unseen.isEmpty()) {
      svg.text("head", new Vec2(column.left(), y + size), "Also in this detail, not drawn");
      y += size * 1.9;
      for (String words : unseen) {
        for (String line : Sheet.wrapped("– " + words, columns(column, size))) {
          svg.sized("list", size, new Vec2(column.left() + 6, y + size), line);
          y += size * 1.32;
        }
      }
    }
    return y;
  }

  private static int columns(PaperBox column, double size) {
    return (int) ((column.width() - 6) / (size * 0.53));
  }

  private double height(PaperBox column, double size) {
    double lines = notes.stream().mapToDouble(n -> Sheet.wrapped(n.words, columns(column, size)).size() * 1.32 + 0.35).sum();
    double more = unseen.stream().mapToDouble(w -> Sheet.wrapped("– " + w, columns(column, size)).size() * 1.32).sum();
    return size * (lines + more + 5 * 1.9);
  }
}
