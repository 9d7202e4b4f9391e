package org.seamledger.photo;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * What a camera wrote beside a JPEG, as far as it matters here: which way is up, and where it was (Exif 2.32, sections 4.6.4 and 4.6.6).
 * What can't be read counts as not written.
 *
 * @param orientation 1 to 8 as Exif counts them; 1 is upright
 */
record CameraNotes(int orientation, Optional<PhotoLocation> location) {

  static final CameraNotes NONE = new CameraNotes(1, Optional.empty());
  private static final byte[] HEAD = {'E', 'x', 'i', 'f', 0, 0};
  private static final byte APP1 = (byte) 0xE1;
  private static final byte SCAN = (byte) 0xDA;
  private static final int ORIENTATION = 274;
  private static final int GPS = 34_853;
  private static final int MOST_ORIENTATIONS = 8;
  private static final double SIXTY = 60;

  /**
   * The notes of a JPEG: of its first APP1 segment that is Exif, wherever it stands before the picture (ITU-T T.81, annex B). Programs put
   * it before or behind JFIF's own segment, which readers of the platform don't all bear.
   */
  static CameraNotes of(byte[] jpeg) {
    try {
      int at = 2;
      while (at + 4 <= jpeg.length && jpeg[at] == (byte) 0xFF && jpeg[at + 1] != SCAN) {
        int length = (jpeg[at + 2] & 0xFF) << 8 | jpeg[at + 3] & 0xFF;
        int end = Math.min(jpeg.length, at + 2 + length);
        byte[] block = Arrays.copyOfRange(jpeg, Math.min(end, at + 4), end);
        if (jpeg[at + 1] == APP1 && block.length > HEAD.length && Arrays.equals(block, 0, HEAD.length, HEAD, 0, HEAD.length)) {
          return read(block);
        }
        at += 2 + Math.max(2, length);
      }
    } catch (IOException | RuntimeException e) {
      // Notes that are broken are none: the picture counts.
      return NONE;
    }
    return NONE;
  }

  private static CameraNotes read(byte[] block) throws IOException {
    ImageReader tiff = ImageIO.getImageReadersByFormatName("TIFF").next();
    try {
      tiff.setInput(new MemoryCacheImageInputStream(new ByteArrayInputStream(block, HEAD.length, block.length - HEAD.length)), false,
          false);
      TIFFDirectory notes = TIFFDirectory.createFromMetadata(tiff.getImageMetadata(0));
      TIFFField turned = notes.getTIFFField(ORIENTATION);
      int orientation = turned == null ? 1 : turned.getAsInt(0);
      TIFFField gps = notes.getTIFFField(GPS);
      return new CameraNotes(orientation < 1 || orientation > MOST_ORIENTATIONS ? 1 : orientation,
          gps != null && gps.hasDirectory() ? location(gps.getDirectory()) : Optional.empty());
    } finally {
      tiff.dispose();
    }
  }

  private static Optional<PhotoLocation> location(TIFFDirectory gps) {
    double latitude = degrees(gps, 1, 2);
    double longitude = degrees(gps, 3, 4);
    boolean isPlace = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180;
    return isPlace ? Optional.of(new PhotoLocation(latitude, longitude)) : Optional.empty();
  }

  /** NaN where there are none. */
  private static double degrees(TIFFDirectory gps, int half, int value) {
    TIFFField letter = gps.getTIFFField(half);
    TIFFField parts = gps.getTIFFField(value);
    if (letter == null || parts == null || parts.getCount() < 3) {
      return Double.NaN;
    }
    double degrees = parts.getAsDouble(0) + parts.getAsDouble(1) / SIXTY + parts.getAsDouble(2) / SIXTY / SIXTY;
    return letter.getAsString(0).startsWith("S") || letter.getAsString(0).startsWith("W") ? -degrees : degrees;
  }
}
