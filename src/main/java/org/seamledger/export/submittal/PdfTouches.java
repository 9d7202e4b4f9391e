package org.seamledger.export.submittal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.seamledger.finding.Sha256;

/**
 * What the formatter leaves to be done in a finished document. Nothing changes its length, since the places of all objects stand in it.
 */
final class PdfTouches {

  private static final int ID_DIGITS = 32;
  private static final byte[] ID = bytes("/ID [");
  private static final byte[] MADE = bytes("<xmp:CreateDate>");
  private static final byte[] WRITTEN = bytes("<xmp:MetadataDate>");
  private static final byte[] LINK = bytes("<< /Type /Annot\n/Subtype /Link\n");
  private static final byte[] END = bytes(">>");
  private static final String DESCRIPTION = "/Contents (Go to linked place)\n";

  private final byte[] pdf;

  private PdfTouches(byte[] pdf) {
    this.pdf = pdf;
  }

  /** Changes a document. */
  static void apply(byte[] pdf) {
    PdfTouches touches = new PdfTouches(pdf);
    touches.describeLinks();
    touches.undate();
    touches.identify();
  }

  private static byte[] bytes(String words) {
    return words.getBytes(StandardCharsets.ISO_8859_1);
  }

  /**
   * PDF/UA-1 (7.18.5) wants words with each link's area; the formatter writes them for links to other documents only. They take the place
   * of entries that say what holds anyway. What exactly the link leads to stands in its structure element.
   */
  private void describeLinks() {
    for (int at = indexOf(LINK, 0); at >= 0; at = indexOf(LINK, at + 1)) {
      int end = indexOf(END, at);
      String entry = new String(pdf, at, end - at, StandardCharsets.ISO_8859_1);
      String touched = entry.replace("/Type /Annot\n", "").replace("/C [ 0 0 0 ]\n", "").replace("/H /I\n", "");
      if (!touched.contains("/Contents")) {
        touched += DESCRIPTION;
      }
      if (touched.length() > entry.length()) {
        throw new IllegalStateException("a link of the PDF has no room for its description");
      }
      byte[] padded = bytes(touched + " ".repeat(entry.length() - touched.length()));
      System.arraycopy(padded, 0, pdf, at, padded.length);
    }
  }

  /** When the metadata were written, which the formatter takes from the clock, becomes when the document was made. */
  private void undate() {
    int made = lastIndexOf(MADE);
    int written = lastIndexOf(WRITTEN);
    System.arraycopy(pdf, made + MADE.length, pdf, written + WRITTEN.length, "2024-05-31T08:00:00".length());
  }

  /** Puts a hash of the document in the place of the formatter's random identifiers, which end it. */
  private void identify() {
    int from = lastIndexOf(ID) + ID.length;
    int end = from;
    while (pdf[end] != ']') {
      if (Character.digit(pdf[end], 16) >= 0) {
        pdf[end] = '0';
      }
      end++;
    }
    byte[] hash = bytes(Sha256.hex(pdf).substring(0, ID_DIGITS).toUpperCase(Locale.ROOT));
    int digit = 0;
    for (int i = from; i < end; i++) {
      if (pdf[i] == '0') {
        pdf[i] = hash[digit++ % ID_DIGITS];
      }
    }
  }

  private int indexOf(byte[] words, int from) {
    for (int i = from; i <= pdf.length - words.length; i++) {
      if (isAt(i, words)) {
        return i;
      }
    }
    return -1;
  }

  private int lastIndexOf(byte[] words) {
    for (int i = pdf.length - words.length; i >= 0; i--) {
      if (isAt(i, words)) {
        return i;
      }
    }
    throw new IllegalStateException("the PDF has no " + new String(words, StandardCharsets.ISO_8859_1));
  }

  private boolean isAt(int at, byte[] words) {
    return pdf[at] == words[0] && Arrays.equals(pdf, at, at + words.length, words, 0, words.length);
  }
}
