package org.seamledger.export.section;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
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
  private static final double NEAREST = 7;
  private static final double FARTHEST = 150;
  /** The leader ends this far before the place, so that several may point to one. */
  private static final double SHORT = 0.4;
  private static final int TURNS = 48;
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

  /** A ring and the end of its leader. */
  private record Ring(Vec2 middle, Vec2 place, double cost) {

    Vec2 edge() {
      return middle.towards(place, HALF / middle.distance(place));
    }

    Vec2 end() {
      return place.towards(middle, SHORT / middle.distance(place));
    }

    void close(PaperRoom room) {
      room.close(PaperRoom.square(middle, HALF));
      room.close(List.of(edge(), end()));
    }
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
    Ring[] best = rings(sorted, order, room.copy());
    for (int attempt = 0; attempt < ATTEMPTS && missing(best) > 0; attempt++) {
      Ring[] last = rings(sorted, order, room.copy());
      best = missing(last) < missing(best) ? last : best;
      order.sort((a, b) -> Boolean.compare(last[a] != null, last[b] != null));
    }
    for (int i = 0; i < best.length; i++) {
      draw(sorted.get(i), i + 1, best[i], room, svg);
    }
  }

  private static int missing(Ring[] rings) {
    return (int) Stream.of(rings).filter(Objects::isNull).count();
  }

  private static Ring[] rings(List<Note> notes, List<Integer> order, PaperRoom room) {
    Ring[] rings = new Ring[notes.size()];
    for (int i : order) {
      rings[i] = find(notes.get(i), room);
      if (rings[i] != null) {
        rings[i].close(room);
      }
    }
    return rings;
  }

  private static void draw(Note note, int number, Ring ring, PaperRoom room, Svg svg) {
    svg.open("g", "class", "pointed", "data-number", Integer.toString(number), "data-words", note.words);
    if (ring != null) {
      ring.close(room);
      svg.line("leader", ring.edge(), ring.end());
      svg.empty("circle", "class", "dot", "cx", Svg.number(ring.place.u()), "cy", Svg.number(ring.place.v()), "r", "0.5");
      svg.empty("circle", "class", "ring", "cx", Svg.number(ring.middle.u()), "cy", Svg.number(ring.middle.v()), "r", "2.1");
      svg.turned("number", ring.middle.plus(new Vec2(0, 0.9)), 0, Integer.toString(number));
    }
    svg.close("g");
  }

  private static Ring find(Note note, PaperRoom room) {
    Ring best = null;
    for (double away = NEAREST; away < FARTHEST; away += away < 30 ? 2 : 6) {
      for (Vec2 place : note.places) {
        for (int i = 0; i < TURNS; i++) {
          double turn = 2 * Math.PI * (i + 0.37) / TURNS;
          Ring ring = ring(place, place.plus(new Vec2(Math.cos(turn), Math.sin(turn)).times(away)), away, room);
          best = ring != null && (best == null || ring.cost < best.cost - 1e-9) ? ring : best;
        }
      }
      if (best != null && best.cost <= away) {
        break;
      }
    }
    return best;
  }

  /** A number's place with its cost; null where it isn't free. */
  private static Ring ring(Vec2 place, Vec2 middle, double away, PaperRoom room) {
    List<Vec2> square = PaperRoom.square(middle, HALF);
    List<Vec2> leader = List.of(middle.towards(place, HALF / away), place.towards(middle, SHORT / away));
    if (!room.isFree(square) || !room.isFree(leader)) {
      return null;
    }
    return new Ring(middle, place, away + 6 * room.crossed(square) + 2.5 * room.crossed(leader));
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
