package org.seamledger.element;

import java.util.Optional;

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
 * @param date when the file says that it was written, as it stands there, or the empty string
 * @param project GlobalId of its project, or the empty string
 */
public record ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes,
    Optional<String> placement, String date, String project) {

  public ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes) {
    this(file, sha256, schema, lengthUnit, application, bytes, Optional.empty(), "", "");
  }
}
