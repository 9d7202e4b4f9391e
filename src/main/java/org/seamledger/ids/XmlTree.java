package org.seamledger.ids;

import java.io.InputStream;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.xml.namespace.QName;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads an XML document with places. Document types are not read, so nothing outside the file is ever fetched or expanded. */
final class XmlTree {

  private final XMLStreamReader reader;
  private final Deque<XmlNode> open = new ArrayDeque<>();
  private final Deque<Map<String, String>> scopes = new ArrayDeque<>();
  private XmlNode root;

  private XmlTree(XMLStreamReader reader) {
    this.reader = reader;
    scopes.push(Map.of("xml", "http://www.w3.org/XML/1998/namespace"));
  }

  /** @throws XMLStreamException where it is no well-formed document; its location says where */
  static XmlNode read(InputStream in) throws XMLStreamException {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    XMLStreamReader reader = factory.createXMLStreamReader(in);
    try {
      return new XmlTree(reader).read();
    } finally {
      reader.close();
    }
  }

  private XmlNode read() throws XMLStreamException {
    int last = reader.getEventType();
    while (reader.hasNext()) {
      Location before = reader.getLocation();
      int line = before.getLineNumber();
      // The reader knows that a text has ended once it has seen the bracket behind it.
      int column = before.getColumnNumber() - (last == XMLStreamConstants.CHARACTERS ? 1 : 0);
      last = reader.next();
      switch (last) {
        case XMLStreamConstants.START_ELEMENT -> start(line, column);
        case XMLStreamConstants.END_ELEMENT -> {
          open.pop();
          scopes.pop();
        }
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
          if (!open.isEmpty()) {
            open.peek().append(reader.getText());
          }
        }
        default -> {
          // Comments and processing instructions say nothing to us.
        }
      }
    }
    return root;
  }

  private void start(int line, int column) {
    Map<String, String> scope = scopes.peek();
    if (reader.getNamespaceCount() > 0) {
      scope = new HashMap<>(scope);
      for (int i = 0; i < reader.getNamespaceCount(); i++) {
        String prefix = reader.getNamespacePrefix(i);
        String uri = reader.getNamespaceURI(i);
        scope.put(prefix == null ? "" : prefix, uri == null ? "" : uri);
      }
    }
    Map<QName, String> attributes = new LinkedHashMap<>();
    for (int i = 0; i < reader.getAttributeCount(); i++) {
      attributes.put(reader.getAttributeName(i), reader.getAttributeValue(i));
    }
    XmlNode node = new XmlNode(reader.getName(), line, column, attributes, scope);
    if (open.isEmpty()) {
      root = node;
    } else {
      open.peek().children().add(node);
    }
    open.push(node);
    scopes.push(scope);
  }
}
