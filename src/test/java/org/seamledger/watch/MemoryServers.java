package org.seamledger.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import org.seamledger.source.Attachment;
import org.seamledger.source.ByteArrayChannel;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelSource;
import org.seamledger.source.OpenModel;
import org.seamledger.source.ServedProject;
import org.seamledger.source.ServedRevision;

/** Servers of models that are kept in memory; every call can be made to fail. */
public final class MemoryServers implements Servers {

  private java.util.Set<String> attached = java.util.Set.of();

  /** One server. */
  public static final class Shelf {
    private final List<ServedProject> projects = new ArrayList<>();
    private final Map<Long, List<ServedRevision>> revisions = new TreeMap<>();
    private final Map<Long, byte[]> models = new LinkedHashMap<>();
    private final Map<Long, List<Attachment>> attachments = new TreeMap<>();
    private long numbers;
    /** Hears every call before it is carried out, such as {@code connect} or {@code attach}; may throw. */
    public volatile Consumer<String> before = call -> {};

    public synchronized ServedProject addProject(String name) {
      ServedProject p = new ServedProject(++numbers * 100, name, "IFC4");
      projects.add(p);
      revisions.put(p.id(), new ArrayList<>());
      return p;
    }

    public synchronized ServedRevision checkIn(ServedProject project, String comment, byte[] model) {
      ServedRevision r = new ServedRevision(project.id(), ++numbers, revisions.get(project.id()).size() + 1, comment,
          Instant.parse("2026-03-01T08:00:00Z").plusSeconds(numbers));
      revisions.get(project.id()).add(r);
      models.put(r.id(), model);
      return r;
    }

    public synchronized void remove(ServedProject project) {
      projects.remove(project);
      revisions.remove(project.id());
    }

    public synchronized List<Attachment> attached(ServedRevision revision) {
      return List.copyOf(attachments.getOrDefault(revision.id(), List.of()));
    }

    private synchronized List<ServedProject> projects() {
      return projects.stream().sorted(Comparator.comparing(ServedProject::name).thenComparing(ServedProject::id)).toList();
    }

    private synchronized List<ServedRevision> revisions(long project) {
      if (!revisions.containsKey(project)) {
        throw new ModelServerException(Reason.NOT_FOUND, "there is no project " + project);
      }
      return List.copyOf(revisions.get(project));
    }

    private synchronized byte[] model(long revision) {
      return models.get(revision);
    }

    private synchronized void attach(long revision, Attachment document) {
      attachments.computeIfAbsent(revision, r -> new ArrayList<>()).add(document);
    }
  }

  private final Map<String, Shelf> shelves = new TreeMap<>();

  public Shelf add(String name) {
    Shelf shelf = new Shelf();
    shelves.put(name, shelf);
    return shelf;
  }

  /** Has every server want this left with revisions besides. */
  public void attaching(String... what) {
    attached = java.util.Set.of(what);
  }

  @Override
  public java.util.Set<String> attached(String name) {
    return attached;
  }

  @Override
  public List<String> names() {
    return List.copyOf(shelves.keySet());
  }

  @Override
  public ModelServer connect(String name) {
    Shelf shelf = shelves.get(name);
    if (shelf == null) {
      throw new ModelServerException(Reason.NOT_FOUND, "there is no server " + name);
    }
    shelf.before.accept("connect");
    return new Connection(shelf);
  }

  private record Connection(Shelf shelf) implements ModelServer {

    @Override
    public List<ServedProject> projects() {
      shelf.before.accept("projects");
      return shelf.projects();
    }

    @Override
    public List<ServedRevision> revisions(long project) {
      shelf.before.accept("revisions");
      return shelf.revisions(project);
    }

    @Override
    public ModelSource model(ServedRevision revision) {
      return new Held(shelf, revision);
    }

    @Override
    public void attach(ServedRevision revision, Attachment document) {
      shelf.before.accept("attach");
      shelf.attach(revision.id(), document);
    }

    @Override
    public List<Attachment> attachments(ServedRevision revision) {
      shelf.before.accept("attachments");
      return shelf.attached(revision);
    }

    @Override
    public void close() {
      // Nothing is held.
    }
  }

  private record Held(Shelf shelf, ServedRevision revision) implements ModelSource {

    @Override
    public String name() {
      return "revision " + revision.id();
    }

    @Override
    public OpenModel open() {
      shelf.before.accept("download");
      byte[] bytes = shelf.model(revision.id());
      return new OpenModel(name(), new ByteArrayChannel(bytes), bytes.length);
    }
  }
}
