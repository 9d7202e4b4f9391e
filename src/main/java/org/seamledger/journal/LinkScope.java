package org.seamledger.journal;

import java.util.Arrays;
import java.util.Optional;

/** What a link's holder may do; each includes those before it. */
public enum LinkScope {
  VIEW("view"), TICK("tick"), SIGN("sign");

  private final String word;

  LinkScope(String word) {
    this.word = word;
  }

  public String word() {
    return word;
  }

  public static Optional<LinkScope> of(String word) {
    return Arrays.stream(values()).filter(s -> s.word.equals(word)).findFirst();
  }

  /** Whether events of a kind may be sent. */
  public boolean allows(EventKind kind) {
    return compareTo(kind.needsSigner() ? SIGN : TICK) >= 0;
  }
}
