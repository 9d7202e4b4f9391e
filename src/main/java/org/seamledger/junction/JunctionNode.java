package org.seamledger.junction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.seamledger.geometry.Vec3;

/**
 * A point where lines end and meet.
 *
 * @param id stable over exports, as ids of junctions are: a hash of the elements and the place
 * @param at the middle of its ends, local coordinates, metres; each of them is within the gap tolerance of it
 * @param ends of lines, ordered by their ids
 * @param through lines that are met here and go on, ordered by id
 */
public record JunctionNode(String id, Vec3 at, List<LineEnd> ends, List<Junction> through) {

  private static final Comparator<String> BY_NUMBER = Comparator.comparingInt(String::length).thenComparing(Comparator.naturalOrder());

  public JunctionNode {
    ends = List.copyOf(ends);
    through = List.copyOf(through);
  }

  /** Ends of the lines that lead away from here: not those of a line so short that both its ends are here. */
  public List<LineEnd> leaving() {
    List<LineEnd> leaving = new ArrayList<>(ends.size());
    for (LineEnd e : ends) {
      if (times(e.junction().id()) == 1) {
        leaving.add(e);
      }
    }
    return leaving;
  }

  private int times(String junction) {
    int times = 0;
    for (LineEnd e : ends) {
      times += e.junction().id().equals(junction) ? 1 : 0;
    }
    return times;
  }

  /** Ids of the lines that end here or pass, sorted, each once. */
  public List<String> junctions() {
    Set<String> ids = new TreeSet<>();
    ends.forEach(e -> ids.add(e.junction().id()));
    through.forEach(j -> ids.add(j.id()));
    return List.copyOf(ids);
  }

  /** Ids of the faces of these lines, by their numbers. */
  public List<String> faces() {
    Set<String> ids = new TreeSet<>(BY_NUMBER);
    ends.forEach(e -> ids.addAll(e.junction().faces()));
    through.forEach(j -> ids.addAll(j.faces()));
    return List.copyOf(ids);
  }

  /** GlobalIds of the elements of the lines that end here, sorted. */
  public List<String> elements() {
    return ends.stream().flatMap(e -> e.junction().elements().stream()).sorted().distinct().toList();
  }

  JunctionNode named(String name) {
    return new JunctionNode(name, at, ends, through);
  }
}
