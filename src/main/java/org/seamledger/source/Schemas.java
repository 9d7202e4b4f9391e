package org.seamledger.source;

import java.util.Locale;
import org.seamledger.source.ModelServerException.Reason;

/** BIMserver's words for the schemas that it keeps. */
final class Schemas {

  private Schemas() {
  }

  /** From a project's schema, such as {@code ifc2x3tc1}, to the standard's word in a file's header. */
  static String ofProject(String schema) {
    String word = String.valueOf(schema).toUpperCase(Locale.ROOT);
    return word.equals("IFC2X3TC1") ? "IFC2X3" : Lines.plain(word);
  }

  /**
   * The serializer that writes STEP text. By name: asked by content type the server gives that of IFC2X3 for every project, which labels
   * IFC4 as IFC2X3.
   */
  static String serializer(String schema, ServerAccess access) {
    return switch (schema) {
      case "IFC2X3" -> "Ifc2x3tc1 (Streaming)";
      case "IFC4" -> "Ifc4 (Streaming)";
      default -> throw new ModelServerException(Reason.UNUSABLE, access + " keeps this project in the schema " + Lines.quote(schema)
          + "; it can be asked for IFC2X3 and IFC4 only");
    };
  }
}
