package org.seamledger.takeoff;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.element.Building;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ifc.IfcReader;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.progress.Progress;
import org.seamledger.source.ModelSource;
import org.seamledger.source.OpenModel;
import org.seamledger.step.StepFile;

/** Opens models, has them read as one building, and closes them again whatever happens. */
final class Models {

  private Models() {
  }

  static Building read(Inputs analysis, Progress progress) {
    List<ModelSource> sources = analysis.models();
    List<String> names = analysis.names();
    List<StepFile> open = new ArrayList<>();
    try {
      List<IfcInput> inputs = new ArrayList<>();
      for (ModelSource source : sources) {
        OpenModel model = reading(source.name(), source::open);
        Progress part = progress.part(0, 0.5).part(open.size(), sources.size());
        StepFile file = reading(model.name(), () -> StepFile.open(model.channel(), model.name(), part));
        open.add(file);
        inputs.add(new IfcInput(file, names.get(inputs.size()), Optional.ofNullable(analysis.places().get(inputs.size()))));
      }
      // Which of several breaks off can't be told here: the last stands for all.
      return reading(sources.get(sources.size() - 1).name(), () -> IfcReader.read(inputs, progress.part(0.5, 1)));
    } finally {
      open.forEach(Models::close);
    }
  }

  /** Reading that may break off. */
  @FunctionalInterface
  private interface Reading<T> {
    T read() throws IOException;
  }

  private static <T> T reading(String name, Reading<T> reading) {
    try {
      return reading.read();
    } catch (IOException e) {
      throw UnreadableModelException.of(name, e);
    } catch (UncheckedIOException e) {
      throw UnreadableModelException.of(name, e.getCause());
    }
  }

  private static void close(StepFile file) {
    try {
      file.close();
    } catch (IOException e) {
      // All of it has been read, or another failure is on its way: nothing depends on this one.
    }
  }
}
