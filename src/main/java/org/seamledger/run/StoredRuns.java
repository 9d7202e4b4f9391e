package org.seamledger.run;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.seamledger.detail.Decision;
import org.seamledger.finding.Sha256;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.progress.Progress;
import org.seamledger.takeoff.Inputs;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Runs analyses that storage has noted, for the first time and again with what users decided, and keeps their results there. */
public final class StoredRuns {

  private static final Logger LOG = LoggerFactory.getLogger(StoredRuns.class);

  /** Work on the storage. */
  @FunctionalInterface
  public interface StorageWork {
    void run() throws IOException;
  }

  /** How a result gets into the storage: at once, or when it is reachable and has room. */
  public interface Keeping {

    /** Whatever the storage says is a failure. */
    Keeping AT_ONCE = new Keeping() {
      @Override
      public void write(StorageWork work) throws IOException {
        work.run();
      }

      @Override
      public void keep(StorageWork work) throws IOException {
        work.run();
      }
    };

    /**
     * Waits for the storage, and for room on the disk.
     *
     * @param last done before a result that is written is kept: from there on the run can't be stopped
     */
    static Keeping patient(Runnable last) {
      return new Keeping() {
        @Override
        public void write(StorageWork work) throws IOException {
          PatientStorage.run(work);
        }

        @Override
        public void keep(StorageWork work) throws IOException {
          last.run();
          PatientStorage.run(work);
        }
      };
    }

    /** Writes a result to the disk, where it is not kept yet; may begin again. */
    void write(StorageWork work) throws IOException;

    /** Takes a written result into the storage. */
    void keep(StorageWork work) throws IOException;
  }

  private final Store store;
  private final Analyzer<Result> analyzer;
  private final Path scratch;

  /** @param scratch folder for what is being written */
  public StoredRuns(Store store, Analyzer<Result> analyzer, Path scratch) {
    this.store = store;
    this.analyzer = analyzer;
    this.scratch = scratch;
  }

  /** Runs the models of an analysis without keeping what comes out. */
  public Outcome<Result> run(StoredAnalysis analysis, List<Decision> decisions, Progress progress) {
    return Outcome.of(() -> analyzer.analyze(inputs(analysis).withDecisions(decisions), progress));
  }

  /** The same by the rules of a folder. */
  public Outcome<Result> runUnder(StoredAnalysis analysis, Path rules, List<Decision> decisions, Progress progress) {
    return Outcome.of(() -> analyzer.under(rules).analyze(inputs(analysis).withDecisions(decisions), progress));
  }

  /** The same under another roof system. */
  public Outcome<Result> run(StoredAnalysis analysis, Path system, List<Decision> decisions, Progress progress) {
    return Outcome.of(() -> analyzer.analyze(inputs(analysis).withSystem(Optional.of(system)).withDecisions(decisions), progress));
  }

  /**
   * Runs an analysis and keeps its result.
   *
   * @param decided the decisions that the result shall follow; empty for the first result, by the rules alone
   */
  public Outcome<Result> run(StoredAnalysis analysis, Optional<Choices.Standing> decided, Progress progress, Keeping keeping) {
    Path json = scratch.resolve(analysis.id() + (decided.isPresent() ? ".decided.json" : ".json"));
    return Outcome.of(() -> {
      try {
        Result result = run(analysis, decided.map(Choices.Standing::inForce).orElse(List.of()), progress).orThrow();
        AtomicReference<String> hash = new AtomicReference<>();
        keeping.write(() -> hash.set(write(result, json, progress.stage("writing the ledger", 1, 1))));
        keepSections(analysis.id(), hash.get(), result);
        keeping.keep(() -> keep(analysis.id(), decided, json, result));
        return result;
      } finally {
        discard(json);
      }
    });
  }

  /** Gives the hash of what was written. Progress is told before and after: the last moments in which the run can be cancelled. */
  private String write(Result result, Path json, Progress progress) throws IOException {
    boolean written = false;
    MessageDigest digest = Sha256.digest();
    try {
      Files.createDirectories(scratch);
      try (OutputStream out = new BufferedOutputStream(new DigestOutputStream(Files.newOutputStream(json), digest), 1 << 16)) {
        result.writeLedger(out);
      }
      written = true;
    } finally {
      if (!written) {
        // A half takes room that others wait for.
        discard(json);
      }
    }
    progress.at(1);
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Owners of models on servers get the human-readable report too, which is kept for them with the result. */
  private void keep(String id, Optional<Choices.Standing> decided, Path json, Result result) throws IOException {
    Optional<String> report = store.watches().origin(id).isPresent() ? result.report() : Optional.empty();
    if (decided.isPresent()) {
      store.choices().complete(id, decided.get(), Optional.of(json), report);
    } else {
      store.analyses().complete(id, json, report);
    }
  }

  /** Keeps what the sections of a result show; where that can't be, they are drawn by running the models again. */
  public void keepSections(String id, String hash, Result result) {
    try {
      store.sections().keep(id, hash, result.sectionParts());
    } catch (LedgerException e) {
      LOG.atDebug().addKeyValue("analysis", id).setCause(e).log("sections not kept");
    }
  }

  private static void discard(Path json) {
    try {
      Files.deleteIfExists(json);
    } catch (IOException e) {
      LOG.atWarn().addKeyValue("file", json.getFileName()).setCause(e).log("scratch file left behind");
    }
  }

  private Inputs inputs(StoredAnalysis analysis) {
    analysis.files().forEach(store::has);
    List<Inputs.NamedFile> models = analysis.files().stream().filter(StoredFile::isModel)
        .map(f -> new Inputs.NamedFile(Path.of(f.path()), f.name(), f.placement())).toList();
    for (Inputs.NamedFile m : models) {
      if (!Files.isReadable(m.path())) {
        throw new UnreadableModelException(m.name(), 0, 0, "a file that can be read", "none: it was moved or removed");
      }
    }
    return Inputs.ofNamedFiles(models).withNamedSystem(analysis.files().stream().filter(f -> f.role().equals("system")).findFirst()
        .map(f -> new Inputs.NamedFile(Path.of(f.path()), f.name())));
  }
}
