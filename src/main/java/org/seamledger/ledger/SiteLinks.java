package org.seamledger.ledger;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.seamledger.finding.Sha256;
import org.seamledger.journal.LinkScope;

/** Links that let their holders see one roof, tick or sign there. Storage knows a hash of each, not the link. */
public final class SiteLinks {

  /** How every link's token begins, so that it is told from the operator's. */
  public static final String PREFIX = "roof-";
  private static final int BYTES = 32;
  private static final int MOST = 500;
  private static final int LONGEST_NAME = 100;
  private static final Duration LONGEST = Duration.ofDays(400);
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final String COLUMNS = "SELECT id, project, scope, name, created, expires, revoked FROM site_link ";

  private final Database db;

  SiteLinks(Database db) {
    this.db = db;
  }

  /**
   * A link.
   *
   * @param name whom it was made for, in the operator's words
   * @param revoked when it was revoked, or empty
   */
  public record Link(String id, String project, LinkScope scope, String name, String created, String expires, String revoked) {

    /** Whether it lets anybody in at this time. */
    public boolean isValid(Instant now) {
      return revoked.isEmpty() && now.isBefore(Instant.parse(expires));
    }
  }

  /** A new link with its token, which nobody is told a second time. */
  public record Made(Link link, String token) {
  }

  /** @param life how long it is valid, from now */
  public Made make(String project, LinkScope scope, String name, Duration life) {
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      throw invalid("A link needs the name of whom it is for, of at most " + LONGEST_NAME + " characters.");
    }
    if (life.isNegative() || life.isZero() || life.compareTo(LONGEST) > 0) {
      throw invalid("A link is valid for 1 to " + LONGEST.toDays() + " days.");
    }
    byte[] bits = new byte[BYTES];
    RANDOM.nextBytes(bits);
    String token = PREFIX + Base64.getUrlEncoder().withoutPadding().encodeToString(bits);
    Instant now = Instant.now().truncatedTo(ChronoUnit.SECONDS);
    Link link = new Link(Analyses.newId(), project, scope, name.strip(), now.toString(), now.plus(life).toString(), "");
    db.transaction(() -> {
      if (db.one("SELECT COUNT(*) FROM site_link WHERE project = ?", r -> r.getInt(1), project).orElse(0) >= MOST) {
        throw invalid("This roof has " + MOST + " links already.");
      }
      return db.run("INSERT INTO site_link(id, token, project, scope, name, created, expires) VALUES(?,?,?,?,?,?,?)", link.id(),
          hash(token), project, scope.word(), link.name(), link.created(), link.expires());
    });
    return new Made(link, token);
  }

  private static LedgerException invalid(String words) {
    return new LedgerException(LedgerException.Reason.INVALID, words);
  }

  private static String hash(String token) {
    return Sha256.hex(token.getBytes(StandardCharsets.UTF_8));
  }

  /** The link of a token, whether it is valid or not. */
  public Optional<Link> find(String token) {
    return db.read(() -> db.one(COLUMNS + "WHERE token = ?", SiteLinks::row, hash(token)));
  }

  public List<Link> ofProject(String project) {
    return db.read(() -> db.list(COLUMNS + "WHERE project = ? ORDER BY created, id", SiteLinks::row, project));
  }

  /** Ends a link now; one that has ended stays so. */
  public void revoke(String id) {
    db.transaction(() -> {
      if (db.run("UPDATE site_link SET revoked = CASE WHEN revoked = '' THEN ? ELSE revoked END WHERE id = ?", Analyses.now(), id) == 0) {
        throw new LedgerException(LedgerException.Reason.NOT_FOUND, "There is no such link.");
      }
      return null;
    });
  }

  private static Link row(ResultSet r) throws SQLException {
    return new Link(r.getString(1), r.getString(2), LinkScope.of(r.getString(3)).orElse(LinkScope.VIEW), r.getString(4), r.getString(5),
        r.getString(6), r.getString(7));
  }
}
