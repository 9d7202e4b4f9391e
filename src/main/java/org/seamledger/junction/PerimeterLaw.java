package org.seamledger.junction;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;
import org.seamledger.roof.Roof;
import org.seamledger.roof.RoofFace;

/** The check that ships with every result: the junctions around a face add up to the perimeter of its exposed area. */
public final class PerimeterLaw {

  private PerimeterLaw() {
  }

  /** A finding for every face around which the junction lengths do not add up to the perimeter of its exposed area (metres). */
  public static List<Finding> findings(Roof roof, List<Junction> junctions) {
    Map<String, Double> sums = new HashMap<>();
    for (Junction j : junctions) {
      j.faces().forEach(f -> sums.merge(f, j.lengthM() / (isSplit(j) ? j.faces().size() : 1), Double::sum));
    }
    List<Finding> findings = new ArrayList<>();
    for (RoofFace face : roof.faces()) {
      double perimeter = face.perimeterM();
      double sum = sums.getOrDefault(face.id(), 0.0);
      if (Math.abs(sum - perimeter) > Math.max(roof.limits().stretches().tinyM(), roof.limits().lines().sumShare() * perimeter)) {
        findings.add(Finding.of(Code.PERIMETER_MISMATCH, String.format(Locale.ROOT,
            "Junctions around face %s add up to %.3f m, its perimeter is %.3f m.", face.id(), sum, perimeter), face.elements()));
      }
    }
    return findings;
  }

  /** A round thing that breaks through several faces has one line of which each face has a part. */
  private static boolean isSplit(Junction j) {
    return j.facts().word("against").equals("round");
  }
}
