package org.seamledger.ledger;

import java.util.HexFormat;
import org.seamledger.finding.Sha256;

/** Hashes that make ids. */
final class Digests {

  private Digests() {
  }

  /** The first 64 bits of the hash of a text, as 16 hexadecimal digits. */
  static String shortId(String text) {
    byte[] hash = Sha256.of(text);
    return HexFormat.of().formatHex(hash, 0, 8);
  }
}
