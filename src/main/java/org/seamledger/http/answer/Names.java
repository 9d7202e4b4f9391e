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

  /** A message for a client: files keep their names in it, and lose the folders of this machine. */
  public static String withoutFolders(String message) {
    StringBuilder shown = new StringBuilder();
    for (int i = 0; i < message.length(); i++) {
      int end = i > 0 && isWord(message.charAt(i - 1)) ? -1 : foldersEnd(message, i);
      if (end < 0) {
        shown.append(message.charAt(i));
      } else {
        i = end - 1;
      }
    }
    return shown.toString();
  }

  /** What stands before a path that begins elsewhere. */
  private static boolean isWord(char c) {
    return c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c == '_' || c == '.' || c == '/';
  }

  /**
   * Where the folders of an absolute path that begins here end, behind the last separator; -1 where none begins. A colon ends a path, for
   * place and explanation come behind one. By hand, since an expression of this kind recurses for every folder.
   */
  private static int foldersEnd(String text, int from) {
    boolean drive = from + 1 < text.length() && text.charAt(from + 1) == ':' && isLetter(text.charAt(from));
    int at = drive ? from + 2 : from;
    int end = -1;
    while (at < text.length() && isSeparator(text.charAt(at)) && at + 1 < text.length() && isName(text.charAt(at + 1))) {
      end = at + 1;
      at++;
      while (at < text.length() && !isSeparator(text.charAt(at)) && text.charAt(at) != ':' && text.charAt(at) != '\n') {
        at++;
      }
    }
    return end;
  }

  private static boolean isLetter(char c) {
    return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
  }

  private static boolean isSeparator(char c) {
    return c == '/' || c == '\\';
  }

  private static boolean isName(char c) {
    return !isSeparator(c) && c != ':' && " \t\n\u000B\f\r".indexOf(c) < 0;
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
