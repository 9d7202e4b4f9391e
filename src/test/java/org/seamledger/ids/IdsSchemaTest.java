package org.seamledger.ids;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/** The program's own check of an IDS file's structure says valid where the standard's XML schema does, and only there. */
@Tag("slow")
class IdsSchemaTest {

  /** All that a document may hold, in its order. */
  private static final String EVERYTHING = """
      <ids xmlns="http://standards.buildingsmart.org/IDS" xmlns:xs="http://www.w3.org/2001/XMLSchema"
          xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://standards.buildingsmart.org/IDS ids.xsd">
        <info><title>t</title><copyright>c</copyright><version>1</version><description>d</description><author>a@b.org</author>
          <date>2026-01-31</date><purpose>p</purpose><milestone>m</milestone></info>
        <specifications>
          <specification name="n" ifcVersion="IFC2X3 IFC4 IFC4X3_ADD2" identifier="i" description="d" instructions="i">
            <applicability minOccurs="1" maxOccurs="unbounded">
              <entity><name><simpleValue>IFCWALL</simpleValue></name><predefinedType><simpleValue>X</simpleValue></predefinedType></entity>
              <partOf relation="IFCRELVOIDSELEMENT IFCRELFILLSELEMENT">
                <entity><name><simpleValue>IFCSLAB</simpleValue></name></entity></partOf>
              <classification><value><simpleValue>1</simpleValue></value><system><simpleValue>S</simpleValue></system></classification>
              <attribute><name><simpleValue>Name</simpleValue></name><value><simpleValue>1</simpleValue></value></attribute>
              <property dataType="IFCREAL"><propertySet><simpleValue>P</simpleValue></propertySet>
                <baseName><simpleValue>B</simpleValue></baseName>
                <value><xs:restriction base="xs:double"><xs:annotation><xs:documentation>why</xs:documentation></xs:annotation>
                  <xs:minInclusive value="1" fixed="true"/><xs:maxExclusive value="2" id="e"/></xs:restriction></value></property>
              <material><value><xs:restriction base="xs:string"><xs:length value="3"/></xs:restriction></value></material>
            </applicability>
            <requirements description="d">
              <material cardinality="optional" uri="u" instructions="i"><value><xs:restriction base="xs:string"><xs:enumeration value="A"/>
                <xs:pattern value="B"/><xs:enumeration value="C"/><xs:minLength value="1"/></xs:restriction></value></material>
              <property cardinality="prohibited" uri="u" instructions="i"><propertySet><simpleValue>P</simpleValue></propertySet>
                <baseName><simpleValue>B</simpleValue></baseName></property>
              <attribute cardinality="required" instructions="i"><name><simpleValue>Name</simpleValue></name></attribute>
              <classification cardinality="optional" uri="u" instructions="i"><system><simpleValue>S</simpleValue></system></classification>
              <partOf cardinality="prohibited" instructions="i"><entity><name><simpleValue>IFCSLAB</simpleValue></name></entity></partOf>
              <entity instructions="i"><name><simpleValue>IFCWALL</simpleValue></name></entity>
            </requirements>
          </specification>
          <specification name="n" ifcVersion="IFC4"><applicability minOccurs="0" maxOccurs="0"><material/></applicability></specification>
        </specifications>
      </ids>
      """;

  private static final List<String> WORDS = List.of("", "x", "0", "-1", "1.5", "unbounded", "IFC2X3", "IFC4 IFC5", "IfcReal", "xs:string",
      "required",
      "optional",
      "true", "IFCRELNESTS");

  private final Schema schema;
  private final List<String> disagreements = new ArrayList<>();
  private int valid;
  private int invalid;

  IdsSchemaTest() throws SAXException {
    schema = StandardSchema.read(SharedStandards.file("ids.xsd"));
  }

  @Test
  void agreesOnEveryCaseOfTheBody() throws IOException {
    for (Path file : SharedStandards.cases()) {
      compare(Files.readString(file), file.toString());
    }
    assertThat(disagreements).isEmpty();
    assertThat(valid).isGreaterThan(200);
  }

