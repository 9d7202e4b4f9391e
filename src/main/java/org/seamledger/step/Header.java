package org.seamledger.step;

import java.util.List;

/**
 * What the header section says that the program uses.
 *
 * @param schemas the identifiers of FILE_SCHEMA, as they stand, such as {@code IFC2X3}
 * @param preprocessor FILE_NAME's preprocessor version
 * @param originatingSystem FILE_NAME's originating system
 */
public record Header(List<String> schemas, String timeStamp, String preprocessor, String originatingSystem) {
  public Header {
    schemas = List.copyOf(schemas);
  }
}
