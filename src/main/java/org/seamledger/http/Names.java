package org.seamledger.http;

import java.util.Locale;

/** Names that come from outside. They are text to show, and nothing else. */
final class Names {

  private static final int LONGEST = 200;

  private Names() {
  }

  /** The last part of a client's file name, without control characters; "model" where nothing is left. */
  static String file(String submitted) {
    String name = submitted == null ? "" : submitted;
    name = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    name = clean(name);
    return name.isBlank() || name.equals(".") || name.equals("..") ? "model" : name;
  }

  /** A text on one line. */
  static String clean(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069]", " ").strip();
    return line.length() > LONGEST ? line.substring(0, LONGEST) : line;
  }

  /** A path as it may stand in a log: one line, no query. */
  static String forLog(String path) {
    return clean(path);
  }

  /** How the program names an uploaded file on disk: its place, and an ending from a fixed list. */
  static String onDisk(int place, String submitted) {
    String name = submitted == null ? "" : submitted.toLowerCase(Locale.ROOT);
    for (String ending : new String[] {".ifc.gz", ".ifczip", ".ifc", ".zip", ".gz", ".json"}) {
      if (name.endsWith(ending)) {
        return place + ending;
      }
    }
    return place + ".ifc";
  }
}
