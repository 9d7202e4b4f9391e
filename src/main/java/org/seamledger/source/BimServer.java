package org.seamledger.source;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.bimserver.interfaces.objects.SActionState;
import org.bimserver.interfaces.objects.SExtendedData;
import org.bimserver.interfaces.objects.SExtendedDataSchema;
import org.bimserver.interfaces.objects.SFile;
import org.bimserver.interfaces.objects.SLongActionState;
import org.bimserver.interfaces.objects.SRevision;
import org.seamledger.source.ModelServerException.Reason;

/** A BIMserver (1.5), asked through its client library. */
final class BimServer implements ModelServer {

  /** Documents of this program's kind: BIMserver wants a schema for each document, which names their form. */
  private static final String SCHEMA_PREFIX = "SEAMLEDGER ";
  /** Everything in a revision, in the server's language of queries. */
  private static final String WHOLE = "{\"includeAllFields\":true}";

  private static final String PREPARED = "Done preparing";
  private static final long FIRST_WAIT_MS = 20;
  private static final long LONGEST_WAIT_MS = 1000;

  private final ServerAccess access;
  private final BimServerChannel channel;

  private BimServer(ServerAccess access) {
    this.access = access;
    this.channel = new BimServerChannel(access);
  }

  /** @throws ModelServerException where it can't be reached or refuses */
  static BimServer login(ServerAccess access) {
    if (access.user().isEmpty() || access.password().isEmpty()) {
      throw access.notSetUp();
    }
    BimServer server = new BimServer(access);
    server.channel.token(server.channel.auth(auth -> auth.login(access.user(), access.password())));
    return server;
  }

  @Override
  public List<ServedProject> projects() {
    return channel.service(service -> service.getAllProjects(false, true).stream()
        .map(p -> new ServedProject(p.getOid(), words(p.getName()), Schemas.ofProject(p.getSchema())))
        .sorted(Comparator.comparing(ServedProject::name).thenComparing(ServedProject::id)).toList());
  }

  @Override
  public List<ServedRevision> revisions(long project) {
    long found = project(project).id();
    return channel.service(service -> service.getAllRevisionsOfProject(found).stream().sorted(Comparator.comparing(SRevision::getOid))
        .map(r -> new ServedRevision(project, r.getOid(), r.getId(), words(r.getComment()), r.getDate().toInstant())).toList());
  }

  private ServedProject project(long project) {
    return projects().stream().filter(p -> p.id() == project).findFirst()
        .orElseThrow(() -> new ModelServerException(Reason.NOT_FOUND, access + " has no project with the number " + project
            + " that user " + Lines.quote(access.user()) + " may read"));
  }

  @Override
  public ModelSource model(ServedRevision revision) {
    // Results show a file's name without folders: a slash in a project's name is none.
    String name = project(revision.project()).name().replaceAll("[/\\\\]", "-");
    return new ServedModel(this, revision, name + ", revision " + revision.number());
  }

  /** Downloads into a temporary file that goes when its channel is closed. */
  OpenModel download(ServedRevision revision, String name) throws IOException {
    Deadline deadline = new Deadline(access.limits().download());
    String schema = project(revision.project()).schema();
    long serializer = channel.service(service -> service.getSerializerByName(Schemas.serializer(schema, access)).getOid());
    long topic = channel.service(service -> service.download(Set.of(revision.id()), WHOLE, serializer, false));
    Path file = Files.createTempFile("seamledger", ".ifc");
    FileChannel kept = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    try {
      awaitPrepared(topic);
      channel.wire().download("/download", form(topic), Channels.newOutputStream(kept), deadline);
      StepCheck.require(kept, schema, access.toString());
      return new OpenModel(name, kept, kept.size());
    } catch (IOException | RuntimeException | Error e) {
      kept.close();
      throw e;
    } finally {
      forget(topic);
    }
  }

