package org.seamledger.ledger;

import java.sql.SQLException;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Pictures of the work, in the database beside the events that show them: one backup has both, and several servers see the same. */
public final class SitePhotos {

  /** Most of one project. */
  public static final int MOST = 1000;

  private final Database db;

  SitePhotos(Database db) {
    this.db = db;
  }

  /**
   * A picture without its bytes.
   *
   * @param sha256 of the bytes that are kept, 64 hexadecimal digits
   * @param location where it was taken, as "latitude,longitude" in degrees, or empty
   */
  public record Photo(String sha256, int width, int height, long bytes, String location) {
  }

  /** The picture that was kept for an event; empty where none came. */
  public Optional<Photo> ofEvent(String project, String event) {
    return db.transaction(() -> find(project, event));
  }

  /** All pictures by the id of their event. */
  public Map<String, Photo> ofProject(String project) {
    String all = "SELECT event, sha256, width, height, bytes, location FROM site_photo WHERE project = ? ORDER BY event";
    return db.transaction(() -> db.list(all,
        r -> Map.entry(r.getString(1),
            new Photo(r.getString(2), r.getInt(3), r.getInt(4), r.getLong(5), r.getString(6))),
        project)).stream().collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
  }

  private Optional<Photo> find(String project, String event) throws SQLException {
    return db.one("SELECT sha256, width, height, bytes, location FROM site_photo WHERE project = ? AND event = ?",
        r -> new Photo(r.getString(1), r.getInt(2), r.getInt(3), r.getLong(4), r.getString(5)), project, event);
  }

  /**
   * Keeps the picture of an event; where one is there already, that one stays.
   *
   * @throws LedgerException of {@link LedgerException.Reason#INVALID} where the project has too many
   */
  public Photo put(String project, String event, Photo photo, byte[] jpeg) {
    return db.transaction(() -> {
      Optional<Photo> known = find(project, event);
      if (known.isPresent()) {
        return known.get();
      }
      if (db.one("SELECT COUNT(*) FROM site_photo WHERE project = ?", r -> r.getInt(1), project).orElse(0) >= MOST) {
        throw new LedgerException(LedgerException.Reason.INVALID, "This roof has " + MOST + " photos already; no more are kept.");
      }
      db.run("INSERT INTO site_photo(project, event, sha256, width, height, location, bytes, jpeg) VALUES(?,?,?,?,?,?,?,?)"
          + " ON CONFLICT(project, event) DO NOTHING", project, event, photo.sha256(), photo.width(), photo.height(), photo.location(),
          (long) jpeg.length, jpeg);
      return find(project, event).orElseThrow();
    });
  }

  /** The bytes of a picture, JPEG. */
  public Optional<byte[]> bytes(String project, String sha256) {
    return db
        .transaction(() -> db.one("SELECT jpeg FROM site_photo WHERE project = ? AND sha256 = ?", r -> r.getBytes(1), project, sha256));
  }
}
