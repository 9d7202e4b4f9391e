package org.seamledger.quantity;

import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.quantity.physics.Metal;

/**
 * What the model says of what lies below the roof and of what it is made of.
 *
 * @param doors GlobalIds of doors of walls, by the eave that drops on whoever goes through them
 * @param rooms GlobalIds of rooms, by the line that carries water over them
 * @param wallInsideM plan distance from an eave to the inside of the wall behind it, metres; an eave without a wall in the model has none
 * @param metals metal of a face, by its id, where the model names one
 */
public record BelowRoof(SortedMap<String, List<String>> doors, SortedMap<String, List<String>> rooms, SortedMap<String, Double> wallInsideM,
    SortedMap<String, Metal> metals) {

  /** Where nothing is known of it. */
  public static final BelowRoof NONE = new BelowRoof(new TreeMap<>(), new TreeMap<>(), new TreeMap<>(), new TreeMap<>());

  public BelowRoof {
    doors = Collections.unmodifiableSortedMap(new TreeMap<>(doors));
    rooms = Collections.unmodifiableSortedMap(new TreeMap<>(rooms));
    wallInsideM = Collections.unmodifiableSortedMap(new TreeMap<>(wallInsideM));
    metals = Collections.unmodifiableSortedMap(new TreeMap<>(metals));
  }
}
