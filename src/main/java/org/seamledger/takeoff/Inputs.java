package org.seamledger.takeoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Tolerance;

/**
 * What an analysis works on.
 *
 * @param models files that together are one building, at least one
 * @param system the roof system's file; the default system where there is none
 * @param shapes folder of shapes to use instead of the program's own
 */
public record Inputs(List<ModelFile> models, Optional<Path> system, Optional<Path> shapes, Tolerance tolerance) {

  /**
   * A model on disk.
   *
   * @param name what results call it: a file name without folders
   */
  public record ModelFile(Path path, String name) {

    public static ModelFile of(Path path) {
      Path name = path.getFileName();
      return new ModelFile(path, name == null ? path.toString() : name.toString());
    }
  }

  public Inputs {
    models = List.copyOf(models);
    if (models.isEmpty()) {
      throw new IllegalArgumentException("an analysis needs at least one model");
    }
  }

  /** These files, the default system, the program's shapes and tolerance. */
  public static Inputs of(List<Path> models) {
    return new Inputs(models.stream().map(ModelFile::of).toList(), Optional.empty(), Optional.empty(), Tolerance.DEFAULT);
  }

  public Inputs withSystem(Optional<Path> file) {
    return new Inputs(models, file, shapes, tolerance);
  }

  public Inputs withShapes(Optional<Path> folder) {
    return new Inputs(models, system, folder, tolerance);
  }
}
