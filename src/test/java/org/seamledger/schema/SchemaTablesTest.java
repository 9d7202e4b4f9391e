package org.seamledger.schema;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The tables are what the EXPRESS schemas say. */
class SchemaTablesTest {

  /** Lines that begin with ENTITY in IFC2X3_TC1.exp, IFC4_ADD2.exp and IFC4X3_ADD2.exp. */
  private static final Map<IfcRelease, Integer> ENTITIES = Map.of(IfcRelease.IFC2X3, 653, IfcRelease.IFC4, 776, IfcRelease.IFC4X3_ADD2,
      876);

  @ParameterizedTest
  @EnumSource
  void areDerivedFromTheExpressSchemas(IfcRelease release) throws IOException {
    try (InputStream in = IfcRelease.class.getResourceAsStream(release.name().toLowerCase(Locale.ROOT) + ".txt")) {
      assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8)).isEqualTo(ExpressTables.of(release));
    }
    assertThat(release.tables().entities()).hasSize(ENTITIES.get(release));
  }

  @Test
  void attributesStandInTheOrderOfAFile() {
    EntityDefinition wall = IfcRelease.IFC4.tables().entity("IFCWALL").orElseThrow();
    assertThat(wall.attributes()).extracting(AttributeDefinition::name).containsExactly("GlobalId", "OwnerHistory", "Name", "Description",
        "ObjectType", "ObjectPlacement", "Representation", "Tag", "PredefinedType");
    assertThat(IfcRelease.IFC2X3.tables().entity("IFCWALL").orElseThrow().indexOf("PredefinedType")).isEqualTo(-1);
    assertThat(wall.isA("IFCPRODUCT")).isTrue();
    assertThat(wall.isA("IFCSLAB")).isFalse();
  }

  @Test
  void derivedAndAggregateAttributesSaySo() {
    EntityDefinition unit = IfcRelease.IFC4.tables().entity("IFCSIUNIT").orElseThrow();
    assertThat(unit.attributes().get(0)).isEqualTo(new AttributeDefinition("Dimensions", "IFCDIMENSIONALEXPONENTS", false, true));
    EntityDefinition point = IfcRelease.IFC2X3.tables().entity("IFCCARTESIANPOINT").orElseThrow();
    assertThat(point.attributes()).containsExactly(new AttributeDefinition("Coordinates", "IFCLENGTHMEASURE", true, false));
  }

  @Test
  void typesLeadToWhatTheirValuesAre() {
    SchemaTables tables = IfcRelease.IFC4X3_ADD2.tables();
    assertThat(tables.type("IFCPOSITIVELENGTHMEASURE").orElseThrow().base()).isEqualTo(BaseType.REAL);
    assertThat(tables.type("IFCCOLOURORFACTOR").orElseThrow()).isEqualTo(new TypeDefinition("IFCCOLOURORFACTOR", BaseType.OTHER, false,
        java.util.List.of("IFCCOLOURRGB", "IFCNORMALISEDRATIOMEASURE")));
    assertThat(tables.type("IFCCOMPOUNDPLANEANGLEMEASURE").orElseThrow().aggregate()).isTrue();
    assertThat(tables.type("IFCWALLTYPEENUM").orElseThrow().items()).contains("SOLIDWALL", "USERDEFINED");
  }
}
