package org.seamledger;

import java.awt.image.BufferedImage;

/**
 * A picture as seen from afar: the mean brightness of its squares of 30 pixels. Another proportional font moves ink within a square or to
 * the next one: serifs change one square in a thousand by more than 12. A plan that is gone changes one in fifty, a section one in thirty.
 *
 * @param brightness from 0, black, to 255, row by row
 */
record CoarseLook(int width, int height, double[][] brightness) {

  private static final int SQUARE = 30;
  private static final double OTHER_FONT = 12;
  private static final double MOST_OTHER_SQUARES = 0.015;

  static CoarseLook of(BufferedImage image) {
    double[][] all = new double[image.getHeight() / SQUARE][image.getWidth() / SQUARE];
    for (int row = 0; row < all.length; row++) {
      for (int column = 0; column < all[row].length; column++) {
        all[row][column] = mean(image, column * SQUARE, row * SQUARE);
      }
    }
    return new CoarseLook(image.getWidth(), image.getHeight(), all);
  }

  /** By the weights of Rec. ITU-R BT.601. */
  private static double mean(BufferedImage image, int x, int y) {
    double sum = 0;
    for (int pixel : image.getRGB(x, y, SQUARE, SQUARE, null, 0, SQUARE)) {
      sum += 0.299 * (pixel >> 16 & 255) + 0.587 * (pixel >> 8 & 255) + 0.114 * (pixel & 255);
    }
    return sum / (SQUARE * SQUARE);
  }

  /** The share of squares, from 0 to 1, that differ by more than another font does. */
  private double otherSquares(CoarseLook other) {
    int count = 0;
    int all = 0;
    for (int row = 0; row < brightness.length; row++) {
      for (int column = 0; column < brightness[row].length; column++, all++) {
        count += Math.abs(brightness[row][column] - other.brightness[row][column]) > OTHER_FONT ? 1 : 0;
      }
    }
    return (double) count / all;
  }

  boolean isLike(CoarseLook other) {
    return width == other.width && height == other.height && otherSquares(other) < MOST_OTHER_SQUARES;
  }
}
