package org.seamledger.watch;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.zip.GZIPInputStream;
import org.seamledger.detail.Decision;
import org.seamledger.export.ChangesJson;
import org.seamledger.export.ChangesReport;
import org.seamledger.ledger.Comparison;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.StoredLedger;
import org.seamledger.ledger.Watches;
import org.seamledger.run.FindingReviews;
import org.seamledger.run.HandoverForm;
import org.seamledger.run.Result;
import org.seamledger.source.Attachment;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ServedRevision;
import org.seamledger.takeoff.Program;

/** What is left with a revision: the ledger, the report, and what changed since the revision that was analysed before it. */
public final class Answers {

  private static final String TEXT = "text/plain";
  private static final String JSON = "application/json";

  private final Store store;

  Answers(Store store) {
    this.store = store;
  }

  /** Title of the ledger of a revision, by what people call it, such as {@code seamledger r0005 ledger.json}. */
  public static String ledger(int revision) {
    return title(revision, "ledger.json");
  }

  /** Title of the report of a revision. */
  public static String report(int revision) {
    return title(revision, "report.txt");
  }

  /** Title of the readable comparison of a revision with the one before, such as {@code seamledger r0005 changes since r0003.txt}. */
  public static String changes(int revision, int before) {
    return title(revision, "changes since " + padded(before) + ".txt");
  }

  /** Title of the same comparison for programs. */
  public static String changesJson(int revision, int before) {
    return title(revision, "changes since " + padded(before) + ".json");
  }

  /** Title of the copy of a revision's model with the answers in it, where the operator asks for it. */
  public static String copy(int revision) {
    return title(revision, "model with answers.ifc");
  }

  /** Title of the findings of a revision for coordination tools, where the operator asks for them. */
  public static String topics(int revision) {
    return title(revision, "findings.bcf");
  }

  /** People see titles in lists of files and save them under these names: they sort by revision, and say what is in them. */
  private static String title(int revision, String what) {
    return Program.NAME + " " + padded(revision) + " " + what;
  }

  private static String padded(int revision) {
    return String.format(Locale.ROOT, "r%04d", revision);
  }

  /** The documents that answer a revision, by its analysis, which has ended. */
  List<Attachment> of(StoredAnalysis analysis, Origin origin) {
    if (analysis.state() != State.DONE) {
      return List.of(new Attachment(report(origin.number()), TEXT, utf8(failure(analysis, origin))));
    }
    List<Attachment> all = new ArrayList<>();
    all.add(new Attachment(ledger(origin.number()), JSON, unzip(store.analyses().ledger(analysis.id()))));
    store.analyses().report(analysis.id()).ifPresent(text -> all.add(new Attachment(report(origin.number()), TEXT, utf8(text))));
    Optional<Watches.Done> before = store.watches().before(origin);
    if (before.isPresent()) {
      Comparison c = store.analyses().compare(before.get().analysis(), analysis.id());
      Origin old = before.get().origin();
      all.add(new Attachment(changes(origin.number(), old.number()), TEXT, utf8(ChangesReport.text(words(old), words(origin), c))));
      all.add(new Attachment(changesJson(origin.number(), old.number()), JSON,
          json(old, origin, c, store.choices().gone(before.get().analysis(), c.removed()))));
    }
    return all;
  }

  /**
   * What the operator asks for besides, from the result itself.
   *
   * @param wanted of {@link org.seamledger.source.KnownServers#ATTACHABLE}
   */
  List<Attachment> besides(StoredAnalysis analysis, Origin origin, Result result, Set<String> wanted) {
    FindingReviews reviews = FindingReviews.of(store.reviews(), analysis.id());
    List<Attachment> all = new ArrayList<>();
    if (wanted.contains("bcf")) {
      result.handedOn(HandoverForm.BCF, reviews)
          .ifPresent(b -> all.add(new Attachment(topics(origin.number()), HandoverForm.BCF.type(), b)));
    }
    if (wanted.contains("ifc")) {
      copy(analysis, result, reviews).ifPresent(b -> all.add(new Attachment(copy(origin.number()), "application/octet-stream", b)));
    }
    return all;
  }

  private Optional<byte[]> copy(StoredAnalysis analysis, Result result, FindingReviews reviews) {
    StoredFile model = analysis.files().stream().filter(StoredFile::isModel).findFirst().orElseThrow();
    store.has(model);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      return result.copy(0, new ModelFile(Path.of(model.path()), model.name()), reviews, bytes) ? Optional.of(bytes.toByteArray())
          : Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Leaves with a revision what it does not have yet; a process that died half-way has left some of it. Returns how many it left. */
  static int attach(ModelServer server, ServedRevision revision, List<Attachment> documents) {
    Set<String> there = server.attachments(revision).stream().map(Attachment::title).collect(Collectors.toSet());
    int left = 0;
    for (Attachment document : documents) {
      if (!there.contains(document.title())) {
        server.attach(revision, document);
        left++;
      }
    }
    return left;
  }

  private static String words(Origin o) {
    return "revision " + o.number() + (o.comment().isBlank() ? "" : " (" + o.comment().strip() + ")");
  }

  private static String failure(StoredAnalysis analysis, Origin origin) {
    return Program.NAME + ": " + words(origin) + " of " + origin.projectName() + " was not analysed\n\n"
        + analysis.problem().orElse("It was stopped.")
        + "\n\nNo ledger was made of this revision. Check in a corrected model; it is analysed by itself.\n";
  }

  private static byte[] json(Origin before, Origin after, Comparison c, List<Decision> gone) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ChangesJson.write("revision " + before.number(), "revision " + after.number(), c, gone, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static byte[] unzip(StoredLedger ledger) {
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(ledger.gzip()))) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
