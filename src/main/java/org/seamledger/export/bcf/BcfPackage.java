package org.seamledger.export.bcf;

import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.seamledger.bcf.BcfVersion;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.view.RoofScene;
import org.seamledger.export.view.Sight;
import org.seamledger.export.view.Snapshot;
import org.seamledger.export.wording.FindingGroups;
import org.seamledger.finding.Finding;
import org.seamledger.takeoff.Takeoff;

/**
 * All findings of a takeoff as a BCF package, a topic each, in the order in which people read them. The same takeoff and options give the
 * same bytes, and the same finding has the same topic in every revision.
 */
public final class BcfPackage {

  private static final int WIDTH = 1200;
  /** Of more topics than this the pictures are smaller. */
  private static final int MANY = 400;
  private static final int WIDTH_OF_MANY = 600;
  private static final int MOST_KEPT = 200;
  /** Zip has no earlier date. */
  private static final LocalDateTime EARLIEST = LocalDateTime.of(1980, 1, 1, 0, 0);
  private static final LocalDateTime LATEST = LocalDateTime.of(2107, 12, 31, 0, 0);

  private final Takeoff takeoff;
  private final BcfOptions options;
  private final Instant made;
  private final ZipOutputStream zip;
  private final LocalDateTime time;
  /** Pictures by what they show: several findings may be about one line. */
  private final Map<Sight, Snapshot.Shot> shots = new LinkedHashMap<>() {
    private static final long serialVersionUID = 1;

    @Override
    protected boolean removeEldestEntry(Map.Entry<Sight, Snapshot.Shot> eldest) {
      return size() > MOST_KEPT;
    }
  };

  private BcfPackage(Takeoff takeoff, BcfOptions options, ZipOutputStream zip) {
    this.takeoff = takeoff;
    this.options = options;
    this.zip = zip;
    this.made = options.createdOf(takeoff);
    LocalDateTime at = LocalDateTime.ofInstant(made, ZoneOffset.UTC);
    this.time = at.isBefore(EARLIEST) || at.isAfter(LATEST) ? EARLIEST : at;
  }

  /** Writes the package and flushes; leaves {@code out} open. */
  public static void write(Takeoff takeoff, BcfOptions options, OutputStream out) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(out);
    new BcfPackage(takeoff, options, zip).write();
    zip.finish();
    out.flush();
  }

  private void write() throws IOException {
    List<TopicContent> topics = topics();
    ProjectFiles project = new ProjectFiles(takeoff, options.author());
    entry("bcf.version", project.version(options.version()));
    entry("project.bcfp", project.project(options.version()));
    if (options.version() == BcfVersion.V3_0) {
      entry("extensions.xml", project.extensions(topics));
    }
    List<Finding> findings = inOrder();
    RoofScene scene = new RoofScene(takeoff);
    Snapshot snapshot = new Snapshot(scene, topics.size() > MANY ? WIDTH_OF_MANY : WIDTH);
    TopicFiles files = new TopicFiles(takeoff, options.version(), options.author(), made);
    for (int i = 0; i < topics.size(); i++) {
      TopicContent topic = topics.get(i);
      Optional<Sight> sight = Sight.of(findings.get(i), scene);
      String folder = topic.guid() + "/";
      entry(folder, new byte[0]);
      entry(folder + "markup.bcf", files.markup(topic, i, sight.isPresent()));
      if (sight.isPresent()) {
        Snapshot.Shot shot = shots.computeIfAbsent(sight.get(), snapshot::of);
        entry(folder + TopicFiles.VIEWPOINT, files.viewpoint(topic, sight.get(), shot.camera()));
        entry(folder + TopicFiles.SNAPSHOT, shot.png());
      }
    }
  }

  private List<Finding> inOrder() {
    return FindingGroups.of(takeoff.findings()).stream().flatMap(List::stream).toList();
  }

  private List<TopicContent> topics() {
    Map<String, DetailedJunction> junctions = new HashMap<>();
    takeoff.lines().forEach(j -> junctions.put(j.junction().junction().id(), j));
    Map<Finding, UUID> ids = new IdentityHashMap<>();
    List<UUID> all = takeoff.topicIds();
    for (int i = 0; i < all.size(); i++) {
      ids.put(takeoff.findings().get(i), all.get(i));
    }
    List<TopicContent> topics = new ArrayList<>();
    inOrder().forEach(f -> topics.add(TopicContent.of(f, ids.get(f), takeoff, junctions, made)));
    return topics;
  }

  private void entry(String name, byte[] bytes) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(time);
    zip.putNextEntry(entry);
    zip.write(bytes);
    zip.closeEntry();
  }
}
