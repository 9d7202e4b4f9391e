package org.seamledger.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class EstimatesTest {

  private static Map<String, Estimate> of(String system) {
    Counted c = Counted.worked("ridge-40ft", RoofSystem.parse(system, "s"));
    return Estimates.of(c.takeoff().faces(), c.quantities()).stream().collect(Collectors.toMap(Estimate::name, e -> e));
  }

  @Test
  void figuresThatAreKnown() {
    Map<String, Estimate> e = of("{\"site\": {\"wind\": \"100 mph\", \"rainfall\": \"4.7 in/h\", \"elevation\": \"1500 m\"}}");
    // 100 mph is 4.921 in of water (derived from ASCE 7's constant): 4 15/16 to the sixteenth.
    assertThat(e.get("head of water that the wind holds up").value()).isEqualTo("4 15/16 in");
    // US Standard Atmosphere 1976: 5.25 °C and 84556 Pa at 1500 m.
    assertThat(e.get("mean air at the site's elevation").value()).isIn("5.3 °C, 84.6 kPa", "5.2 °C, 84.6 kPa");
    // 70 °F and 50 %: 50.5 °F (Magnus).
    assertThat(e.get("dew point when sealing").value()).endsWith("(50.5 °F)");
    // 3/16 × 7/8 in fills a lip of 1 in at 12.5 % (volume balance).
    assertThat(e.get("compression at which the tape fills the fastening flange").value()).isEqualTo("12.5 %");
    assertThat(e.get("yield stress that a vertical bead needs to stay").value()).isEqualTo("81 Pa");
    // 4.7 in/h on 12 ft in plan by 16 in: 16 ft² × 4.7 × .010389 gpm = 0.781 gpm.
    assertThat(e.get("flow at the end of the longest pan of the flattest face").value()).endsWith("(0.78 gpm)");
    // 2 mm in the first day; 1/4 in = 6.35 mm: 10.08 d at 23 °C and 50 %, × 1.11 at 70 °F (vapour 18.5 against 20.5 g/m³).
    assertThat(e.get("cure of a concealed bead of 1/4 in").value()).isEqualTo("11.2 days");
    assertThat(e.get("stress in a panel pinned at both ends").value()).isEqualTo("267 MPa");
    assertThat(e.get("stainless-steel fasteners in aluminium-zinc-steel").value()).isEqualTo("small-noble, 0.60 V apart");
  }

  @Test
  void whatDoesNotApplyIsLeftOut() {
    assertThat(of("{\"sealant\": {\"cure\": \"none\"}, \"site\": {\"humidity\": \"0 %\", \"rainfall\": \"0 in/h\"}}").keySet())
        .noneMatch(n -> n.startsWith("cure of")).noneMatch(n -> n.startsWith("dew point")).noneMatch(n -> n.contains("longest pan of"));
  }
}
