package org.seamledger.export.submittal;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.seamledger.export.sheet.Svg;
import org.xml.sax.Attributes;
import org.xml.sax.ContentHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.AttributesImpl;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Gives a drawing to the formatter as SVG 1.1. It has no {@code paint-order}, so that words with a halo get their outline before them, as a
 * path; and no {@code @page}.
 */
final class SvgFilter extends DefaultHandler {

  private static final String NAMESPACE = "http://www.w3.org/2000/svg";
  private static final String HALO = "halo";
  private static final Pattern RULE = Pattern.compile("\\.([\\w-]+)\\s*\\{([^}]*)\\}");
  private static final Pattern SIZE = Pattern.compile("font-size:\\s*([\\d.]+)px");
  private static final double USUAL_SIZE = 2.6;

  private final Glyphs glyphs;
  private final ContentHandler out;
  private final Map<String, Double> sizes = new HashMap<>();
  private final Map<String, Boolean> bold = new HashMap<>();
  private final StringBuilder words = new StringBuilder();
  /** Of each element that is open, from the outermost on. */
  private final Deque<String> anchors = new ArrayDeque<>(List.of("start"));
  private Attributes haloed;
  private boolean isStyle;

  private SvgFilter(Glyphs glyphs, ContentHandler out) {
    this.glyphs = glyphs;
    this.out = out;
  }

  /** Sends a drawing's elements, without begin and end of a document. */
  static void send(String svg, Glyphs glyphs, ContentHandler out) throws SAXException {
    try {
      SAXParserFactory factory = SAXParserFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      factory.newSAXParser().parse(new InputSource(new StringReader(svg)), new SvgFilter(glyphs, out));
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void startPrefixMapping(String prefix, String uri) throws SAXException {
    out.startPrefixMapping(prefix, uri);
  }

  @Override
  public void endPrefixMapping(String prefix) throws SAXException {
    out.endPrefixMapping(prefix);
  }

  @Override
  public void startElement(String uri, String local, String name, Attributes attributes) throws SAXException {
    words.setLength(0);
    String anchor = attributes.getValue("text-anchor");
    anchors.push(anchor == null ? anchors.peek() : anchor);
    isStyle = local.equals("style");
    haloed = local.equals("text") && isIn(HALO, attributes) ? new AttributesImpl(attributes) : null;
    if (haloed == null) {
      out.startElement(uri, local, name, attributes);
    }
  }

  @Override
  public void characters(char[] text, int from, int length) {
    words.append(text, from, length);
  }

  @Override
  public void endElement(String uri, String local, String name) throws SAXException {
    String text = words.toString();
    words.setLength(0);
    if (isStyle) {
      text = style(text);
      isStyle = false;
    } else {
      text = glyphs.shown(text.strip());
    }
    if (haloed != null) {
      outline(text);
      out.startElement(uri, local, name, without(haloed));
      haloed = null;
    }
    anchors.pop();
    out.characters(text.toCharArray(), 0, text.length());
    out.endElement(uri, local, name);
  }

  private String style(String css) {
    Matcher rule = RULE.matcher(css);
    while (rule.find()) {
      Matcher size = SIZE.matcher(rule.group(2));
      if (size.find()) {
        sizes.put(rule.group(1), Double.parseDouble(size.group(1)));
      }
      bold.put(rule.group(1), rule.group(2).contains("font-weight"));
    }
    return css.replaceAll("@page\\s*\\{[^}]*\\}", "");
  }

  private static boolean isIn(String type, Attributes attributes) {
    String all = attributes.getValue("class");
    return all != null && List.of(all.split(" ")).contains(type);
  }

  private static Attributes without(Attributes attributes) {
    AttributesImpl plain = new AttributesImpl(attributes);
    int at = plain.getIndex("class");
    plain.setValue(at, plain.getValue(at).replace(HALO, "").strip());
    return plain;
  }

  private void outline(String text) throws SAXException {
    double size = USUAL_SIZE;
    boolean isBold = false;
    for (String type : haloed.getValue("class").split(" ")) {
      size = sizes.getOrDefault(type, size);
      isBold |= bold.getOrDefault(type, false);
    }
    Glyphs.Outline outline = glyphs.outline(text, isBold, size);
    double left = switch (anchors.peek()) {
      case "middle" -> -outline.width() / 2;
      case "end" -> -outline.width();
      default -> 0;
    };
    String at = "translate(" + Svg.number(number("x") + left) + " " + Svg.number(number("y")) + ")";
    AttributesImpl attributes = new AttributesImpl();
    add(attributes, "d", outline.path());
    add(attributes, "transform", (haloed.getValue("transform") == null ? "" : haloed.getValue("transform") + " ") + at);
    add(attributes, "style", "fill: none; stroke: #ffffff; stroke-width: 0.9; stroke-linejoin: round");
    out.startElement(NAMESPACE, "path", "path", attributes);
    out.endElement(NAMESPACE, "path", "path");
  }

  private double number(String attribute) {
    return haloed.getValue(attribute) == null ? 0 : Double.parseDouble(haloed.getValue(attribute));
  }

  private static void add(AttributesImpl attributes, String name, String value) {
    attributes.addAttribute("", name, name, "CDATA", value);
  }
}
