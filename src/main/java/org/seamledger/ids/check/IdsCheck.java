package org.seamledger.ids.check;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ids.IdsDocument;
import org.seamledger.progress.Progress;
import org.seamledger.schema.IfcRelease;
import org.seamledger.source.ModelSource;
import org.seamledger.source.OpenModel;
import org.seamledger.step.StepFile;

/** Checks models against IDS files, one model after another. */
public final class IdsCheck {

  private final List<List<SpecificationCheck>> checks = new ArrayList<>();

  private IdsCheck() {
  }

  /**
   * What the models say together: elements of all of them count.
   *
   * @throws UnreadableModelException where a model can't be read
   */
  public static List<DocumentResult> run(List<ModelSource> models, List<IdsDocument> documents, Progress progress) {
    IdsCheck check = new IdsCheck();
    documents.forEach(d -> check.checks.add(d.specifications().stream().map(SpecificationCheck::new).toList()));
    for (int i = 0; i < models.size(); i++) {
      check.model(models.get(i), progress.part(i, models.size()));
    }
    List<DocumentResult> results = new ArrayList<>();
    for (int i = 0; i < documents.size(); i++) {
      results.add(new DocumentResult(documents.get(i), check.checks.get(i).stream().map(SpecificationCheck::result).toList()));
    }
    return results;
  }

  private void model(ModelSource source, Progress progress) {
    try (OpenModel model = source.open(); StepFile file = StepFile.open(model.channel(), model.name(), progress.part(0, 0.5))) {
      IfcRelease release = IfcRelease.of(file.header().schemas()).orElseThrow(() -> new UnreadableModelException(model.name(), 0, 0,
          "schema IFC2X3, IFC4 or IFC4X3 in FILE_SCHEMA", file.header().schemas().isEmpty() ? "none" : String.join(", ", file.header()
              .schemas())));
      elements(new ModelAccess(file, release), model.file(), progress.part(0.5, 1));
    } catch (UncheckedIOException e) {
      throw UnreadableModelException.of(source.name(), e.getCause());
    } catch (IOException e) {
      throw UnreadableModelException.of(source.name(), e);
    }
  }

  private void elements(ModelAccess model, String name, Progress progress) {
    List<SpecificationCheck> all = checks.stream().flatMap(List::stream).toList();
    for (String keyword : progress.over(model.file().keywords())) {
      List<SpecificationCheck> concerned = all.stream().filter(c -> c.mayApplyTo(keyword, model.release())).toList();
      if (!concerned.isEmpty()) {
        model.file().forEach(keyword, instance -> {
          Subject subject = new Subject(model, instance);
          concerned.forEach(c -> c.look(subject, name));
        });
      }
    }
  }
}
