package org.seamledger.element;

/** How this program's own elements in a model are known: by their {@code Tag}, which every schema has. */
public final class AnswerTag {

  /** What the {@code Tag} of each begins with; the id of its junction or node follows. */
  public static final String PREFIX = "seamledger:";
  /** Place of {@code Tag} among the attributes of an element, from 0. */
  public static final int ATTRIBUTE = 7;

  private AnswerTag() {
  }
}
