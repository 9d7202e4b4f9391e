package org.seamledger.export.submittal;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.seamledger.export.sheet.Svg;

/** What the two fonts of a document can show, and the outlines of words in them. */
final class Glyphs {

  /** Stands for a character that a font doesn't have: {@code □}. A glyph that says "missing" is not allowed in PDF/UA. */
  private static final char MISSING = '\u25a1';

  private final TrueTypeFont regular;
  private final TrueTypeFont bold;

  private Glyphs(TrueTypeFont regular, TrueTypeFont bold) {
    this.regular = regular;
    this.bold = bold;
  }

  static Glyphs read() {
    return new Glyphs(font(FontFiles.REGULAR), font(FontFiles.BOLD));
  }

  private static TrueTypeFont font(String file) {
    try (InputStream in = FontFiles.open(file)) {
      return new TTFParser().parse(new RandomAccessReadBuffer(in));
    } catch (IOException e) {
      throw new UncheckedIOException("a font is missing from the program", e);
    }
  }

  /** The same words, with a mark for each character that either font lacks. */
  String shown(String words) {
    if (words.chars().allMatch(c -> c >= ' ' && c < 127)) {
      return words;
    }
    StringBuilder shown = new StringBuilder(words.length());
    words.codePoints().forEach(c -> shown.appendCodePoint(has(regular, c) && has(bold, c) ? c : MISSING));
    return shown.toString();
  }

  private static boolean has(TrueTypeFont font, int codePoint) {
    // Beyond the basic plane the formatter would show parts of a pair.
    return codePoint < Character.MIN_SUPPLEMENTARY_CODE_POINT && lookup(font).getGlyphId(codePoint) > 0;
  }

  private static CmapLookup lookup(TrueTypeFont font) {
    try {
      return font.getUnicodeCmapLookup();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Words as a line with outlines of letters. */
  record Outline(double width, String path) {
  }

  /**
   * The outline of words that begin at 0, 0, as the data of an SVG path.
   *
   * @param size of the letters, in the units of the path
   */
  Outline outline(String words, boolean isBold, double size) {
    TrueTypeFont font = isBold ? bold : regular;
    try {
      double scale = size / font.getUnitsPerEm();
      double x = 0;
      StringBuilder path = new StringBuilder();
      for (int c : words.codePoints().toArray()) {
        int glyph = lookup(font).getGlyphId(c);
        GlyphData data = font.getGlyph().getGlyph(glyph);
        if (data != null) {
          Path2D outline = data.getPath();
          outline.transform(new AffineTransform(scale, 0, 0, -scale, x, 0));
          append(outline.getPathIterator(null), path);
        }
        x += font.getAdvanceWidth(glyph) * scale;
      }
      return new Outline(x, path.toString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void append(PathIterator outline, StringBuilder path) {
    double[] p = new double[6];
    for (; !outline.isDone(); outline.next()) {
      int type = outline.currentSegment(p);
      int points = switch (type) {
        case PathIterator.SEG_MOVETO, PathIterator.SEG_LINETO -> 1;
        case PathIterator.SEG_QUADTO -> 2;
        case PathIterator.SEG_CUBICTO -> 3;
        default -> 0;
      };
      path.append("MLQCZ".charAt(type));
      for (int i = 0; i < 2 * points; i++) {
        path.append(i == 0 ? "" : " ").append(Svg.number(p[i]));
      }
    }
  }
}
