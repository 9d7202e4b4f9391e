package org.seamledger.takeoff;

import java.util.List;
import org.seamledger.element.Building;
import org.seamledger.element.Element;
import org.seamledger.quantity.GuttersAndParapets;

/**
 * The bodies round the junctions, for pictures: nothing is counted from them. Local coordinates, metres. Two are equal where they hold the
 * same elements, since bodies have no equality of their own.
 */
public final class Surroundings {

  public static final Surroundings NONE = new Surroundings(List.of(), List.of(), GuttersAndParapets.NONE);

  private final List<Element> roofs;
  private final List<Element> neighbours;
  private final GuttersAndParapets along;

  private Surroundings(List<Element> roofs, List<Element> neighbours, GuttersAndParapets along) {
    this.roofs = List.copyOf(roofs);
    this.neighbours = List.copyOf(neighbours);
    this.along = along;
  }

  static Surroundings of(Building building, GuttersAndParapets along) {
    return new Surroundings(building.roofs(), building.neighbours(), along);
  }

  /** Elements that carry the roof's surface, ordered by GlobalId. */
  public List<Element> roofs() {
    return roofs;
  }

  /** Elements near the roofs, ordered by GlobalId. */
  public List<Element> neighbours() {
    return neighbours;
  }

  /** What the model holds along the junctions; by it details are chosen. */
  public GuttersAndParapets along() {
    return along;
  }

  private static List<String> ids(List<Element> elements) {
    return elements.stream().map(Element::globalId).toList();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Surroundings o && ids(roofs).equals(ids(o.roofs)) && ids(neighbours).equals(ids(o.neighbours))
        && along.equals(o.along);
  }

  @Override
  public int hashCode() {
    return 31 * ids(roofs).hashCode() + ids(neighbours).hashCode();
  }
}
