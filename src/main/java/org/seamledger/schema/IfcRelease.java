package org.seamledger.schema;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The schemas that there are tables of; each table is read when first used. */
public enum IfcRelease {
  IFC2X3, IFC4, IFC4X3_ADD2;

  private SchemaTables tables;

  /** The release that a file's FILE_SCHEMA names, if it is one of these or an edition of one. */
  public static Optional<IfcRelease> of(List<String> identifiers) {
    for (String identifier : identifiers) {
      String name = identifier.toUpperCase(Locale.ROOT).trim();
      if (name.startsWith("IFC2X3")) {
        return Optional.of(IFC2X3);
      }
      if (name.startsWith("IFC4X3")) {
        return Optional.of(IFC4X3_ADD2);
      }
      if (name.equals("IFC4") || name.startsWith("IFC4_") || name.startsWith("IFC4 ")) {
        return Optional.of(IFC4);
      }
    }
    return Optional.empty();
  }

  public synchronized SchemaTables tables() {
    if (tables == null) {
      tables = TableReader.read(this);
    }
    return tables;
  }
}
