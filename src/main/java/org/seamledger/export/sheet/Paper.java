package org.seamledger.export.sheet;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** Sizes of paper, always laid across: ISO 216 for A sizes, ANSI/ASME Y14.1 for the others (an inch is 25.4 mm). */
public enum Paper {
  A3("a3", "A3", 420, 297), A4("a4", "A4", 297, 210), ARCH_C("arch-c", "Arch C", 609.6, 457.2), TABLOID("tabloid", "Tabloid", 431.8, 279.4),
  LETTER("letter", "Letter", 279.4, 215.9);

  private final String word;
  private final String label;
  private final double widthMm;
  private final double heightMm;

  Paper(String word, String label, double widthMm, double heightMm) {
    this.word = word;
    this.label = label;
    this.widthMm = widthMm;
    this.heightMm = heightMm;
  }

  /** As command line and service name it. */
  public String word() {
    return word;
  }

  public String label() {
    return label;
  }

  public double widthMm() {
    return widthMm;
  }

  public double heightMm() {
    return heightMm;
  }

  /** Whether its words have to be smaller and its columns narrower. */
  public boolean isSmall() {
    return widthMm < 400;
  }

  public static Optional<Paper> of(String word) {
    return Arrays.stream(values()).filter(p -> p.word.equalsIgnoreCase(word)).findFirst();
  }

  /** All that there are, for a message. */
  public static String choices() {
    return Arrays.stream(values()).map(Paper::word).collect(Collectors.joining(", "));
  }
}
