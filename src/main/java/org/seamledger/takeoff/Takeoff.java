package org.seamledger.takeoff;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.detail.KindedJunction;
import org.seamledger.element.ModelInfo;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Tolerance;
import org.seamledger.geometry.Vec3;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.roof.RoofFace;

/**
 * The result of one analysis. The same models, system and shapes give an equal takeoff.
 *
 * @param version of this program
 * @param shapes hash of the rules that were used
 * @param offset world coordinates of the local origin, metres: world = local + offset
 * @param tolerance how exact the models were taken to be
 * @param system the roof system in force
 * @param elements what faces, junctions and findings refer to, by GlobalId
 * @param faces in the order of their ids' numbers
 * @param junctions ordered by id
 * @param findings the worst first
 */
public record Takeoff(String version, String shapes, List<ModelInfo> models, Vec3 offset, Tolerance tolerance, RoofSystem system,
    SortedMap<String, ElementLabel> elements, List<RoofFace> faces, List<KindedJunction> junctions, List<Finding> findings) {

  public Takeoff {
    models = List.copyOf(models);
    elements = Collections.unmodifiableSortedMap(new TreeMap<>(elements));
    faces = List.copyOf(faces);
    junctions = junctions.stream().sorted(Comparator.comparing(j -> j.junction().id())).toList();
    findings = findings.stream().sorted().distinct().toList();
  }

  /** A point of the result in the model's own coordinates, metres. */
  public Vec3 world(Vec3 local) {
    return local.plus(offset);
  }

  /** Codes of the findings that concern each junction, sorted, each once; no entry where there are none. */
  public SortedMap<String, SortedSet<String>> codesByJunction() {
    SortedMap<String, SortedSet<String>> codes = new TreeMap<>();
    for (Finding f : findings) {
      if (!f.junction().isEmpty()) {
        codes.computeIfAbsent(f.junction(), id -> new TreeSet<>()).add(f.code());
      }
    }
    return codes;
  }
}
