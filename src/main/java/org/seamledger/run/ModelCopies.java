package org.seamledger.run;

import java.io.IOException;
import java.io.OutputStream;
import org.seamledger.enrich.EnrichedModel;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.progress.Progress;
import org.seamledger.source.ModelSource;
import org.seamledger.source.OpenModel;
import org.seamledger.source.PackedOutput;
import org.seamledger.step.StepFile;
import org.seamledger.takeoff.Takeoff;

/** Copies of the models of a takeoff with its answers in them. */
public final class ModelCopies {

  private ModelCopies() {
  }

  /**
   * Writes the copy of one model, packed as the model is.
   *
   * @param model its position among the takeoff's models, from 0
   * @param source where it came from
   * @throws UnreadableModelException where it can't be read any more, is another one by now, or is of no schema that can be written
   */
  public static void write(Takeoff takeoff, int model, ModelSource source, OutputStream out) throws IOException {
    OpenModel open = source.open();
    try (StepFile file = StepFile.open(open.channel(), open.name(), Progress.NONE)) {
      if (!file.sha256().equals(takeoff.models().get(model).sha256())) {
        throw new UnreadableModelException(source.name(), 0, 0, "the model as it was analysed", "another one: it was changed since");
      }
      PackedOutput.write(source, out, to -> EnrichedModel.write(takeoff, model, file, to));
    }
  }
}
