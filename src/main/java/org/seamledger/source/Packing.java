package org.seamledger.source;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** How a file is packed, by its first bytes (RFC 1952 section 2.3.1; the ZIP application note section 4.3). */
enum Packing {
  NONE, GZIP, ZIP;

  static Packing of(Path path) throws IOException {
    byte[] magic;
    try (InputStream in = Files.newInputStream(path)) {
      magic = in.readNBytes(4);
    }
    if (magic.length >= 2 && (magic[0] & 0xFF) == 0x1F && (magic[1] & 0xFF) == 0x8B) {
      return GZIP;
    }
    // An empty archive starts with its end record, 5 and 6.
    boolean zip = magic.length == 4 && magic[0] == 'P' && magic[1] == 'K'
        && (magic[2] == 3 && magic[3] == 4 || magic[2] == 5 && magic[3] == 6);
    return zip ? ZIP : NONE;
  }
}
