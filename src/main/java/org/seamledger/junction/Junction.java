package org.seamledger.junction;

import java.util.List;
import org.seamledger.geometry.Vec3;

/**
 * One line on the roof's surface where a face ends, with what was measured along it.
 *
 * @param id stable over exports: a hash of the elements and the place
 * @param path corners of the line in the building's local coordinates, metres; a closed line repeats its first corner at the end
 * @param faces ids of the one or two roof faces that end here
 * @param elements GlobalIds of the roof elements and of the neighbours that meet here, roof first
 */
public record Junction(String id, List<Vec3> path, List<String> faces, List<String> elements, Facts facts) {

  public Junction {
    path = List.copyOf(path);
    faces = List.copyOf(faces);
    elements = List.copyOf(elements);
  }

  /** The same under an id that follows from its elements and its place. */
  public Junction identified() {
    return new Junction(JunctionId.of(this), path, faces, elements, facts);
  }

  /** True length in space, metres. */
  public double lengthM() {
    double sum = 0;
    for (int i = 1; i < path.size(); i++) {
      sum += path.get(i - 1).distance(path.get(i));
    }
    return sum;
  }
}
