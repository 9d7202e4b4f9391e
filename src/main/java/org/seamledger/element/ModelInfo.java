package org.seamledger.element;

import java.util.Optional;
import java.util.regex.Pattern;
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
 * @param written when the file was written by its own header, as it stands there; empty where the header doesn't say
 * @param project GlobalId of its project, or the empty string
 * @param world from the model's own coordinates to those of the first model, metres, however it was placed
 */
public record ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes,
    Optional<String> placement, String written, String project, Transform world) {

  private static final Pattern DAY = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");

  public ModelInfo(String file, String sha256, String schema, String lengthUnit, String application, long bytes) {
    this(file, sha256, schema, lengthUnit, application, bytes, Optional.empty(), "", "", Transform.IDENTITY);
  }

  /** The day on which the file was written, as its header states it, such as {@code 2024-05-17}; the empty string where it states none. */
  public String date() {
    return DAY.matcher(written).lookingAt() ? written.substring(0, 10) : "";
  }
}
