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

  /** The day of the time stamp, {@code 2024-05-17}; empty where the file states none in the form of ISO 8601. */
  public String date() {
    return timeStamp.matches("\\d{4}-\\d{2}-\\d{2}(T.*)?") ? timeStamp.substring(0, 10) : "";
  }
}
