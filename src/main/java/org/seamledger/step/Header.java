package org.seamledger.step;

import java.util.List;

/**
 * What the header section says that the program uses.
 *
 * @param schemas the identifiers of FILE_SCHEMA, as they stand, such as {@code IFC2X3}
 * @param preprocessor FILE_NAME's preprocessor version
 * @param originatingSystem FILE_NAME's originating system
 * @param timeStamp FILE_NAME's time stamp, as it stands
 */
public record Header(List<String> schemas, String preprocessor, String originatingSystem, String timeStamp) {
  public Header {
    schemas = List.copyOf(schemas);
  }
}
