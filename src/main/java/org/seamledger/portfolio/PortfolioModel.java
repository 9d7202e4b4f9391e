package org.seamledger.portfolio;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.regex.Pattern;
import org.seamledger.finding.Sha256;

/**
 * A model of a portfolio.
 *
 * @param place where it is: a path, or an address in a file system that only a cluster knows
 * @param name what it is called in tables, unique: its path from where the portfolio begins, with {@code /}
 */
public record PortfolioModel(String place, String name) {

  private static final Pattern ADDRESS = Pattern.compile("[a-z][a-z0-9+.-]+:/.*");

  public PortfolioModel(Path path, String name) {
    this(path.toString(), name);
  }

  /** Whether a place is an address in a file system that is none of this machine's: more than the letter of a drive begins it. */
  public static boolean isAddress(String place) {
    return ADDRESS.matcher(place).matches();
  }

  Path path() {
    return Path.of(place);
  }

  /** The hash of the file as it is, packed or not; the empty string where it can't be read. */
  public String sha256() {
    MessageDigest digest = Sha256.digest();
    try (InputStream in = new DigestInputStream(Files.newInputStream(path()), digest)) {
      in.transferTo(OutputStream.nullOutputStream());
    } catch (IOException e) {
      return "";
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Bytes after unpacking, as far as the name tells; 0 where there is no such file. */
  public long roughBytes() {
    try {
      return Files.size(path()) * (name.toLowerCase(java.util.Locale.ROOT).endsWith(".ifc") ? 1 : 8);
    } catch (IOException e) {
      return 0;
    }
  }
}
