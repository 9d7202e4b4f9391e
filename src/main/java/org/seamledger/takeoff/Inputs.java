package org.seamledger.takeoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.geometry.Tolerance;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelSource;

/**
 * What an analysis works on.
 *
 * @param models that together are one building, at least one
 * @param system the roof system's file; the default system where there is none
 * @param shapes folder of shapes to use instead of the program's own
 */
public record Inputs(List<ModelSource> models, Optional<Path> system, Optional<Path> shapes, Tolerance tolerance) {

  public Inputs {
    models = List.copyOf(models);
    if (models.isEmpty()) {
      throw new IllegalArgumentException("an analysis needs at least one model");
    }
  }

  /** These models, the default system, the program's shapes and tolerance. */
  public static Inputs of(List<? extends ModelSource> models) {
    return new Inputs(List.copyOf(models), Optional.empty(), Optional.empty(), Tolerance.DEFAULT);
  }

  public static Inputs ofFiles(List<Path> files) {
    return of(files.stream().map(ModelFile::new).toList());
  }

  /** Files in the map's order, each with the name that people gave it. */
  public static Inputs ofNamedFiles(Map<Path, String> files) {
    return of(files.entrySet().stream().map(e -> new ModelFile(e.getKey(), e.getValue())).toList());
  }

  public Inputs withSystem(Optional<Path> file) {
    return new Inputs(models, file, shapes, tolerance);
  }

  public Inputs withShapes(Optional<Path> folder) {
    return new Inputs(models, system, folder, tolerance);
  }
}