  /** The token stands in the body of the request, not in its address, which proxies and servers write to their logs. */
  private byte[] form(long topic) {
    return ("token=" + URLEncoder.encode(channel.token(), StandardCharsets.UTF_8) + "&topicId=" + topic)
        .getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * Waits until the server is about to write. It does write only while it is downloaded from, and calls that unfinished to the end; only
   * a title tells. A server that never shows it is downloaded from after a while: what comes is checked anyway.
   */
  private void awaitPrepared(long topic) {
    long end = System.nanoTime() + access.limits().answer().toNanos();
    for (long wait = FIRST_WAIT_MS; System.nanoTime() - end < 0; wait = Math.min(2 * wait, LONGEST_WAIT_MS)) {
      // Right after the beginning there is none yet.
      Optional<SLongActionState> state = channel.registry(registry -> Optional.ofNullable(registry.getProgress(topic)));
      if (state.isPresent() && isPrepared(state.get())) {
        return;
      }
      sleep(wait);
    }
  }

  private boolean isPrepared(SLongActionState state) {
    if (state.getState() == SActionState.AS_ERROR) {
      throw new ModelServerException(Reason.UNUSABLE,
          access + " can't write the model: " + Lines.plain(String.join("; ", state.getErrors())));
    }
    return state.getState() == SActionState.FINISHED || PREPARED.equals(state.getTitle());
  }

  private void sleep(long ms) {
    try {
      Thread.sleep(ms);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new CancellationException("interrupted while waiting for " + access.name());
    }
  }

  /** Lets the server drop what it keeps for a download. It does so by itself in time, so a failure here is none. */
  private void forget(long topic) {
    try {
      channel.service(service -> {
        service.cleanupLongAction(topic);
        return topic;
      });
    } catch (ModelServerException | CancellationException e) {
      // Nothing depends on it.
    }
  }

  @Override
  public void attach(ServedRevision revision, Attachment document) {
    long schema = schema(document.mediaType());
    SFile file = new SFile();
    file.setFilename(fileName(document));
    file.setMime(document.mediaType());
    file.setData(document.content());
    file.setSize(document.content().length);
    long stored = channel.service(service -> service.uploadFile(file));
    SExtendedData data = new SExtendedData();
    data.setTitle(document.title());
    data.setAdded(new Date());
    data.setSchemaId(schema);
    data.setFileId(stored);
    data.setSize(document.content().length);
    channel.service(service -> {
      service.addExtendedDataToRevision(revision.id(), data);
      return stored;
    });
  }

  private static String fileName(Attachment document) {
    return document.title().replaceAll("[^A-Za-z0-9._-]+", "-");
  }

  private long schema(String mediaType) {
    String name = SCHEMA_PREFIX + mediaType;
    Optional<SExtendedDataSchema> known = schemas().stream().filter(s -> name.equals(s.getName())).findFirst();
    if (known.isPresent()) {
      return known.get().getOid();
    }
    SExtendedDataSchema added = new SExtendedDataSchema();
    added.setName(name);
    added.setContentType(mediaType);
    added.setDescription("What seals every junction of the roof in this revision");
    return channel.service(service -> service.addExtendedDataSchema(added));
  }

  private List<SExtendedDataSchema> schemas() {
    return channel.service(service -> service.getAllExtendedDataSchemas());
  }

  @Override
  public List<Attachment> attachments(ServedRevision revision) {
    Set<Long> ours = new HashSet<>();
    schemas().stream().filter(s -> words(s.getName()).startsWith(SCHEMA_PREFIX)).forEach(s -> ours.add(s.getOid()));
    List<SExtendedData> left = channel.service(service -> service.getAllExtendedDataOfRevision(revision.id()).stream()
        .filter(data -> ours.contains(data.getSchemaId())).sorted(Comparator.comparing(SExtendedData::getOid)).toList());
    return left.stream().map(this::attachment).toList();
  }

  private Attachment attachment(SExtendedData data) {
    SFile file = channel.service(service -> service.getFile(data.getFileId()));
    return new Attachment(words(data.getTitle()), words(file.getMime()), file.getData() == null ? new byte[0] : file.getData());
  }

  private static String words(String text) {
    return text == null ? "" : Lines.plain(text);
  }

  @Override
  public void close() {
    try {
      channel.auth(auth -> {
        auth.logout();
        return true;
      });
    } catch (ModelServerException | CancellationException e) {
      // The login ends by itself.
    }
    channel.token("");
  }

  @Override
  public String toString() {
    return access.toString();
  }
}
