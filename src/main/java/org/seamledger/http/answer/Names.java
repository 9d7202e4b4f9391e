package org.seamledger.http.answer;

import java.util.List;
import java.util.Locale;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.StoredFile;

/** Names that come from outside. They are text to show, and nothing else. */
public final class Names {

  private static final int LONGEST = 200;
  private static final int NAMED = 3;
  private Names() {
  }

  /** The last part of a client's file name, without control characters; "model" where nothing is left. */
  public static String file(String submitted) {
    String name = submitted == null ? "" : submitted;
    name = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    name = clean(name);
    return name.isBlank() || name.equals(".") || name.equals("..") ? "model" : name;
  }

  /** A text on one line. */
  public static String clean(String text) {
    String line = text.replaceAll("[\\p{Cntrl}\\u2028\\u2029\\u202A-\\u202E\\u2066-\\u2069]", " ").strip();
    return line.length() > LONGEST ? line.substring(0, LONGEST) : line;
  }

  /** A path as it may stand in a log: one line, no query, nothing that could end a quoted value. */
  static String forLog(String path) {
    return clean(path).replace('"', '\'');
  }

  /** A title for models that are analysed together: the names of the first of them, those of servers without their revisions. */
  public static String together(List<StoredFile> models) {
    List<String> names = models.stream().map(f -> f.origin().map(Origin::projectName).orElse(f.name())).toList();
    String rest = names.size() > NAMED ? " and " + (names.size() - NAMED) + " more" : "";
    return clean(String.join(" + ", names.subList(0, Math.min(NAMED, names.size())))) + rest;
  }

  /** How the program names an uploaded file on disk: its place, and an ending from a fixed list. */
  public static String onDisk(int place, String submitted) {
    String name = submitted == null ? "" : submitted.toLowerCase(Locale.ROOT);
    for (String ending : new String[] {".ifc.gz", ".ifczip", ".ifc", ".zip", ".gz", ".json"}) {
      if (name.endsWith(ending)) {
        return place + ending;
      }
    }
    return place + ".ifc";
  }
}
