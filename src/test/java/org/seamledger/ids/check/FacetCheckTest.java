package org.seamledger.ids.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.ids.IdsDocument;
import org.seamledger.ids.IdsReader;
import org.seamledger.progress.Headway;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelSource;

/** What elements say to facets where the body's cases leave off: units, several values, types of IFC2X3, several models. */
class FacetCheckTest {

  @TempDir
  private Path folder;
  private int files;

  private ModelSource model(String schema, String... instances) throws IOException {
    Path file = folder.resolve("m" + files++ + ".ifc");
    Files.writeString(file, "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\nFILE_NAME('','',(''),(''),'','','');\nFILE_SCHEMA(('"
        + schema
        + "'));\nENDSEC;\nDATA;\n" + String.join("\n", instances) + "\nENDSEC;\nEND-ISO-10303-21;\n");
    return new ModelFile(file);
  }

  private static SpecificationResult check(String version, String occurs, String applicability, String requirements, ModelSource... models)
      throws IOException {
    String text = "<ids xmlns='http://standards.buildingsmart.org/IDS' xmlns:xs='http://www.w3.org/2001/XMLSchema'><info>"
        + "<title>t</title></info>"
        + "<specifications><specification name='s' ifcVersion='" + version + "'><applicability " + occurs + ">" + applicability
        + "</applicability>" + (requirements.isEmpty() ? "" : "<requirements>" + requirements + "</requirements>")
        + "</specification></specifications></ids>";
    IdsDocument document = IdsReader.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "t.ids");
    assertThat(document.problems()).isEmpty();
    return IdsCheck.run(List.of(models), List.of(document), Headway.UNHEARD).get(0).specifications().get(0);
  }

  private static String entity(String name) {
    return "<entity><name><simpleValue>" + name + "</simpleValue></name></entity>";
  }

  private static String property(String attributes, String type, String value) {
    return "<property " + attributes + (type.isEmpty() ? "" : " dataType='" + type + "'")
        + "><propertySet><simpleValue>P</simpleValue></propertySet>"
        + "<baseName><simpleValue>B</simpleValue></baseName>" + (value.isEmpty() ? "" : "<value>" + (value.startsWith("<") ? value
            : "<simpleValue>" + value + "</simpleValue>") + "</value>")
        + "</property>";
  }

  private static final String MANY = "maxOccurs='unbounded'";
  private static final String[] BASE = {
      "#1=IFCWALL('0000000000000000000001',$,'W',$,$,$,$,$,$);",
      "#2=IFCRELDEFINESBYPROPERTIES('0000000000000000000002',$,$,$,(#1),#3);",
      "#3=IFCPROPERTYSET('0000000000000000000003',$,'P',$,(#4));",
      "#10=IFCPROJECT('0000000000000000000010',$,$,$,$,$,$,$,#11);",
      "#11=IFCUNITASSIGNMENT((#12,#13,#14,#15,#16,#17,#20));",
      "#12=IFCSIUNIT(*,.LENGTHUNIT.,.MILLI.,.METRE.);",
      "#13=IFCSIUNIT(*,.AREAUNIT.,.CENTI.,.SQUARE_METRE.);",
      "#14=IFCSIUNIT(*,.MASSUNIT.,.KILO.,.GRAM.);",
      "#15=IFCSIUNIT(*,.THERMODYNAMICTEMPERATUREUNIT.,$,.DEGREE_CELSIUS.);",
      "#16=IFCCONVERSIONBASEDUNIT(*,.PLANEANGLEUNIT.,'degree',#18);",
      "#17=IFCDERIVEDUNIT((#21,#22),.LINEARVELOCITYUNIT.,$);",
      "#18=IFCMEASUREWITHUNIT(IFCPLANEANGLEMEASURE(0.0174532925199433),#19);",
      "#19=IFCSIUNIT(*,.PLANEANGLEUNIT.,$,.RADIAN.);",
      "#20=IFCCONVERSIONBASEDUNIT(*,.VOLUMEUNIT.,'cubic foot',#25);",
      "#21=IFCDERIVEDUNITELEMENT(#12,1);",
      "#22=IFCDERIVEDUNITELEMENT(#23,-1);",
      "#23=IFCCONVERSIONBASEDUNIT(*,.TIMEUNIT.,'minute',#24);",
      "#24=IFCMEASUREWITHUNIT(IFCTIMEMEASURE(60.),#26);",
      "#25=IFCMEASUREWITHUNIT(IFCVOLUMEMEASURE(0.028316846592),#27);",
      "#26=IFCSIUNIT(*,.TIMEUNIT.,$,.SECOND.);",
      "#27=IFCSIUNIT(*,.VOLUMEUNIT.,$,.CUBIC_METRE.);",
      "#28=IFCSIUNIT(*,.LENGTHUNIT.,.CENTI.,.METRE.);"};

  private ModelSource with(String property) throws IOException {
    String[] all = java.util.Arrays.copyOf(BASE, BASE.length + 1);
    all[BASE.length] = "#4=" + property;
    return model("IFC4", all);
  }

  /** Factors of the units: BIPM, The International System of Units, 9th edition; foot 0.3048 m and degree π/180, both exact. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "IFCLENGTHMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCLENGTHMEASURE(2500.),$);|2.5",
      "IFCPOSITIVELENGTHMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCPOSITIVELENGTHMEASURE(2500.),$);|2.5",
      "IFCLENGTHMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCLENGTHMEASURE(250.),#28);|2.5",
      "IFCAREAMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCAREAMEASURE(25000.),$);|2.5",
      "IFCMASSMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCMASSMEASURE(2.5),$);|2.5",
      "IFCTHERMODYNAMICTEMPERATUREMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCTHERMODYNAMICTEMPERATUREMEASURE(20.),$);|293.15",
      "IFCPLANEANGLEMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCPLANEANGLEMEASURE(180.),$);|3.14159265358979",
      "IFCLINEARVELOCITYMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCLINEARVELOCITYMEASURE(60000.),$);|1",
      "IFCVOLUMEMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCVOLUMEMEASURE(10.),$);|0.28316846592",
      "IFCREAL|IFCPROPERTYSINGLEVALUE('B',$,IFCREAL(2.5),$);|2.5",
      "IFCRATIOMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCRATIOMEASURE(2.5),$);|2.5",
      "IFCPOWERMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCPOWERMEASURE(2.5),$);|2.5",
      "IFCINTEGER|IFCPROPERTYSINGLEVALUE('B',$,IFCINTEGER(42),$);|42",
      "IFCCOUNTMEASURE|IFCPROPERTYSINGLEVALUE('B',$,IFCCOUNTMEASURE(3.),$);|3"})
  void valuesAreComparedInSi(String type, String property, String si) throws IOException {
    assertThat(check("IFC4", MANY, entity("IFCWALL"), property("", type, si), with(property)).elements()).isEmpty();
    String other = type.contains("COUNT") || type.equals("IFCINTEGER") ? "7" : "2.49";
    assertThat(check("IFC4", MANY, entity("IFCWALL"), property("", type, other), with(property)).elements()).hasSize(1);
  }

  @Test
  void reasonSaysWhatIsThereAndWhatShouldBe() throws IOException {
    SpecificationResult result = check("IFC4", MANY, entity("IFCWALL"), property("", "IFCLENGTHMEASURE",
        "<xs:restriction base='xs:double'><xs:minInclusive value='3'/></xs:restriction>"),
        with("IFCPROPERTYSINGLEVALUE('B',$,IFCLENGTHMEASURE(2500.),$);"));
    assertThat(result.elements()).singleElement().satisfies(e -> {
      assertThat(e.globalId()).isEqualTo("0000000000000000000001");
      assertThat(e.ifcClass()).isEqualTo("IfcWall");
      assertThat(e.name()).isEqualTo("W");
      assertThat(e.reason()).isEqualTo("has the property 'B' in 'P' with 2.5; expected at least 3");
    });
  }

  /** IDS 1.0, specifications.md, "Cardinality of requirements": property, occurrence, whether it passes. */
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
      "IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('x'),$);|required|x|true", "IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('y'),$);|required|x|false",
      "IFCPROPERTYSINGLEVALUE('C',$,IFCLABEL('x'),$);|required|x|false", "IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('x'),$);|optional|x|true",
      "IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('y'),$);|optional|x|false", "IFCPROPERTYSINGLEVALUE('C',$,IFCLABEL('y'),$);|optional|x|true",
      "IFCPROPERTYSINGLEVALUE('B',$,IFCTEXT('x'),$);|optional|x|false", "IFCPROPERTYSINGLEVALUE('B',$,$,$);|optional|x|false",
      "IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('x'),$);|prohibited|x|false",
      "IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('y'),$);|prohibited|x|true",
      "IFCPROPERTYSINGLEVALUE('C',$,IFCLABEL('x'),$);|prohibited|x|true", "IFCPROPERTYSINGLEVALUE('B',$,IFCTEXT('x'),$);|prohibited||false",
      "IFCPROPERTYENUMERATEDVALUE('B',$,(IFCLABEL('y'),IFCLABEL('x')),$);|required|x|true",
      "IFCPROPERTYENUMERATEDVALUE('B',$,(),$);|required|x|false"})
  void occurrencesOfProperties(String property, String occurrence, String value, boolean passes) throws IOException {
    SpecificationResult result = check("IFC4", MANY, entity("IFCWALL"),
        property("cardinality='" + occurrence + "'", "IFCLABEL", value == null ? "" : value), with(property));
    assertThat(result.passes()).as("%s", result.elements()).isEqualTo(passes);
  }

  /** IDS 1.0, specifications.md, "Cardinality of the applicability entity", over several models together. */
  @Test
  void requiredElementsMayBeInAnyOfTheModels() throws IOException {
    ModelSource wall = model("IFC4", "#1=IFCWALL('0000000000000000000001',$,$,$,$,$,$,$,$);");
    ModelSource slab = model("IFC4", "#1=IFCSLAB('0000000000000000000001',$,$,$,$,$,$,$,$);");
    assertThat(check("IFC4", MANY, entity("IFCWALL"), "", slab, wall).passes()).isTrue();
    assertThat(check("IFC4", MANY, entity("IFCWALL"), "", slab).passes()).isFalse();
    assertThat(check("IFC4", "minOccurs='0' " + MANY, entity("IFCWALL"), "", slab)).matches(r -> r.passes() && r.applicable() == 0);
    assertThat(check("IFC4", "minOccurs='0' maxOccurs='0'", entity("IFCWALL"), "", slab, wall).elements()).hasSize(1);
  }

  /** IDS 1.0, entity-facet.md, "Special cases in IFC2X3". */
  @Test
  void occurrenceInIfc2x3IsKnownByItsType() throws IOException {
    ModelSource model = model("IFC2X3", "#1=IFCFLOWTERMINAL('0000000000000000000001',$,$,$,$,$,$,$);",
        "#2=IFCAIRTERMINALTYPE('0000000000000000000002',$,$,$,$,$,$,$,$,.GRILLE.);",
        "#3=IFCRELDEFINESBYTYPE('0000000000000000000003',$,$,$,(#1),#2);", "#4=IFCFLOWTERMINAL('0000000000000000000004',$,$,$,$,$,$,$);");
    assertThat(check("IFC2X3", MANY, entity("IFCAIRTERMINAL"), "", model).applicable()).isEqualTo(1);
    assertThat(check("IFC2X3", MANY, entity("IFCFLOWTERMINAL"), "", model).applicable()).isEqualTo(2);
    assertThat(check("IFC2X3", MANY, "<entity><name><simpleValue>IFCAIRTERMINAL</simpleValue></name><predefinedType><simpleValue>GRILLE"
        + "</simpleValue></predefinedType></entity>", "", model).applicable()).isEqualTo(1);
  }

  /** IDS 1.0, partof-facet.md: without a relation all six count, recursively. A circle in the model is no endless way. */
  @Test
  void wholesAreFoundThroughEveryRelation() throws IOException {
    ModelSource model = model("IFC4", "#1=IFCWINDOW('0000000000000000000001',$,$,$,$,$,$,$,$,$,$,$,$);",
        "#2=IFCOPENINGELEMENT('0000000000000000000002',$,$,$,$,$,$,$,$);", "#3=IFCWALL('0000000000000000000003',$,$,$,$,$,$,$,$);",
        "#4=IFCBUILDINGSTOREY('0000000000000000000004',$,$,$,$,$,$,$,$,$);", "#5=IFCRELFILLSELEMENT('0000000000000000000005',$,$,$,#2,#1);",
        "#6=IFCRELVOIDSELEMENT('0000000000000000000006',$,$,$,#3,#2);",
        "#7=IFCRELCONTAINEDINSPATIALSTRUCTURE('0000000000000000000007',$,$,$,(#3),#4);",
        "#8=IFCRELAGGREGATES('0000000000000000000008',$,$,$,#4,(#4));");
    String storey = "<entity><name><simpleValue>IFCBUILDINGSTOREY</simpleValue></name></entity></partOf>";
    assertThat(check("IFC4", MANY, entity("IFCWINDOW"), "<partOf>" + storey, model).passes()).isTrue();
    assertThat(check("IFC4", MANY, entity("IFCWINDOW"),
        "<partOf relation='IFCRELVOIDSELEMENT IFCRELFILLSELEMENT'><entity><name><simpleValue>IFCWALL"
            + "</simpleValue></name></entity></partOf>",
        model).passes()).isTrue();
    assertThat(check("IFC4", MANY, entity("IFCWINDOW"), "<partOf relation='IFCRELAGGREGATES'>" + storey, model).passes()).isFalse();
  }

  /** Without an entity facet whatever has such an attribute or property counts. */
  @Test
  void applicabilityNeedsNoClass() throws IOException {
    ModelSource model = with("IFCPROPERTYSINGLEVALUE('B',$,IFCLABEL('x'),$);");
    assertThat(check("IFC4", MANY, property("", "IFCLABEL", "x"), "", model).applicable()).isEqualTo(1);
    assertThat(check("IFC4", MANY,
        "<attribute><name><simpleValue>Name</simpleValue></name><value><simpleValue>W</simpleValue></value></attribute>", "",
        model).applicable()).isEqualTo(1);
  }
}
