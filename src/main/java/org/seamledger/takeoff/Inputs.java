package org.seamledger.takeoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.detail.Decision;
import org.seamledger.detail.DecisionFormatException;
import org.seamledger.detail.DecisionReader;
import org.seamledger.geometry.Tolerance;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelSource;

/**
 * What an analysis works on.
 *
 * @param models that together are one building, at least one
 * @param system the roof system's file; the default system where there is none
 * @param shapes folder of shapes to use instead of the program's own
 * @param decisions kinds and details that people chose, at most one a junction
 */
public record Inputs(List<ModelSource> models, Optional<Path> system, Optional<Path> shapes, Tolerance tolerance,
    List<Decision> decisions) {

  public Inputs {
    models = List.copyOf(models);
    decisions = List.copyOf(decisions);
    if (models.isEmpty()) {
      throw new IllegalArgumentException("an analysis needs at least one model");
    }
  }

  /** These models, the default system, the program's shapes and tolerance. */
  public static Inputs of(List<? extends ModelSource> models) {
    return new Inputs(List.copyOf(models), Optional.empty(), Optional.empty(), Tolerance.DEFAULT, List.of());
  }

  public static Inputs ofFiles(List<Path> files) {
    return of(files.stream().map(ModelFile::new).toList());
  }

  /** A file and what people call it, where that is not where it is. */
  public record NamedFile(Path path, String name) {
  }

  public static Inputs ofNamedFiles(List<NamedFile> files) {
    return of(files.stream().map(file -> new ModelFile(file.path(), file.name())).toList());
  }

  public Inputs withSystem(Optional<Path> file) {
    return new Inputs(models, file, shapes, tolerance, decisions);
  }

  public Inputs withShapes(Optional<Path> folder) {
    return new Inputs(models, system, folder, tolerance, decisions);
  }

  public Inputs withDecisions(List<Decision> chosen) {
    return new Inputs(models, system, shapes, tolerance, chosen);
  }

  /**
   * The same with the decisions in a file.
   *
   * @throws UnusableFileException where it can't be read or is wrong
   */
  public Inputs withDecisionsIn(Path file) {
    try {
      return withDecisions(DecisionReader.read(file));
    } catch (DecisionFormatException e) {
      throw new UnusableFileException(e);
    }
  }
}
