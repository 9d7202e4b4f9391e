package org.seamledger.element;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Solid;

/**
 * A building element in this program's own words: metres, Z up, the building's local coordinates.
 *
 * @param globalId as the file has it
 * @param ifcClass such as {@code IfcWall}, in the standard's spelling
 * @param category what it is to a roof
 * @param name as the file has it, or the empty string
 * @param model index of the model it comes from, from 0
 * @param body its solids, together, with nothing taken away for openings
 * @param openings the holes in it (of its whole, too, where the whole has no body of its own)
 * @param whole GlobalId of the element that it is a part of, or the empty string
 * @param properties property or quantity name {@code Set.Name} to value, for those that matter to a roof; lengths in metres, areas in
 *     square metres, angles in degrees
 */
public record Element(String globalId, String ifcClass, Category category, String name, int model, List<Solid> body,
    List<Opening> openings, String whole, SortedMap<String, String> properties) {

  /** Property that holds the names of what an element is made of; {@code Whole.} before it where the whole states them. */
  public static final String MATERIALS = "Materials";

  public Element {
    body = List.copyOf(body);
    openings = List.copyOf(openings);
    properties = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(properties));
  }

  public Box3 bounds() {
    return body.stream().map(Solid::bounds).reduce(Box3.EMPTY, Box3::union);
  }

  /** The body less its openings. */
  public Solid solid() {
    Solid all = body.size() == 1 ? body.get(0) : new Solid.Union(body);
    List<Solid> holes = openings.stream().flatMap(o -> o.body().stream()).toList();
    return holes.isEmpty() ? all : new Solid.Difference(all, new Solid.Union(holes));
  }
}
