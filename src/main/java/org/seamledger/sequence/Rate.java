package org.seamledger.sequence;

import java.util.function.Function;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.system.CrewSettings;

/** How long work takes: a rate of the roof system. */
public enum Rate {
  UNDERLAYMENT("underlayment", CrewSettings::underlayment), PANELS("panels", CrewSettings::panels), SEAMS("seams", CrewSettings::seams),
  PAN("pan", CrewSettings::pan), EDGE_METAL("edgeMetal", CrewSettings::edgeMetal), PANEL_ENDS("panelEnds", CrewSettings::panelEnds),
  CLOSURES("closures", CrewSettings::closures), COVER("cover", CrewSettings::cover), BEAD("bead", CrewSettings::bead),
  CORNER("corner", CrewSettings::corner);

  private static final double SECONDS_PER_HOUR = 3600;

  private final String name;
  private final Function<CrewSettings, Measure> value;

  Rate(String name, Function<CrewSettings, Measure> value) {
    this.name = name;
    this.value = value;
  }

  /** The field of the roof system. */
  public String field() {
    return "crew." + name;
  }

  /** Hours that the whole crew works at an amount: metres, square metres or pieces. */
  double hours(double amount, CrewSettings crew) {
    double one = value.apply(crew).value();
    double person = this == CORNER ? amount * one : amount / one * crew.day().value();
    return person / crew.people() / SECONDS_PER_HOUR;
  }
}
