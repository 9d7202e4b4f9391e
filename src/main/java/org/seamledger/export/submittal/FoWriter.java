package org.seamledger.export.submittal;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.seamledger.export.wording.OneLine;
import org.xml.sax.ContentHandler;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.AttributesImpl;

/**
 * XSL-FO, given to the formatter element by element, so that the whole document never stands in memory as text. Attributes are name, value,
 * name, value …; every text is made safe here: one line, no control characters, nothing that the fonts don't have.
 */
final class FoWriter {

  private static final String FO = "http://www.w3.org/1999/XSL/Format";
  private static final String FOX = "http://xmlgraphics.apache.org/fop/extensions";
  private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
  private static final String DC = "http://purl.org/dc/elements/1.1/";
  private static final String XML = "http://www.w3.org/XML/1998/namespace";

  private final ContentHandler out;
  private final Glyphs glyphs;

  FoWriter(ContentHandler out, Glyphs glyphs) {
    this.out = out;
    this.glyphs = glyphs;
  }

  /** Something that a parser or formatter may refuse; what is written here it doesn't, but for a fault of the program. */
  @FunctionalInterface
  private interface Step {
    void run() throws SAXException;
  }

  private FoWriter step(Step step) {
    try {
      step.run();
      return this;
    } catch (SAXException e) {
      throw new UncheckedIOException(new IOException(e));
    }
  }

  FoWriter begin() {
    return step(() -> {
      out.startDocument();
      out.startPrefixMapping("fo", FO);
      out.startPrefixMapping("fox", FOX);
    });
  }

  FoWriter end() {
    return step(() -> {
      out.endPrefixMapping("fox");
      out.endPrefixMapping("fo");
      out.endDocument();
    });
  }

  /** Title and subject in the form that PDF/A asks for, each a text in a language. */
  FoWriter declare(String title, String subject) {
    open("declarations");
    return step(() -> {
      out.startPrefixMapping("rdf", RDF);
      out.startPrefixMapping("dc", DC);
      out.startElement("adobe:ns:meta/", "xmpmeta", "x:xmpmeta", new AttributesImpl());
      out.startElement(RDF, "RDF", "rdf:RDF", new AttributesImpl());
      AttributesImpl about = new AttributesImpl();
      about.addAttribute(RDF, "about", "rdf:about", "CDATA", "");
      out.startElement(RDF, "Description", "rdf:Description", about);
      alternative("title", title);
      alternative("description", subject);
      out.endElement(RDF, "Description", "rdf:Description");
      out.endElement(RDF, "RDF", "rdf:RDF");
      out.endElement("adobe:ns:meta/", "xmpmeta", "x:xmpmeta");
      out.endPrefixMapping("dc");
      out.endPrefixMapping("rdf");
    }).close("declarations");
  }

  private void alternative(String name, String words) throws SAXException {
    AttributesImpl language = new AttributesImpl();
    language.addAttribute(XML, "lang", "xml:lang", "CDATA", "x-default");
    String shown = OneLine.of(words);
    out.startElement(DC, name, "dc:" + name, new AttributesImpl());
    out.startElement(RDF, "Alt", "rdf:Alt", new AttributesImpl());
    out.startElement(RDF, "li", "rdf:li", language);
    out.characters(shown.toCharArray(), 0, shown.length());
    out.endElement(RDF, "li", "rdf:li");
    out.endElement(RDF, "Alt", "rdf:Alt");
    out.endElement(DC, name, "dc:" + name);
  }

  FoWriter open(String name, String... attributes) {
    return step(() -> out.startElement(FO, name, "fo:" + name, attributes(attributes)));
  }

  FoWriter close(String name) {
    return step(() -> out.endElement(FO, name, "fo:" + name));
  }

  FoWriter empty(String name, String... attributes) {
    return open(name, attributes).close(name);
  }

  private AttributesImpl attributes(String... all) {
    AttributesImpl attributes = new AttributesImpl();
    for (int i = 0; i < all.length; i += 2) {
      String name = all[i];
      String local = name.substring(name.indexOf(':') + 1);
      String space = name.startsWith("fox:") ? FOX : name.startsWith("xml:") ? XML : "";
      attributes.addAttribute(space, local, name, "CDATA", glyphs.shown(OneLine.of(all[i + 1])));
    }
    return attributes;
  }

  /** Text as it stands but for what can't be shown. A space at either end stays. */
  FoWriter text(String words) {
    String shown = (words.startsWith(" ") ? " " : "") + glyphs.shown(OneLine.of(words)) + (words.endsWith(" ") ? " " : "");
    return step(() -> out.characters(shown.toCharArray(), 0, shown.length()));
  }

  /** An element that holds text only. */
  FoWriter words(String name, String words, String... attributes) {
    return open(name, attributes).text(words).close(name);
  }

  FoWriter block(String words, String... attributes) {
    return words("block", words, attributes);
  }

  /** Words that lead to a place of the document. */
  FoWriter link(String id, String words, String... attributes) {
    String[] all = new String[attributes.length + 4];
    System.arraycopy(attributes, 0, all, 4, attributes.length);
    all[0] = "internal-destination";
    all[1] = id;
    all[2] = "fox:alt-text";
    all[3] = "To " + words;
    return words("basic-link", words, all);
  }

  /** A drawing as vectors, with the words that stand for it where it can't be seen. */
  FoWriter drawing(String svg, String instead, String... attributes) {
    String[] all = new String[attributes.length + 2];
    System.arraycopy(attributes, 0, all, 2, attributes.length);
    all[0] = "fox:alt-text";
    all[1] = instead;
    open("instream-foreign-object", all);
    step(() -> SvgFilter.send(svg, glyphs, out));
    return close("instream-foreign-object");
  }
}
