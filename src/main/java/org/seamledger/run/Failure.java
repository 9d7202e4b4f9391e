package org.seamledger.run;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.seamledger.finding.FullDisk;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.LedgerException;
import org.seamledger.source.ModelServerException;
import org.seamledger.takeoff.UnusableFileException;

/** Why a run has no result. The one place where what was thrown becomes a code and words. */
public sealed interface Failure {

  /** Short name for programs, such as {@code model/unreadable}; never another for the same failure. */
  String code();

  /** Whether the program or its machine failed, and not the model, the settings or a server: it may be gone at the next try. */
  static boolean isFault(String code) {
    return code.equals(Fault.CODE) || code.equals(DiskFull.CODE);
  }

  /** What happened, for people. */
  String message();

  /** What to do about it, for people; empty where the message says all. */
  default String action() {
    return "";
  }

  /** What was thrown, where that tells more. */
  default Optional<Throwable> cause() {
    return Optional.empty();
  }

  /** Message and action. */
  default String text() {
    return action().isEmpty() ? message() : message() + " " + action();
  }

  /** Whether the fault is on this side, so that there is nothing to tell the model's owner. */
  static boolean isOurs(String code) {
    return isFault(code) || code.equals(UnusableSettings.CODE);
  }

  /** A model can't be read; the message names file, line, column, what was expected and what was found. */
  record UnreadableModel(UnreadableModelException thrown) implements Failure {
    @Override
    public String code() {
      return "model/unreadable";
    }

    @Override
    public String message() {
      return thrown.getMessage();
    }
  }

  /** Shapes, roof system or overrides can't be used; the message has a line for each fault, with the file. */
  record UnusableSettings(UnusableFileException thrown) implements Failure {
    static final String CODE = "settings/unusable";

    @Override
    public String code() {
      return CODE;
    }

    @Override
    public String message() {
      return thrown.getMessage();
    }

    @Override
    public Optional<Throwable> cause() {
      return Optional.of(thrown);
    }
  }

  /** A server of models did not do what it was asked. */
  record ServerFailure(ModelServerException thrown) implements Failure {
    @Override
    public String code() {
      return thrown.code();
    }

    @Override
    public String message() {
      return thrown.getMessage();
    }
  }

  /** The memory of the process was short. */
  record OutOfMemory(long mebibytes, OutOfMemoryError thrown) implements Failure {
    @Override
    public String code() {
      return "analysis/memory";
    }

    @Override
    public String message() {
      return "The model needs more memory than " + mebibytes + " MiB.";
    }

    @Override
    public Optional<Throwable> cause() {
      return Optional.of(thrown);
    }
  }

  /** The disk has no room for what the run writes: what it unpacks, fetches or has reckoned. */
  record DiskFull(Throwable thrown) implements Failure {
    public static final String CODE = "storage/full";

    @Override
    public String code() {
      return CODE;
    }

    @Override
    public String message() {
      return "There is no room left on the disk for what the analysis writes.";
    }

    @Override
    public String action() {
      return "Make room there, then run it again.";
    }

    @Override
    public Optional<Throwable> cause() {
      return Optional.of(thrown);
    }
  }

  /** Stopped, since it took longer than a run may. */
  record TooLong(Duration limit) implements Failure {
    @Override
    public String code() {
      return "analysis/too-long";
    }

    @Override
    public String message() {
      return "Stopped after " + limit.toSeconds() + " s, the longest that one analysis may take here.";
    }
  }

  /** Stopped by who began it, or because the process ends. */
  record Cancelled() implements Failure {
    @Override
    public String code() {
      return "cancelled";
    }

    @Override
    public String message() {
      return "Cancelled on request.";
    }
  }

  /** The program failed: a bug, or a machine that does not do what it should. */
  record Fault(Throwable thrown) implements Failure {
    public static final String CODE = "internal";

    @Override
    public String code() {
      return CODE;
    }

    @Override
    public String message() {
      return "The program failed at these models; its log says where.";
    }

    @Override
    public String action() {
      return "Please report it with the model.";
    }

    @Override
    public Optional<Throwable> cause() {
      return Optional.of(thrown);
    }
  }

  /** What this failure is. */
  static Failure of(Throwable e) {
    if (e instanceof FailureException known) {
      return known.failure();
    }
    if (e instanceof UnreadableModelException model) {
      return new UnreadableModel(model);
    }
    if (e instanceof UnusableFileException settings) {
      return new UnusableSettings(settings);
    }
    if (e instanceof ModelServerException server) {
      return new ServerFailure(server);
    }
    if (e instanceof CancellationException) {
      return new Cancelled();
    }
    if (FullDisk.causes(e) || e instanceof LedgerException l && l.reason() == LedgerException.Reason.FULL) {
      return new DiskFull(e);
    }
    return e instanceof OutOfMemoryError memory ? new OutOfMemory(Runtime.getRuntime().maxMemory() / (1 << 20), memory) : new Fault(e);
  }

  /**
   * What ended a run that had been told to stop, if it had: what is wrong with models and settings is said all the same, anything else
   * came of the stop.
   *
   * @param stop why it was told so
   */
  default Failure orStopped(Optional<Failure> stop) {
    if (this instanceof UnreadableModel || this instanceof UnusableSettings) {
      return this;
    }
    // Cancelled by nobody: whatever threw that had no business to.
    return stop.orElseGet(() -> this instanceof Cancelled ? new Fault(new CancellationException("by nobody")) : this);
  }
}
