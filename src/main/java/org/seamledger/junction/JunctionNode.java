package org.seamledger.junction;

import java.util.List;
import java.util.stream.Stream;
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

  public JunctionNode {
    ends = List.copyOf(ends);
    through = List.copyOf(through);
  }

  /** Ends of the lines that lead away from here: not those of a line so short that both its ends are here. */
  public List<LineEnd> leaving() {
    return ends.stream().filter(e -> ends.stream().filter(o -> o.junction().id().equals(e.junction().id())).count() == 1).toList();
  }

  /** Ids of the lines that end here or pass, sorted, each once. */
  public List<String> junctions() {
    return lines().map(Junction::id).sorted().distinct().toList();
  }

  /** Ids of the faces of these lines, by their numbers. */
  public List<String> faces() {
    return lines().flatMap(j -> j.faces().stream()).distinct().sorted((a, b) -> Integer.compare(a.length(), b.length()) != 0
        ? Integer.compare(a.length(), b.length()) : a.compareTo(b)).toList();
  }

  /** GlobalIds of the elements of the lines that end here, sorted. */
  public List<String> elements() {
    return ends.stream().flatMap(e -> e.junction().elements().stream()).sorted().distinct().toList();
  }

  JunctionNode named(String name) {
    return new JunctionNode(name, at, ends, through);
  }

  private Stream<Junction> lines() {
    return Stream.concat(ends.stream().map(LineEnd::junction), through.stream());
  }
}
