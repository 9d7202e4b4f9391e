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
    PdfTouches.apply(pdf);
    out.write(pdf);
    out.flush();
  }

  private static FopFactory factory() throws SAXException, IOException {
    FopFactoryBuilder builder = new FopConfParser(new ByteArrayInputStream(CONFIGURATION.getBytes(StandardCharsets.UTF_8)),
        EnvironmentalProfileFactory.createRestrictedIO(FontFiles.BASE, new FontFiles())).getFopFactoryBuilder();
    builder.getFontManager().disableFontCache();
    return builder.build();
  }
}
