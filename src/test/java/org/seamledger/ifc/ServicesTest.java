package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamledger.element.Building;
import org.seamledger.element.Category;

/** Pipes, ducts and what belongs to them, of every schema; classes as the standards' diagrams derive them from distribution elements. */
class ServicesTest {

  private static Drawing withRoof(String schema) {
    Drawing d = Drawing.ifc(schema);
    d.roof(d.extruded(d.rectangle(4, 4), 0.2));
    return d;
  }

  private static String thing(Drawing d, String keyword, String rest) {
    return d.product(keyword, d.placement("$", d.at(1, 1, -1)), d.shape("SweptSolid", d.extruded(d.rectangle(0.1, 0.1), 3)), rest);
  }

  @ParameterizedTest
  @CsvSource({"IFC2X3, IFCFLOWSEGMENT", "IFC2X3, IFCFLOWFITTING", "IFC2X3, IFCFLOWTERMINAL", "IFC2X3, IFCDISTRIBUTIONFLOWELEMENT",
      "IFC4, IFCPIPESEGMENT", "IFC4, IFCDUCTSEGMENT", "IFC4, IFCDUCTFITTING", "IFC4, IFCCABLECARRIERSEGMENT", "IFC4, IFCSTACKTERMINAL",
      "IFC4, IFCAIRTERMINAL", "IFC4, IFCDISTRIBUTIONELEMENT", "IFC4X3_ADD2, IFCPIPEFITTING", "IFC4X3_ADD2, IFCCABLECARRIERFITTING",
      "IFC4X3_ADD2, IFCFLOWSEGMENT", "IFC4X3_ADD2, IFCDISTRIBUTIONBOARD"})
  void partsOfTheServices(String schema, String keyword) {
    Drawing d = withRoof(schema);
    thing(d, keyword, ",$");
    assertThat(d.read().neighbours()).singleElement().satisfies(e -> assertThat(e.category()).isEqualTo(Category.SERVICE));
  }

  @ParameterizedTest
  @CsvSource({"IFC4, IFCCHIMNEY", "IFC4, IFCCOLUMN", "IFC2X3, IFCBUILDINGELEMENTPROXY"})
  void otherThingsAreNone(String schema, String keyword) {
    Drawing d = withRoof(schema);
    thing(d, keyword, ",$");
    assertThat(d.read().neighbours()).singleElement().satisfies(e -> assertThat(e.category()).isEqualTo(Category.PENETRATION));
  }

  /** Insulation goes through the roof with the pipe that it covers; that of the roof itself does not stand in it. */
  @Test
  void insulationOfAPipeCounts() {
    Drawing d = withRoof("IFC4");
    String pipe = thing(d, "IFCPIPESEGMENT", ",$,$");
    String round = thing(d, "IFCCOVERING", ",$,.INSULATION.");
    thing(d, "IFCCOVERING", ",$,.INSULATION.");
    d.add("IFCRELCOVERSBLDGELEMENTS('%s',$,$,$,%s,%s)", d.id(), pipe, Drawing.list(round));
    Building b = d.read();
    assertThat(b.neighbours()).extracting(e -> e.ifcClass()).containsExactlyInAnyOrder("IfcPipeSegment", "IfcCovering");
  }
}
