package org.seamledger.http.job;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import org.seamledger.detail.Decision;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.sheet.SheetSetup;
import org.seamledger.finding.Sha256;
import org.seamledger.http.answer.HttpProblem;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.Choices;
import org.seamledger.ledger.LedgerException;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.progress.Progress;
import org.seamledger.run.Failure;
import org.seamledger.run.Outcome;
import org.seamledger.run.Result;
import org.seamledger.run.StoredRuns;

/**
 * The drawings of results. A drawing shows what the result's numbers came from, which the stored result alone does not hold. What sections
 * show is stored with it, 150 to 500 bytes a junction; sections as drawn would take 17 kB. For all else the newest results are kept in
 * memory while there is room, and others are had by running their models again. A run that does not give the stored result byte for byte,
 * because a model, the rules or the program changed meanwhile, gives no drawing: it would not fit the numbers beside it.
 */
public final class DrawingBoard {

  private static final int MOST_WAITING = 16;
  private static final int PATIENCE_SECONDS = 50;

  private final Store store;
  private final Options options;
  private final StoredRuns runs;
  private final Recent<Result> recent = new Recent<>();
  /** One at a time: a second run of large models would only slow the first and double the memory. */
  private final ReentrantLock hand = new ReentrantLock(true);

  public DrawingBoard(Store store, Options options, Path scratch) {
    this.store = store;
    this.options = options;
    this.runs = new StoredRuns(store, options.analyzer(), scratch);
  }

  /** Keeps the drawings of an analysis that was just done. */
  void keep(String id, Result drawings) {
    try {
      recent.put(store.analyses().ledgerHash(id), drawings);
    } catch (LedgerException e) {
      // Cancelled or removed in the last moment: nobody will ask.
    }
  }

  /**
   * The drawings of an analysis's result.
   *
   * @param hash of the stored result
   * @throws HttpProblem where they cannot be had, or not now
   */
  public Result of(StoredAnalysis analysis, String hash) {
    Result drawings = recent.get(hash);
    if (drawings != null) {
      return drawings;
    }
    takeTurn();
    try {
      drawings = recent.get(hash);
      return drawings != null ? drawings : again(analysis, hash);
    } finally {
      hand.unlock();
    }
  }

  /**
   * Makes something that takes much memory, one thing at a time.
   *
   * @throws HttpProblem where too many wait for their turn
   */
  public <T> T inTurn(Supplier<T> work) {
    takeTurn();
    try {
      return work.get();
    } finally {
      hand.unlock();
    }
  }

  /** The section at a line, as it is, from memory or storage; empty where neither has it. */
  public Optional<String> section(StoredAnalysis analysis, String hash, String line, SheetSetup setup) {
    Result result = recent.get(hash);
    return result != null ? result.section(line, setup)
        : SectionDrawing.fromParts(part -> store.sections().part(analysis.id(), hash, part), line, setup);
  }

  private void takeTurn() {
    try {
      if (hand.getQueueLength() < MOST_WAITING && hand.tryLock(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        return;
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    throw new HttpProblem(503, "busy", "The server is preparing other drawings; try again in a minute.");
  }

  private Result again(StoredAnalysis analysis, String hash) {
    Result result = usable(runs.run(analysis, decisions(analysis), withinTime()));
    if (!hash(result).equals(hash)) {
      throw changed("The models, the rules or the program have changed since this analysis");
    }
    recent.put(hash, result);
    // Of results from before sections were stored.
    runs.keepSections(analysis.id(), hash, result);
    return result;
  }

  /**
   * The models of an analysis under another roof system, with the decisions that are in force; nothing of it is kept.
   *
   * @throws HttpProblem where it cannot be had, or not now
   */
  public Result under(StoredAnalysis analysis, Path system) {
    takeTurn();
    try {
      return usable(runs.run(analysis, system, decisions(analysis), withinTime()));
    } finally {
      hand.unlock();
    }
  }

  /**
   * The models of an analysis by the rules of a folder, with the decisions that are in force; nothing of it is kept.
   *
   * @throws HttpProblem where it cannot be had, or not now
   * @throws org.seamledger.takeoff.UnusableFileException where the rules can't be used
   */
  public Result underRules(StoredAnalysis analysis, Path rules) {
    takeTurn();
    try {
      Outcome<Result> outcome = runs.runUnder(analysis, rules, decisions(analysis), withinTime());
      if (outcome.failure().orElse(null) instanceof Failure.UnusableSettings broken) {
        throw broken.thrown();
      }
      return usable(outcome);
    } finally {
      hand.unlock();
    }
  }

  private Progress withinTime() {
    long deadline = System.nanoTime() + options.limits().duration().toNanos();
    return Progress.NONE.unless(() -> System.nanoTime() - deadline > 0);
  }

  private static Result usable(Outcome<Result> outcome) {
    Failure failure = outcome.failure().orElse(null);
    if (failure instanceof Failure.UnreadableModel || failure instanceof Failure.UnusableSettings) {
      throw changed("What this analysis read is no longer there as it was");
    }
    if (failure instanceof Failure.Cancelled) {
      throw new HttpProblem(503, "busy", "The models take longer than one analysis may on this server.");
    }
    return outcome.orThrow();
  }

  private static String hash(Result result) {
    MessageDigest digest = Sha256.digest();
    try (OutputStream out = new DigestOutputStream(OutputStream.nullOutputStream(), digest)) {
      result.writeLedger(out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private List<Decision> decisions(StoredAnalysis analysis) {
    Choices.Standing standing = store.choices().of(analysis.id());
    if (!standing.followed()) {
      throw new HttpProblem(503, "busy",
          "The result is being computed again with the decisions that were made by hand; try again in a moment.");
    }
    return standing.inForce();
  }

  private static HttpProblem changed(String what) {
    return new HttpProblem(409, "drawing/changed",
        what + ", so that a drawing would not fit its numbers. Analyse the models again to have their drawings.");
  }
}
