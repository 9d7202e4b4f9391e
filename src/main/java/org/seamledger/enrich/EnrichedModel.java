package org.seamledger.enrich;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import org.seamledger.step.StepFile;
import org.seamledger.step.StepLiterals;
import org.seamledger.takeoff.Takeoff;

/** A model's copy with the takeoff's answers in it. */
public final class EnrichedModel {

  private static final int NEW_LINE = '\n';

  private EnrichedModel() {
  }

  /**
   * Writes the copy. Every byte of the model stays, but for what an earlier run added, which goes; what is added stands at the end of the
   * last data section. The same takeoff and model give the same bytes; written into its own copy, the same bytes again.
   *
   * @param model position of the model among the takeoff's, from 0
   * @param file the model itself
   * @throws org.seamledger.finding.UnreadableModelException where the model is of no schema that answers can be written in
   */
  public static void write(Takeoff takeoff, int model, StepFile file, OutputStream to) throws IOException {
    OwnRecords own = OwnRecords.of(file);
    HostModel host = new HostModel(file, takeoff.models().get(model).file(), own);
    InstanceDraft draft = new InstanceDraft(host.tables(), own.largestId());
    new TakeoffAnswers(takeoff, model, host, draft).add();
    OutputStream out = new BufferedOutputStream(to);
    long at = 0;
    for (Map.Entry<StepFile.Span, String> change : own.changes().entrySet()) {
      StepFile.Span span = change.getKey();
      file.copy(at, span.from(), out);
      out.write(StepLiterals.bytes(change.getValue()));
      at = change.getValue().isEmpty() ? afterLine(file, span.to()) : span.to();
    }
    file.copy(at, file.dataEnd(), out);
    out.write(StepLiterals.bytes(draft.text()));
    file.copy(file.dataEnd(), file.size(), out);
    out.flush();
  }

  /** The line's end goes with the last instance in it. */
  private static long afterLine(StepFile file, long at) throws IOException {
    return file.byteAt(at) == NEW_LINE ? at + 1 : at;
  }
}
