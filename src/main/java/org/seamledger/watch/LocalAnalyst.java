package org.seamledger.watch;

import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import org.seamledger.detail.Decision;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.TextReport;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Progress;
import org.seamledger.takeoff.Takeoff;
import org.seamledger.takeoff.UnusableFileException;

/** Runs analyses on the thread that asks for them. */
public final class LocalAnalyst implements Analyst {

  /** Turns inputs into a takeoff. */
  @FunctionalInterface
  public interface Run {
    Takeoff analyze(Inputs inputs, Progress progress);
  }

  private final Store store;
  private final Path scratch;
  private final Function<Inputs, Inputs> settings;
  private final Run run;

  /**
   * @param scratch folder for what is being written
   * @param settings adds roof system and shapes
   */
  public LocalAnalyst(Store store, Path scratch, Function<Inputs, Inputs> settings, Run run) {
    this.store = store;
    this.scratch = scratch;
    this.settings = settings;
    this.run = run;
  }

  /**
   * {@inheritDoc} Broken shapes, a broken roof system and faults of the program pass through to the caller: they are no fault of the model.
   * One that storage calls running was cut off in this process, which is alone with its storage: it runs again.
   */
  @Override
  public void analyze(StoredAnalysis analysis) throws InterruptedException {
    if (!store.analyses().begin(analysis.id()) && store.analyses().get(analysis.id()).state().isFinal()) {
      return;
    }
    try {
      Files.createDirectories(scratch);
      run(analysis, List.of(), (json, report) -> store.analyses().complete(analysis.id(), json, Optional.of(report)));
      follow(analysis);
    } catch (CancellationException e) {
      throw new InterruptedException();
    } catch (UnreadableModelException e) {
      store.analyses().end(analysis.id(), State.FAILED, "model/unreadable", e.getMessage());
    } catch (UnusableFileException e) {
      store.analyses().end(analysis.id(), State.FAILED, "settings/unusable", e.getMessage());
      throw e;
    } catch (OutOfMemoryError e) {
      store.analyses().end(analysis.id(), State.FAILED, "analysis/memory",
          "The model needs more memory than " + Runtime.getRuntime().maxMemory() / (1 << 20)
              + " MiB.");
    } catch (LedgerException e) {
      throw e;
    } catch (RuntimeException | Error e) {
      endFailed(analysis, e);
      throw e;
    } catch (IOException e) {
      endFailed(analysis, e);
      throw new UncheckedIOException(e);
    }
  }

  /** Nothing that fails here may hide the fault that came first. */
  private void endFailed(StoredAnalysis analysis, Throwable fault) {
    try {
      store.analyses().end(analysis.id(), State.FAILED, "internal",
          "The program failed at this model; its log says where. Please report it with the model.");
    } catch (RuntimeException | Error e) {
      fault.addSuppressed(e);
    }
  }

  /** Keeps a result. */
  private interface Keep {
    void keep(Path json, String report) throws IOException;
  }

  /** What people decided about the revision before may have come over; the result follows it. */
  private void follow(StoredAnalysis analysis) throws IOException {
    Choices.Standing standing = store.choices().of(analysis.id());
    if (!standing.followed() && !standing.inForce().isEmpty()) {
      run(analysis, standing.inForce(),
          (json, report) -> store.choices().complete(analysis.id(), standing, Optional.of(json), Optional.of(report)));
    }
  }

  private void run(StoredAnalysis analysis, List<Decision> decisions, Keep keep) throws IOException {
    Path json = scratch.resolve(analysis.id() + ".json");
    try {
      Takeoff takeoff = takeoff(analysis, decisions);
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(json))) {
        JsonLedger.write(takeoff, out);
      }
      ByteArrayOutputStream report = new ByteArrayOutputStream();
      TextReport.write(takeoff, report);
      keep.keep(json, report.toString(StandardCharsets.UTF_8));
    } finally {
      Files.deleteIfExists(json);
    }
  }

  private Takeoff takeoff(StoredAnalysis analysis, List<Decision> decisions) {
    List<Inputs.NamedFile> files = analysis.files().stream().filter(f -> f.role().equals("model"))
        .map(f -> new Inputs.NamedFile(Path.of(f.path()), f.name(), f.placement())).toList();
    Inputs inputs = settings.apply(Inputs.ofNamedFiles(files));
    return run.analyze(decisions.isEmpty() ? inputs : inputs.withDecisions(decisions), stage -> {
      if (Thread.currentThread().isInterrupted()) {
        throw new CancellationException();
      }
    });
  }
}
