package org.seamledger.quantity;

import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.Kind;
import org.seamledger.detail.KindedJunction;

/** What the rules need to know of a junction, besides its line, to choose its detail: see {@code org.seamledger.detail}. */
public final class DetailFacts {

  private DetailFacts() {
  }

  /** Facts by which the detail of a junction is chosen, by name; lengths in metres, angles in degrees. */
  public static SortedMap<String, Object> of(KindedJunction junction, RoofLayout layout, RoofSystem system,
      GuttersAndParapets surroundings) {
    SortedMap<String, Object> facts = of(system);
    facts.put("onSeam",
        junction.type().family() == Kind.Family.ROUND && !junction.junction().faces().isEmpty() && layout.round(junction).onSeam());
    facts.put("gutter", system.eaves().gutters() || surroundings.guttered().contains(junction.junction().id()));
    facts.put("parapet", parapet(junction, system, surroundings));
    return facts;
  }

  private static boolean parapet(KindedJunction junction, RoofSystem system, GuttersAndParapets surroundings) {
    double height = junction.junction().facts().number("upstandM");
    return junction.type().family() == Kind.Family.WALL
        && (height < system.walls().parapetBelow().value()
            || junction.junction().elements().stream().anyMatch(surroundings.parapets()::contains));
  }

  /** What the system alone says. */
  static SortedMap<String, Object> of(RoofSystem system) {
    return new TreeMap<>(Map.of(
        "ridgeVented", system.ridge().vented(),
        "counterflashing", word(system.walls().counterflashing()),
        "fixedAt", word(system.panel().fixedAt()),
        "sealSeamsBelowDegrees", system.limits().sealSeamsBelow().degrees(),
        "cricketAboveM", system.curbs().cricketAbove().value(),
        "backUpPlates", system.fasteners().backUpPlates()));
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
