package org.seamledger.source;

import org.seamledger.source.ModelServerException.Reason;

/** What a BIMserver answers instead of a result. */
final class BimServerFault extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String type;

  BimServerFault(String type, String message) {
    super(Lines.plain(message));
    this.type = type;
  }

  /** The server gives no codes for these: only its words tell what happened. */
  ModelServerException toPeople(ServerAccess access) {
    String words = getMessage();
    if (words.startsWith("Invalid username/password")) {
      return new ModelServerException(Reason.REFUSED, access + " refuses user " + Lines.quote(access.user()) + " with this password");
    }
    if (type.equals("AuthenticationException") || words.contains("rights") || words.contains("oken") || words.startsWith("User account")
        || words.contains("email address has not")) {
      return new ModelServerException(Reason.REFUSED, access + " refuses user " + Lines.quote(access.user()) + ": " + words);
    }
    return new ModelServerException(Reason.UNUSABLE, access + " could not do it: " + words);
  }
}
