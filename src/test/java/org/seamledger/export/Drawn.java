package org.seamledger.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.seamledger.geometry.Vec2;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A drawing read again as a browser would, for measuring on it. */
public record Drawn(Document document) {

  public static Drawn parse(String svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return new Drawn(factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg))));
    } catch (Exception e) {
      throw new AssertionError("not well-formed: " + e.getMessage(), e);
    }
  }

  /** n of the scale 1:n. */
  double denominator() {
    return Double.parseDouble(document.getDocumentElement().getAttribute("data-scale"));
  }

  List<Element> elements(String tag, String type) {
    List<Element> found = new ArrayList<>();
    NodeList all = document.getElementsByTagName(tag);
    for (int i = 0; i < all.getLength(); i++) {
      Element e = (Element) all.item(i);
      if (Arrays.asList(e.getAttribute("class").split(" ")).contains(type) && !isEnlarged(e)) {
        found.add(e);
      }
    }
    return found;
  }

  /** Whether it lies in a part that is drawn a second time, at another scale. */
  private static boolean isEnlarged(Element e) {
    for (Node n = e.getParentNode(); n instanceof Element parent; n = n.getParentNode()) {
      if (parent.getAttribute("class").equals("enlarged")) {
        return true;
      }
    }
    return false;
  }

  List<Element> elements(String tag) {
    List<Element> found = new ArrayList<>();
    NodeList all = document.getElementsByTagName(tag);
    for (int i = 0; i < all.getLength(); i++) {
      found.add((Element) all.item(i));
    }
    return found;
  }

  /** Points of what is drawn at the drawing's own scale; an enlargement beside it has another. */
  List<List<Vec2>> points(String tag, String type) {
    return elements(tag, type).stream().map(Drawn::points).toList();
  }

  static List<Vec2> points(Element e) {
    return Arrays.stream(e.getAttribute("points").split(" ")).map(p -> p.split(","))
        .map(p -> new Vec2(Double.parseDouble(p[0]), Double.parseDouble(p[1]))).toList();
  }

  /** All words, without what breaks between lines. */
  String words() {
    StringBuilder words = new StringBuilder();
    NodeList all = document.getElementsByTagName("text");
    for (int i = 0; i < all.getLength(); i++) {
      words.append(all.item(i).getTextContent()).append(' ');
    }
    return words.toString();
  }

  void isHarmless() {
    for (String tag : List.of("script", "b", "foreignObject", "a", "image")) {
      assertThat(document.getElementsByTagName(tag).getLength()).as(tag).isZero();
    }
  }

  static double length(List<Vec2> line) {
    double sum = 0;
    for (int i = 1; i < line.size(); i++) {
      sum += line.get(i - 1).distance(line.get(i));
    }
    return sum;
  }
}
