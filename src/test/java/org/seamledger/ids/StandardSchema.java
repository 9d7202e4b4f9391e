package org.seamledger.ids;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.w3c.dom.ls.LSResourceResolver;
import org.xml.sax.SAXException;

/** The standard's XML schema, with what it imports from the W3C's out of {@code org.eclipse.xsd}: nothing is fetched. */
final class StandardSchema {

  private static final byte[] INSTANCE =
      ("<xs:schema xmlns:xs='http://www.w3.org/2001/XMLSchema' targetNamespace='" + XMLConstants.W3C_XML_SCHEMA_INSTANCE_NS_URI + "'/>")
          .getBytes(StandardCharsets.UTF_8);

  private StandardSchema() {
  }

  static Schema read(Path xsd) throws SAXException {
    SchemaFactory factory = SchemaFactory.newDefaultInstance();
    factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "http,https");
    factory.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "http,https");
    factory.setResourceResolver(resolver());
    return factory.newSchema(new StreamSource(xsd.toFile()));
  }

  private static LSResourceResolver resolver() {
    return (type, namespace, publicId, systemId, baseUri) -> {
      String name = systemId.substring(systemId.lastIndexOf('/') + 1);
      // The namespace that every document may use, which no schema can declare.
      InputStream in = name.equals("XMLSchema-instance") ? new ByteArrayInputStream(INSTANCE) : StandardSchema.class
          .getResourceAsStream("/cache/www.w3.org/2001/" + name);
      if (in == null) {
        throw new IllegalStateException("nothing known by the name " + systemId);
      }
      LSInput input = implementation().createLSInput();
      input.setByteStream(in);
      input.setSystemId("http://www.w3.org/2001/" + name);
      input.setPublicId(publicId);
      return input;
    };
  }

  private static DOMImplementationLS implementation() {
    try {
      return (DOMImplementationLS) org.w3c.dom.bootstrap.DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }
}
