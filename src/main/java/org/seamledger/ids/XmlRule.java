package org.seamledger.ids;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.xml.namespace.QName;

/**
 * What an element of a document may hold: attributes, and children, or one of some children, or text.
 *
 * <p>Made step by step, then left as it is.
 */
final class XmlRule {

  static final int UNBOUNDED = Integer.MAX_VALUE;

  /** @param rank children come by ascending rank, those of one rank in any order */
  record Child(QName name, int rank, XmlRule rule, int least, int most) {
  }

  record Attribute(XmlType type, boolean required) {
  }

  private final boolean choice;
  private final XmlType text;
  private final boolean open;
  private final List<Child> children = new ArrayList<>();
  private final Map<String, Attribute> attributes = new LinkedHashMap<>();
  private boolean foreignAttributes;

  private XmlRule(boolean choice, XmlType text, boolean open) {
    this.choice = choice;
    this.text = text;
    this.open = open;
  }

  static XmlRule elements() {
    return new XmlRule(false, null, false);
  }

  /** Exactly one of the children. */
  static XmlRule choice() {
    return new XmlRule(true, null, false);
  }

  static XmlRule text(XmlType type) {
    return new XmlRule(false, type, false);
  }

  /** Whatever stands inside is left alone; its attributes are not. */
  static XmlRule open() {
    return new XmlRule(false, null, true);
  }

  /** A child behind those named before. */
  XmlRule then(String space, String local, XmlRule rule, int least, int most) {
    return add(space, local, children.isEmpty() ? 0 : children.get(children.size() - 1).rank() + 1, rule, least, most);
  }

  /** A child that may stand among those named just before. */
  XmlRule among(String space, String local, XmlRule rule, int least, int most) {
    return add(space, local, children.isEmpty() ? 0 : children.get(children.size() - 1).rank(), rule, least, most);
  }

  private XmlRule add(String space, String local, int rank, XmlRule rule, int least, int most) {
    children.add(new Child(new QName(space, local), rank, rule, least, most));
    return this;
  }

  XmlRule required(String name, XmlType type) {
    attributes.put(name, new Attribute(type, true));
    return this;
  }

  XmlRule optional(String name, XmlType type) {
    attributes.put(name, new Attribute(type, false));
    return this;
  }

  /** Attributes of other namespaces are welcome. */
  XmlRule withForeignAttributes() {
    foreignAttributes = true;
    return this;
  }

  boolean isChoice() {
    return choice;
  }

  /** The rule of a child, or null where there is none. */
  Child child(QName name) {
    return children.stream().filter(c -> c.name().equals(name)).findFirst().orElse(null);
  }

  /** The type of its text, or null where it holds elements. */
  XmlType text() {
    return text;
  }

  boolean isOpen() {
    return open;
  }

  List<Child> children() {
    return children;
  }

  Map<String, Attribute> attributes() {
    return attributes;
  }

  boolean takesForeignAttributes() {
    return foreignAttributes;
  }
}
