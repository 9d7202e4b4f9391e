package org.seamledger.run;

/** Why there is no result, in words for clients of a service: they know nothing of its machine, nor shall they. */
public final class ClientWords {

  private ClientWords() {
  }

  /** What clients read of a failure: files lose the folders of this machine, and its size is nobody's business. */
  public static String of(Failure failure) {
    if (failure instanceof Failure.OutOfMemory) {
      return "The models need more memory than this server has; start it with a larger heap, or split the model.";
    }
    return failure instanceof Failure.UnusableSettings ? withoutFolders(failure.text()) : failure.text();
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
}
