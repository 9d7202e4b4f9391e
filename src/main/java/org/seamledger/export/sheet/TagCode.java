package org.seamledger.export.sheet;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.Locale;
import org.seamledger.takeoff.Program;

/**
 * The code of a place on printed sheets, which the page on the roof reads (QR Code, ISO/IEC 18004). A quarter of it may be wet or torn
 * (error correction level Q).
 */
public final class TagCode {

  /** Modules of white that a reader needs on each side: ISO/IEC 18004, 6.3.8. */
  private static final int QUIET = 4;

  private TagCode() {
  }

  /** What the code of a place says where no service is known: the page finds the place on the roof that is open. */
  public static String text(String place) {
    return Program.NAME + ":" + place;
  }

  /**
   * The code as an SVG drawing with its white margin.
   *
   * @param text at most a few hundred characters
   * @param sideMm side of the whole square, millimetres on paper
   * @throws IllegalArgumentException if the text is empty, or too long for a code
   */
  public static String svg(String text, double sideMm) {
    ByteMatrix modules = modules(text);
    int side = modules.getWidth() + 2 * QUIET;
    String size = Svg.number(sideMm);
    Svg svg = new Svg().open("svg", "xmlns", "http://www.w3.org/2000/svg", "width", size + "mm", "height", size + "mm", "viewBox",
        "0 0 " + side + " " + side);
    svg.empty("rect", "width", Integer.toString(side), "height", Integer.toString(side), "fill", "#ffffff");
    return svg.empty("path", "d", path(modules), "fill", "#000000").close("svg").toString();
  }

  private static ByteMatrix modules(String text) {
    if (text.isEmpty()) {
      throw new IllegalArgumentException("a code of nothing");
    }
    try {
      return Encoder.encode(text, ErrorCorrectionLevel.Q).getMatrix();
    } catch (WriterException e) {
      throw new IllegalArgumentException("no code holds " + text.length() + " characters", e);
    }
  }

  /** Runs of dark modules, row by row. */
  private static String path(ByteMatrix modules) {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < modules.getHeight(); y++) {
      int x = 0;
      while (x < modules.getWidth()) {
        int start = x;
        while (x < modules.getWidth() && modules.get(x, y) == 1) {
          x++;
        }
        if (x > start) {
          path.append(String.format(Locale.ROOT, "M%d %dh%dv1h-%dz", start + QUIET, y + QUIET, x - start, x - start));
        } else {
          x++;
        }
      }
    }
    return path.toString();
  }
}
