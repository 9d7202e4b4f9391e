package org.seamledger.element;

import java.util.Optional;
import org.seamledger.geometry.Transform;

/**
 * Where a part of a building comes from.
 *
 * @param file name without folders
 * @param sha256 of the model's bytes after unpacking, lower-case hexadecimal
 * @param schema {@code IFC2X3}, {@code IFC4} or {@code IFC4X3}
 * @param lengthUnit such as {@code metre}, {@code millimetre}, {@code foot}
 * @param application the program that wrote it, with its version, or the empty string
 * @param bytes size after unpacking
 * @param placement movement to the result's coordinates that somebody asked for: {@code dx,dy,dz[,degrees[,factor]]}; empty where the
 *     model lies as the models themselves say
 * @param world from the model's own coordinates to those of the first model, metres, however it was placed
 */
public record ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes,
    Optional<String> placement, Transform world) {

  public ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes) {
    this(file, sha256, schema, lengthUnit, application, bytes, Optional.empty(), Transform.IDENTITY);
  }
}
