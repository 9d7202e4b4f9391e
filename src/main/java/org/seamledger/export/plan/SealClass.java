package org.seamledger.export.plan;

import java.util.List;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.detail.Seal;

/** Which entry of the palette a junction has: what seals it. The page sorts by the same order of questions. */
final class SealClass {

  private SealClass() {
  }

  static String of(DetailedJunction junction) {
    Detail detail = junction.detail();
    List<Seal> seals = detail.seals();
    if (seals.stream().anyMatch(s -> s.exposure() == Seal.Exposure.EXPOSED)) {
      return "exposed";
    }
    boolean hasBead = has(seals, Seal.Form.BEAD);
    if (has(seals, Seal.Form.TAPE)) {
      return hasBead ? "tape-bead" : "tape";
    }
    if (hasBead) {
      return "bead";
    }
    if (has(seals, Seal.Form.IN_SEAM)) {
      return "in-seam";
    }
    return junction.junction().type().equals(Kind.UNCLASSIFIED) || detail.metal().isEmpty() ? "none" : "metal";
  }

  private static boolean has(List<Seal> seals, Seal.Form form) {
    return seals.stream().anyMatch(s -> s.form() == form);
  }
}