  @Test
  void agreesOnEveryChangeOfADocumentThatHoldsEverything() throws Exception {
    compare(EVERYTHING, "as it is");
    assertThat(valid).isOne();
    int elements = parse(EVERYTHING).getElementsByTagName("*").getLength();
    for (int i = 0; i < elements; i++) {
      for (Consumer<Element> change : changes()) {
        Document document = parse(EVERYTHING);
        Element element = (Element) document.getElementsByTagName("*").item(i);
        String name = element.getNodeName() + " number " + i;
        change.accept(element);
        compare(text(document), name);
      }
      attributes(i);
    }
    System.out.println("IDS structure, changed documents: " + valid + " valid, " + invalid + " invalid, by both");
    assertThat(disagreements).isEmpty();
    assertThat(valid).isGreaterThan(50);
    assertThat(invalid).isGreaterThan(500);
  }

  private static List<Consumer<Element>> changes() {
    List<Consumer<Element>> changes = new ArrayList<>();
    changes.add(e -> ifInside(e, () -> e.getParentNode().removeChild(e)));
    changes.add(e -> ifInside(e, () -> e.getParentNode().insertBefore(e.cloneNode(true), e)));
    changes.add(e -> ifInside(e, () -> e.getParentNode().appendChild(e)));
    changes.add(e -> ifInside(e, () -> e.getParentNode().insertBefore(e, e.getParentNode().getFirstChild())));
    changes.add(e -> e.getOwnerDocument().renameNode(e, e.getNamespaceURI(), "other"));
    changes.add(e -> e.getOwnerDocument().renameNode(e, "urn:other", e.getLocalName()));
    changes.add(e -> e.setAttribute("other", "1"));
    changes.add(e -> e.setAttributeNS("urn:other", "o:other", "1"));
    changes.add(e -> e.appendChild(e.getOwnerDocument().createTextNode("words")));
    changes.add(e -> e.appendChild(e.getOwnerDocument().createElementNS(IdsGrammar.IDS, "simpleValue")));
    changes.add(e -> {
      while (e.hasChildNodes()) {
        e.removeChild(e.getFirstChild());
      }
    });
    return changes;
  }

  private static void ifInside(Element e, Runnable change) {
    if (e.getParentNode() instanceof Element) {
      change.run();
    }
  }

  private void attributes(int index) throws Exception {
    Element original = (Element) parse(EVERYTHING).getElementsByTagName("*").item(index);
    for (int a = 0; a < original.getAttributes().getLength(); a++) {
      Attr attribute = (Attr) original.getAttributes().item(a);
      if (!attribute.getName().startsWith("xmlns") && attribute.getNamespaceURI() == null) {
        for (String word : WORDS) {
          Document document = parse(EVERYTHING);
          ((Element) document.getElementsByTagName("*").item(index)).setAttribute(attribute.getName(), word);
          compare(text(document), original.getNodeName() + " " + attribute.getName() + "=" + word);
        }
        Document document = parse(EVERYTHING);
        ((Element) document.getElementsByTagName("*").item(index)).removeAttribute(attribute.getName());
        compare(text(document), original.getNodeName() + " without " + attribute.getName());
      }
    }
  }

  private void compare(String text, String what) throws IOException {
    boolean standard = true;
    String reason = "";
    try {
      schema.newValidator().validate(new StreamSource(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))));
    } catch (SAXException e) {
      standard = false;
      reason = e.getMessage();
    }
    if (own(text).isEmpty() != standard) {
      disagreements.add(what + ": by the standard " + (standard ? "valid" : reason) + ", by us " + own(text));
    }
    valid += standard ? 1 : 0;
    invalid += standard ? 0 : 1;
  }

  private static List<IdsProblem> own(String text) {
    try {
      return IdsReader.structure(XmlTree.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8))), "test.ids");
    } catch (XMLStreamException e) {
      return List.of(new IdsProblem("test.ids", 0, 0, "XML", e.getMessage()));
    }
  }

  private static Document parse(String text) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultNSInstance();
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static String text(Node document) throws Exception {
    Transformer transformer = TransformerFactory.newDefaultInstance().newTransformer();
    transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
    StringWriter writer = new StringWriter();
    transformer.transform(new DOMSource(document), new StreamResult(writer));
    return writer.toString();
  }
}
