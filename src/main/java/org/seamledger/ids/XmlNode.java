package org.seamledger.ids;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.namespace.QName;

/** An element of an XML document with the place where its tag begins. */
final class XmlNode {

  private final QName name;
  private final int line;
  private final int column;
  private final Map<QName, String> attributes;
  private final Map<String, String> prefixes;
  private final List<XmlNode> children = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();

  /** @param prefixes namespaces by prefix, as far as values of attributes use them */
  XmlNode(QName name, int line, int column, Map<QName, String> attributes, Map<String, String> prefixes) {
    this.name = name;
    this.line = line;
    this.column = column;
    this.attributes = attributes;
    this.prefixes = prefixes;
  }

  QName name() {
    return name;
  }

  int line() {
    return line;
  }

  int column() {
    return column;
  }

  Map<QName, String> attributes() {
    return attributes;
  }

  /** An attribute without namespace. */
  Optional<String> attribute(String local) {
    return Optional.ofNullable(attributes.get(new QName(local)));
  }

  List<XmlNode> children() {
    return children;
  }

  boolean is(String local) {
    return name.getLocalPart().equals(local);
  }

  /** The first child of that local name. */
  Optional<XmlNode> child(String local) {
    return children.stream().filter(c -> c.is(local)).findFirst();
  }

  String text() {
    return text.toString();
  }

  void append(String more) {
    text.append(more);
  }

  /** The qualified name that an attribute's value stands for, or null where its prefix is not declared. */
  QName resolve(String value) {
    String word = value.strip();
    int colon = word.indexOf(':');
    String space = prefixes.get(colon < 0 ? "" : word.substring(0, colon));
    if (space == null) {
      return colon < 0 ? new QName(word) : null;
    }
    return new QName(space, word.substring(colon + 1));
  }
}
