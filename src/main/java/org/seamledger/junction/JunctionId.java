package org.seamledger.junction;

import org.seamledger.finding.Sha256;
import org.seamledger.geometry.Vec3;

/**
 * Names a junction, or a node, by what does not change when a file is exported again or reordered: the GlobalIds that meet and where the
 * line's middle and ends, or the point, are, to the centimetre.
 */
final class JunctionId {

  /** Coordinates in models are often whole centimetres or halves; this shift keeps them away from where rounding turns over. */
  private static final double SHIFT = 0.0021371;
  private static final String DIGITS = "0123456789abcdefghjkmnpqrstvwxyz";

  private JunctionId() {
  }

  static String of(Junction j) {
    Vec3 first = j.path().get(0);
    Vec3 last = j.path().get(j.path().size() - 1);
    String a = rounded(first);
    String b = rounded(last);
    String text = String.join(" ", j.elements()) + "|" + j.facts().word("against") + "|" + (a.compareTo(b) < 0 ? a + b : b + a) + "|"
        + rounded(middle(j)) + "|" + Math.round((j.lengthM() + SHIFT) * 100);
    return named("J", text);
  }

  /** Of a node: the GlobalIds of the lines that end there and where it is. */
  static String of(JunctionNode node) {
    return named("N", String.join(" ", node.elements()) + "|" + rounded(node.at()));
  }

  private static String named(String letter, String text) {
    byte[] hash = Sha256.of(text);
    StringBuilder id = new StringBuilder(letter);
    for (int i = 0; i < 8; i++) {
      id.append(DIGITS.charAt(hash[i] & 31));
    }
    return id.toString();
  }

  private static Vec3 middle(Junction j) {
    Vec3 sum = Vec3.ZERO;
    double length = 0;
    for (int i = 1; i < j.path().size(); i++) {
      double l = j.path().get(i - 1).distance(j.path().get(i));
      sum = sum.plus(j.path().get(i - 1).towards(j.path().get(i), 0.5).times(l));
      length += l;
    }
    return sum.times(1 / Math.max(1e-12, length));
  }

  private static String rounded(Vec3 p) {
    return Math.round((p.x() + SHIFT) * 100) + "," + Math.round((p.y() + SHIFT) * 100) + "," + Math.round((p.z() + SHIFT) * 100) + ";";
  }
}
