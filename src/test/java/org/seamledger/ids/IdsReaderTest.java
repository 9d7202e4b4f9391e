package org.seamledger.ids;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.schema.IfcRelease;

/** An IDS file that is wrong is told so, with the place and what should stand there. */
class IdsReaderTest {

  private static IdsDocument read(String text) throws IOException {
    return IdsReader.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "walls.ids");
  }

  /** A document of one specification. */
  static String ids(String version, String occurs, String applicability, String requirements) {
    return "<ids xmlns='http://standards.buildingsmart.org/IDS' xmlns:xs='http://www.w3.org/2001/XMLSchema'>\n<info><title>t</title>"
        + "</info>\n"
        + "<specifications>\n<specification name='s' ifcVersion='" + version + "'>\n<applicability " + occurs + ">" + applicability
        + "</applicability>\n" + (requirements.isEmpty() ? "" : "<requirements>" + requirements + "</requirements>\n")
        + "</specification></specifications></ids>";
  }

  static String value(String text) {
    return text.startsWith("<") ? text : "<simpleValue>" + text + "</simpleValue>";
  }

  static String entity(String name) {
    return "<entity><name>" + value(name) + "</name></entity>";
  }

  static String attribute(String name, String value) {
    return "<attribute><name>" + value(name) + "</name>" + (value.isEmpty() ? "" : "<value>" + value(value) + "</value>") + "</attribute>";
  }

  private static List<String> problems(String text) throws IOException {
    return read(text).problems().stream().map(IdsProblem::text).toList();
  }

  @Test
  void placeIsWhereTheTagBegins() throws IOException {
    String text = "<ids xmlns='http://standards.buildingsmart.org/IDS'>\n  <info><title/><author>nobody</author></info>\n  "
        + "<specification/>\n</ids>\n";
    assertThat(problems(text)).containsExactly("walls.ids:2:17: expected an e-mail address in <author>, found 'nobody'",
        "walls.ids:3:3: expected <specifications> inside <ids>, found <specification>");
  }

  @Test
  void whatIsNoXmlIsToldWithItsPlace() throws IOException {
    assertThat(problems("<ids>\n<info></ids>")).hasSize(1).first().asString().startsWith("walls.ids:2:").contains("well-formed");
    assertThat(problems("")).hasSize(1);
    assertThat(problems("<a/>")).containsExactly("walls.ids:1:1: expected <ids> in the namespace http://standards.buildingsmart.org/IDS,"
        + " found <a> in none");
  }

  @Test
  void bytesThatAreNoTextAreToldWithTheirPlace() throws IOException {
    byte[] text = "<ids>\n<x>é\u0080</x></ids>".getBytes(StandardCharsets.ISO_8859_1);
    assertThat(IdsReader.read(new ByteArrayInputStream(text), "walls.ids").problems()).extracting(IdsProblem::text)
        .containsExactly("walls.ids:2:4: expected text in UTF-8, found the byte E9");
    byte[] latin = ("<?xml version='1.0' encoding='ISO-8859-1'?>" + ids("IFC4", "maxOccurs='unbounded'", entity("IFCWALL"),
        attribute("Name", "Gerät"))).getBytes(StandardCharsets.ISO_8859_1);
    assertThat(IdsReader.read(new ByteArrayInputStream(latin), "walls.ids").problems()).isEmpty();
    byte[] wide = ids("IFC4", "maxOccurs='unbounded'", entity("IFCWALL"), "").getBytes(StandardCharsets.UTF_16);
    assertThat(IdsReader.read(new ByteArrayInputStream(wide), "walls.ids").problems()).isEmpty();
  }

  /** Nothing outside the file is read, and nothing grows. */
  @Test
  void entitiesOfADocumentTypeAreNotExpanded() throws IOException {
    assertThat(read("<!DOCTYPE ids [<!ENTITY x SYSTEM 'file:///etc/hostname'>]><ids>&x;</ids>").valid()).isFalse();
  }

  /** IDS 1.0, developer-guide.md, "Optionality"; both are 1 by default (XML Schema, attribute group occurs). */
  @ParameterizedTest
  @CsvSource({"maxOccurs='unbounded', REQUIRED", "minOccurs='1' maxOccurs='unbounded', REQUIRED",
      "minOccurs='0' maxOccurs='unbounded', OPTIONAL",
      "minOccurs='0' maxOccurs='0', PROHIBITED", "minOccurs='00' maxOccurs='+0', PROHIBITED", "minOccurs='1' maxOccurs='1', ",
      "minOccurs='0', ",
      "minOccurs='2' maxOccurs='unbounded', ", "minOccurs='1' maxOccurs='0', "})
  void threePairsOfOccurrencesAreAllowed(String occurs, Occurrence expected) throws IOException {
    IdsDocument document = read(ids("IFC4", occurs, entity("IFCWALL"), ""));
    assertThat(document.valid()).as("%s", document.problems()).isEqualTo(expected != null);
    if (expected != null) {
      assertThat(document.specifications().get(0).occurrence()).isEqualTo(expected);
    }
  }

  /** What the schema of IFC or of IDS allows no meaning: facet, whether it is valid. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "IFC4|<entity><name><simpleValue>IFCWALL</simpleValue></name><predefinedType><simpleValue>OWN</simpleValue></predefinedType>"
          + "</entity>|true",
      "IFC2X3|<entity><name><simpleValue>IFCWALL</simpleValue></name><predefinedType><simpleValue>OWN</simpleValue></predefinedType>"
          + "</entity>|false",
      "IFC4|<attribute><name><simpleValue>Tag</simpleValue></name></attribute>|true",
      "IFC4|<attribute><name><simpleValue>tag</simpleValue></name></attribute>|false",
      "IFC4|<attribute><name><simpleValue>OwnerHistory</simpleValue></name><value><simpleValue>x</simpleValue></value></attribute>|false",
      "IFC4|<attribute><name><simpleValue>ObjectPlacement</simpleValue></name></attribute>|true",
      "IFC4|<attribute cardinality='optional'><name><simpleValue>Tag</simpleValue></name></attribute>|false",
      "IFC4|<material cardinality='optional'/>|false",
      "IFC4|<material cardinality='prohibited'/>|true",
      "IFC4|<classification><system><simpleValue></simpleValue></system></classification>|false",
      "IFC4|<property dataType='IFCDATE'><propertySet><simpleValue>P</simpleValue></propertySet><baseName><simpleValue>B</simpleValue>"
          + "</baseName></property>|true",
      "IFC2X3|<property dataType='IFCDATE'><propertySet><simpleValue>P</simpleValue></propertySet><baseName>"
          + "<simpleValue>B</simpleValue></baseName></property>|false",
      "IFC4|<property dataType='IFCVALUE'><propertySet><simpleValue>P</simpleValue></propertySet><baseName><simpleValue>B</simpleValue>"
          + "</baseName></property>|false",
      "IFC4|<property cardinality='optional'><propertySet><simpleValue>P</simpleValue></propertySet><baseName>"
          + "<simpleValue>B</simpleValue></baseName></property>|false",
      "IFC4|<partOf><entity><name><simpleValue>IFCELEMENT</simpleValue></name></entity></partOf>|false",
      "IFC4|<partOf><entity><name><simpleValue>IFCSPACE</simpleValue></name></entity></partOf>|true"})
  void meaningIsHeldToTheSchemas(String version, String requirement, boolean valid) throws IOException {
    IdsDocument document = read(ids(version, "maxOccurs='unbounded'", entity("IFCWALL"), requirement));
    assertThat(document.valid()).as("%s", document.problems()).isEqualTo(valid);
  }

  /** The type of the value is one of two, and a list of it is none. */
  @ParameterizedTest
  @CsvSource({"IFCSURFACESTYLERENDERING, DiffuseColour, 0.5, false", "IFCCARTESIANPOINT, Coordinates, 1, false",
      "IFCSURFACESTYLEREFRACTION, RefractionIndex, 1.5, true", "IFCWALL, PredefinedType, SHEAR, true", "IFCTASK, IsMilestone, true, true"})
  void valuesOfAttributesHaveOneType(String entity, String name, String value, boolean valid) throws IOException {
    IdsDocument document = read(ids("IFC4", "maxOccurs='unbounded'", entity(entity), attribute(name, value)));
    assertThat(document.valid()).as("%s", document.problems()).isEqualTo(valid);
  }

  /** DataTypes.md: the base of a restriction is that of the type; restrictions.md: which restriction goes with which base. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "IFCLABEL|<xs:restriction base='xs:string'><xs:pattern value='A.*'/></xs:restriction>|true",
      "IFCLABEL|<xs:restriction base='xs:string'><xs:pattern value='A**'/></xs:restriction>|false",
      "IFCLABEL|<xs:restriction base='xs:double'><xs:minInclusive value='1'/></xs:restriction>|false",
      "IFCREAL|<xs:restriction base='xs:double'><xs:minInclusive value='1'/><xs:maxExclusive value='2.5e3'/></xs:restriction>|true",
      "IFCREAL|<xs:restriction base='xs:double'><xs:minInclusive value='one'/></xs:restriction>|false",
      "IFCREAL|<xs:restriction base='xs:double'><xs:pattern value='1.*'/></xs:restriction>|false",
      "IFCREAL|<xs:restriction base='xs:double'><xs:enumeration value='1'/><xs:enumeration value='2'/></xs:restriction>|true",
      "IFCREAL|<xs:restriction base='xs:double'><xs:totalDigits value='3'/></xs:restriction>|false",
      "IFCREAL|<xs:restriction base='xs:double'/>|false",
      "IFCCOUNTMEASURE|<xs:restriction base='xs:integer'><xs:maxInclusive value='4'/></xs:restriction>|true",
      "IFCCOUNTMEASURE|<xs:restriction base='xs:double'><xs:maxInclusive value='4'/></xs:restriction>|false",
      "IFCDATE|<xs:restriction base='xs:date'><xs:minInclusive value='2026-01-01'/></xs:restriction>|true",
      "IFCDATE|<xs:restriction base='xs:date'><xs:minInclusive value='soon'/></xs:restriction>|false"})
  void restrictionsGoWithTypes(String type, String restriction, boolean valid) throws IOException {
    IdsDocument document = read(ids("IFC4", "maxOccurs='unbounded'", entity("IFCWALL"), "<property dataType='" + type
        + "'><propertySet><simpleValue>P</simpleValue></propertySet><baseName><simpleValue>B</simpleValue></baseName><value>" + restriction
        + "</value></property>"));
    assertThat(document.valid()).as("%s", document.problems()).isEqualTo(valid);
  }

  /** IDS 1.0, ifc2x3-occurrence-type-mapping-table.md. */
  @Test
  void namesByTypeAreThoseOfTheStandardsTable() throws IOException {
    Set<String> table = new TreeSet<>();
    Files.readAllLines(SharedStandards.file("docs/ifc2x3-occurrence-type-mapping-table.md")).stream()
        .filter(l -> l.startsWith("Ifc") && l.contains("|")).forEach(l -> table.add(l.split("\\|")[0].strip().toUpperCase()));
    assertThat(table).hasSizeGreaterThan(50);
    assertThat(EntityNames.byType().keySet()).isEqualTo(table);
  }

  /** IDS 1.0, DataTypes.md: which types there are in which schema, and the base of their restrictions. */
  @Test
  void typesOfValuesAreThoseOfTheStandardsTable() throws IOException {
    Pattern row = Pattern.compile("\\| (IFC\\w+) +\\| (\\S+) +\\| (\\S+) +\\| (\\S+) +\\| (xs:\\w+)? *\\|");
    Map<String, String> wrong = new TreeMap<>();
    int rows = 0;
    for (String line : Files.readAllLines(SharedStandards.file("docs/DataTypes.md"))) {
      Matcher m = row.matcher(line);
      if (m.matches()) {
        rows++;
        for (int i = 0; i < 3; i++) {
          IfcRelease release = IfcRelease.values()[i];
          String expected = m.group(2 + i).startsWith("✔") ? "" + m.group(5) : "absent";
          String found = release.tables().type(m.group(1)).filter(t -> !t.isSelect()).map(t -> "" + XsdBase.of(t).map(Object::toString)
              .orElse(null))
              .orElse("absent");
          if (!expected.equals(found)) {
            wrong.put(m.group(1) + " " + release, expected + ", not " + found);
          }
        }
      }
    }
    assertThat(rows).isGreaterThan(300);
    // The table has four that the EXPRESS schemas don't know by that name: the first two came after IFC4 ADD2, the last is IfcNullStyle.
    assertThat(wrong.keySet()).containsExactly("IFCALIGNMENTTYPEENUM IFC4", "IFCNULLSTYLEENUM IFC2X3", "IFCNULLSTYLEENUM IFC4",
        "IFCREFERENTTYPEENUM IFC4");
  }
}
