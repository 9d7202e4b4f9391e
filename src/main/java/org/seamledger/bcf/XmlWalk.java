package org.seamledger.bcf;

import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.Deque;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Walks over an XML document, element by element. A document type ends it: no entity is ever expanded, and nothing is ever fetched. */
final class XmlWalk {

  private static final int DEEPEST = 64;

  /** Takes what a document says. Paths are local names from the root on, with a slash between them. */
  interface Fields {

    /** @param attribute value of an attribute of this element by its local name, or the empty string */
    void start(String path, java.util.function.UnaryOperator<String> attribute);

    /** @param text of the element itself, without blanks round it */
    void end(String path, String text);
  }

  private final XMLStreamReader reader;
  private final String place;
  private final Fields fields;
  private final Deque<String> paths = new ArrayDeque<>();
  private final Deque<StringBuilder> texts = new ArrayDeque<>();

  private XmlWalk(XMLStreamReader reader, String place, Fields fields) {
    this.reader = reader;
    this.place = place;
    this.fields = fields;
  }

  /**
   * @param place what the document is called in messages
   * @return the fields
   * @throws BcfFormatException where its bytes are no text, or it isn't well-formed or has a document type
   */
  static <F extends Fields> F read(byte[] document, String place, F fields) {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    try {
      XMLStreamReader reader = factory.createXMLStreamReader(new StringReader(XmlBytes.text(document, place)));
      try {
        new XmlWalk(reader, place, fields).walk();
      } finally {
        reader.close();
      }
    } catch (XMLStreamException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNumber();
      int column = e.getLocation() == null ? 0 : e.getLocation().getColumnNumber();
      String message = String.valueOf(e.getMessage()).lines().reduce((first, last) -> last).orElse("").replaceFirst("^Message: ", "");
      throw new BcfFormatException(place + (line > 0 ? ":" + line + ":" + column : ""), "a well-formed XML document",
          BcfReader.shown(message));
    }
    return fields;
  }

  private void walk() throws XMLStreamException {
    while (reader.hasNext()) {
      switch (reader.next()) {
        case XMLStreamConstants.START_ELEMENT -> start();
        case XMLStreamConstants.END_ELEMENT -> fields.end(paths.pop(), texts.pop().toString().strip());
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE -> {
          if (!texts.isEmpty()) {
            texts.peek().append(reader.getText());
          }
        }
        case XMLStreamConstants.DTD, XMLStreamConstants.ENTITY_REFERENCE -> throw new BcfFormatException(here(),
            "XML without a document type", "a document type or an entity of one");
        default -> {
          // Comments and processing instructions say nothing to us.
        }
      }
    }
  }

  private void start() {
    if (paths.size() >= DEEPEST) {
      throw new BcfFormatException(here(), "elements at most " + DEEPEST + " deep", "deeper ones");
    }
    paths.push(paths.isEmpty() ? reader.getLocalName() : paths.peek() + "/" + reader.getLocalName());
    texts.push(new StringBuilder());
    fields.start(paths.peek(), this::attribute);
  }

  private String attribute(String name) {
    for (int i = 0; i < reader.getAttributeCount(); i++) {
      if (reader.getAttributeLocalName(i).equals(name)) {
        return reader.getAttributeValue(i).strip();
      }
    }
    return "";
  }

  private String here() {
    return place + ":" + reader.getLocation().getLineNumber() + ":" + reader.getLocation().getColumnNumber();
  }
}
