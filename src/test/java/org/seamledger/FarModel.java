package org.seamledger;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A sample moved far off: what it places without another place stands {@link #METRES} east and north of where it stood. */
public final class FarModel {

  public static final double METRES = 1e6;

  private static final Pattern ROOT = Pattern.compile("=IFCLOCALPLACEMENT\\(\\$,#(\\d+)\\);");

  private FarModel() {
  }

  /**
   * Writes it.
   *
   * @param unit the model's own, in metres
   * @return where it was written
   */
  public static Path of(Path model, double unit, Path to) throws IOException {
    String text = Files.readString(model, StandardCharsets.ISO_8859_1);
    Matcher root = ROOT.matcher(text);
    if (!root.find()) {
      throw new IllegalStateException(model + " places nothing");
    }
    String axes = "#" + root.group(1) + "=IFCAXIS2PLACEMENT3D(";
    int at = text.indexOf(axes) + axes.length();
    String rest = text.substring(text.indexOf(',', at), text.indexOf(';', at) + 1);
    String far = new BigDecimal(METRES / unit).setScale(9, RoundingMode.HALF_EVEN).toPlainString();
    String moved = ROOT.matcher(text).replaceAll("=IFCLOCALPLACEMENT(\\$,#900000002);");
    return Files.writeString(to,
        moved.replaceFirst("DATA;", Matcher.quoteReplacement("DATA;\n#900000001=IFCCARTESIANPOINT((" + far + ',' + far
            + ",0.));\n#900000002=IFCAXIS2PLACEMENT3D(#900000001" + rest)),
        StandardCharsets.ISO_8859_1);
  }
}
