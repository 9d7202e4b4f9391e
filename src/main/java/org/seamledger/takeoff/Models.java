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
        OpenModel model = open(source);
        StepFile file = index(model, progress.part(0, 0.5).part(open.size(), sources.size()));
        open.add(file);
        inputs.add(new IfcInput(file, names.get(inputs.size()), Optional.ofNullable(analysis.places().get(inputs.size()))));
      }
      return IfcReader.read(inputs, progress.part(0.5, 1));
    } catch (UncheckedIOException e) {
      throw UnreadableModelException.of(sources.get(Math.max(0, open.size() - 1)).name(), e.getCause());
    } finally {
      open.forEach(Models::close);
    }
  }

  private static OpenModel open(ModelSource source) {
    try {
      return source.open();
    } catch (IOException e) {
      throw UnreadableModelException.of(source.name(), e);
    }
  }

  private static StepFile index(OpenModel model, Progress progress) {
    try {
      return StepFile.open(model.channel(), model.name(), progress);
    } catch (IOException e) {
      throw UnreadableModelException.of(model.name(), e);
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
