package org.seamledger.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Makes of a picture one that is kept: JPEG, upright, its longer edge at most so many pixels. The same bytes give the same bytes. */
public final class PhotoScaler {

  /** Most bytes of a picture that is sent. */
  public static final int MOST_BYTES = 16 << 20;
  /** Most pixels of a picture that is sent: what telephones take; a file of a few bytes can claim any number. */
  static final long MOST_PIXELS = 50_000_000;
  /** The longer edge of what is kept, pixels. */
  public static final int EDGE = 1600;
  private static final float QUALITY = 0.8f;
  private static final Set<String> FORMATS = Set.of("jpeg", "png");
  /** From here on an orientation of Exif lies on its side. */
  private static final int ON_ITS_SIDE = 5;

  private PhotoScaler() {
  }

  /** @throws PhotoRefusedException where it is no picture that can be kept */
  public static ScaledPhoto scale(byte[] file) throws PhotoRefusedException {
    return scale(file, EDGE);
  }

  /** @param edge most pixels of the longer edge */
  public static ScaledPhoto scale(byte[] file, int edge) throws PhotoRefusedException {
    if (file.length > MOST_BYTES) {
      throw new PhotoRefusedException("A photo may have " + (MOST_BYTES >> 20) + " MiB; this one has " + (file.length >> 20) + ".");
    }
    ImageReader reader = reader(file);
    try {
      reader.setInput(open(file), true, true);
      requireSize(reader.getWidth(0), reader.getHeight(0));
      CameraNotes notes = name(reader).equals("jpeg") ? CameraNotes.of(file) : CameraNotes.NONE;
      reader.setInput(open(file), true, true);
      BufferedImage upright = upright(decode(reader, edge), notes.orientation(), edge);
      return new ScaledPhoto(jpeg(upright), upright.getWidth(), upright.getHeight(), notes.location());
    } catch (IOException | RuntimeException e) {
      throw new PhotoRefusedException("The photo is broken: it can't be read to its end. Take it again.", e);
    } finally {
      reader.dispose();
    }
  }

  private static ImageInputStream open(byte[] file) {
    return new MemoryCacheImageInputStream(new ByteArrayInputStream(file));
  }

  private static String name(ImageReader reader) throws IOException {
    return reader.getFormatName().toLowerCase(Locale.ROOT);
  }

  private static ImageReader reader(byte[] file) throws PhotoRefusedException {
    try {
      for (Iterator<ImageReader> all = ImageIO.getImageReaders(open(file)); all.hasNext();) {
        ImageReader reader = all.next();
        if (FORMATS.contains(name(reader))) {
          return reader;
        }
        reader.dispose();
      }
    } catch (IOException e) {
      throw new PhotoRefusedException("The photo is broken.", e);
    }
    boolean isHeif = file.length > 12 && new String(file, 4, 4, StandardCharsets.ISO_8859_1).equals("ftyp");
    throw new PhotoRefusedException(isHeif ? "The photo is in a form that telephones keep to themselves (HEIF); send it as JPEG."
        : "This is no photo that can be kept: JPEG or PNG was expected.");
  }

  private static void requireSize(int width, int height) throws PhotoRefusedException {
    if ((long) width * height > MOST_PIXELS) {
      throw new PhotoRefusedException("The photo says that it has " + width + " × " + height + " pixels; at most "
          + MOST_PIXELS / 1_000_000 + " million are read. Take it with a smaller setting.");
    }
  }

  /** With every nth pixel only, where that is still more than is kept: a large picture never stands in memory whole. */
  private static BufferedImage decode(ImageReader reader, int edge) throws IOException {
    ImageReadParam some = reader.getDefaultReadParam();
    int step = Math.max(1, Math.max(reader.getWidth(0), reader.getHeight(0)) / (2 * edge));
    some.setSourceSubsampling(step, step, 0, 0);
    return reader.read(0, some);
  }

  private static BufferedImage upright(BufferedImage image, int orientation, int edge) {
    double scale = Math.min(1, (double) edge / Math.max(image.getWidth(), image.getHeight()));
    int w = Math.max(1, (int) Math.round(image.getWidth() * scale));
    int h = Math.max(1, (int) Math.round(image.getHeight() * scale));
    boolean isOnItsSide = orientation >= ON_ITS_SIDE;
    BufferedImage out = new BufferedImage(isOnItsSide ? h : w, isOnItsSide ? w : h, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = out.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, out.getWidth(), out.getHeight());
    pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.transform(turn(orientation, w, h));
    pen.drawImage(image, 0, 0, w, h, null);
    pen.dispose();
    return out;
  }

  /** Exif 2.32, table 6: where the first row and the first column of what was stored are. */
  private static AffineTransform turn(int orientation, int w, int h) {
    return switch (orientation) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
      case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
      default -> new AffineTransform();
    };
  }

  private static byte[] jpeg(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
