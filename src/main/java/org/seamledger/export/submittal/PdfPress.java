package org.seamledger.export.submittal;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Date;
import java.util.function.Consumer;
import org.apache.fop.apps.EnvironmentalProfileFactory;
import org.apache.fop.apps.FOUserAgent;
import org.apache.fop.apps.Fop;
import org.apache.fop.apps.FopConfParser;
import org.apache.fop.apps.FopFactory;
import org.apache.fop.apps.FopFactoryBuilder;
import org.apache.fop.events.model.EventSeverity;
import org.seamledger.finding.Sha256;
import org.seamledger.takeoff.Program;
import org.xml.sax.SAXException;

/** Makes PDF of XSL-FO. */
final class PdfPress {

  private static final String FONT =
      "<font kerning=\"no\" embed-url=\"%s\"><font-triplet name=\"DejaVu Sans\" style=\"normal\" weight=\"%s\"/></font>";
  /** The drawings' headings are 600 heavy; without that the formatter would take the regular face. */
  private static final String CONFIGURATION = "<fop version=\"1.0\"><accessibility>true</accessibility><renderers>"
      + "<renderer mime=\"application/pdf\"><pdf-a-mode>PDF/A-3b</pdf-a-mode><pdf-ua-mode>PDF/UA-1</pdf-ua-mode><fonts>"
      + FONT.formatted(FontFiles.REGULAR, "normal") + FONT.formatted(FontFiles.BOLD, "bold") + FONT.formatted(FontFiles.BOLD, "600")
      + "</fonts></renderer></renderers></fop>";
  private static final int ID_DIGITS = 32;
  private static final byte[] MADE = "<xmp:CreateDate>".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] WRITTEN = "<xmp:MetadataDate>".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] ID = "/ID [".getBytes(StandardCharsets.US_ASCII);

  private PdfPress() {
  }

  /**
   * Writes a document.
   *
   * @param created when it counts as made: a clock would make each run's bytes others
   * @throws IOException if {@code out} can't be written
   */
  static void print(Date created, Consumer<FoWriter> document, OutputStream out) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      FopFactory factory = factory();
      FOUserAgent agent = factory.newFOUserAgent();
      agent.setProducer(Program.NAME);
      agent.setCreator(Program.NAME);
      agent.setCreationDate(created);
      // What is too wide or lacks a glyph is no news for a user; what can't be set at all is a fault of the program.
      agent.getEventBroadcaster().addEventListener(event -> {
        if (event.getSeverity() == EventSeverity.FATAL) {
          throw new IllegalStateException("the PDF can't be set: " + event.getEventKey() + " " + event.getParams());
        }
      });
      Fop fop = factory.newFop("application/pdf", agent, bytes);
      document.accept(new FoWriter(fop.getDefaultHandler(), Glyphs.read()));
    } catch (SAXException e) {
      throw new IllegalStateException("the PDF can't be set", e);
    }
    byte[] pdf = bytes.toByteArray();
    undate(pdf);
    identify(pdf);
    out.write(pdf);
    out.flush();
  }

  private static FopFactory factory() throws SAXException, IOException {
    FopFactoryBuilder builder = new FopConfParser(new ByteArrayInputStream(CONFIGURATION.getBytes(StandardCharsets.UTF_8)),
        EnvironmentalProfileFactory.createRestrictedIO(FontFiles.BASE, new FontFiles())).getFopFactoryBuilder();
    builder.getFontManager().disableFontCache();
    return builder.build();
  }

  /** When the metadata were written, which the formatter takes from the clock, becomes when the document was made. */
  private static void undate(byte[] pdf) {
    int made = lastIndexOf(MADE, pdf);
    int written = lastIndexOf(WRITTEN, pdf);
    if (made < 0 || written < 0) {
      throw new IllegalStateException("the PDF has no metadata");
    }
    System.arraycopy(pdf, made + MADE.length, pdf, written + WRITTEN.length, "2024-05-31T08:00:00".length());
  }

  /** Puts a hash of the document in the place of the formatter's random identifiers, which end it. */
  private static void identify(byte[] pdf) {
    int at = lastIndexOf(ID, pdf);
    if (at < 0) {
      throw new IllegalStateException("the PDF has no identifier");
    }
    int from = at + ID.length;
    int end = from;
    while (pdf[end] != ']') {
      if (Character.digit(pdf[end], 16) >= 0) {
        pdf[end] = '0';
      }
      end++;
    }
    byte[] hash = Sha256.hex(pdf).substring(0, ID_DIGITS).toUpperCase(java.util.Locale.ROOT).getBytes(StandardCharsets.US_ASCII);
    int digit = 0;
    for (int i = from; i < end; i++) {
      if (pdf[i] == '0') {
        pdf[i] = hash[digit++ % ID_DIGITS];
      }
    }
  }

  private static int lastIndexOf(byte[] word, byte[] text) {
    for (int i = text.length - word.length; i >= 0; i--) {
      if (java.util.Arrays.equals(text, i, i + word.length, word, 0, word.length)) {
        return i;
      }
    }
    return -1;
  }
}
