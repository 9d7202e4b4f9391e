package org.seamledger;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Pictures of a page have few colours; a palette halves the file. */
final class FewColours {

  private static final int COLOURS = 256;

  private FewColours() {
  }

  /** The same picture with each colour in the place of the nearest in the palette. */
  static BufferedImage of(BufferedImage image) {
    int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    Map<Integer, Integer> counts = new HashMap<>();
    Arrays.stream(pixels).forEach(p -> counts.merge(p & 0xffffff, 1, Integer::sum));
    int[] palette = palette(counts);
    Map<Integer, Integer> nearest = new HashMap<>();
    BufferedImage few = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_INDEXED,
        new IndexColorModel(8, palette.length, palette, 0, false, -1, DataBuffer.TYPE_BYTE));
    for (int i = 0; i < pixels.length; i++) {
      few.getRaster().setSample(i % image.getWidth(), i / image.getWidth(), 0,
          nearest.computeIfAbsent(pixels[i] & 0xffffff, p -> nearest(palette, p)));
    }
    return few;
  }

  /** The most frequent colours, of those that look alike only one: else shades of the text leave no room for a small coloured thing. */
  private static int[] palette(Map<Integer, Integer> counts) {
    Set<Integer> seen = new HashSet<>();
    return counts.entrySet().stream()
        .sorted(Map.Entry.<Integer, Integer>comparingByValue(Comparator.reverseOrder()).thenComparing(Map.Entry.comparingByKey()))
        .map(Map.Entry::getKey).filter(colour -> seen.add(colour & 0xf0f0f0)).limit(COLOURS).mapToInt(Integer::intValue).toArray();
  }

  private static int nearest(int[] palette, int colour) {
    int best = 0;
    for (int i = 1; i < palette.length; i++) {
      best = distance(palette[i], colour) < distance(palette[best], colour) ? i : best;
    }
    return best;
  }

  private static int distance(int a, int b) {
    int red = (a >> 16 & 255) - (b >> 16 & 255);
    int green = (a >> 8 & 255) - (b >> 8 & 255);
    int blue = (a & 255) - (b & 255);
    return red * red + green * green + blue * blue;
  }
}
