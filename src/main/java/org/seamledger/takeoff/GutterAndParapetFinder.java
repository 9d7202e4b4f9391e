package org.seamledger.takeoff;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seamledger.element.Building;
import org.seamledger.element.NamedElement;
import org.seamledger.junction.Junction;
import org.seamledger.junction.Modelled;
import org.seamledger.quantity.GuttersAndParapets;

/** Finds gutters along the roof's lines, and walls that their names call parapets. */
final class GutterAndParapetFinder {

  /** Share of a line along which a gutter has to hang to be its own. */
  private static final double ALONG = 0.5;
  /** Parapet in English, French, Spanish, Portuguese, Italian, German, Polish, Czech, Dutch, Swedish, Finnish. */
  private static final Pattern PARAPET = Pattern.compile(
      "parapet|acrot[eè]re|antepecho|platibanda|peitoril|attika|attyka|atika|br[uü]stung|dakopstand|borstwering|bröstning|kaide",
      Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

  private GutterAndParapetFinder() {
  }

  static GuttersAndParapets of(Building building, List<Junction> junctions, SortedMap<String, Modelled> modelled) {
    Set<String> guttered = junctions.stream()
        .filter(j -> modelled.getOrDefault(j.id(), Modelled.NOTHING).gutterM() >= ALONG * j.lengthM() && j.lengthM() > 0)
        .map(Junction::id).collect(Collectors.toSet());
    Set<String> parapets = building.named().stream().filter(e -> e.ifcClass().startsWith("IfcWall") && PARAPET.matcher(e.name()).find())
        .map(NamedElement::globalId).collect(Collectors.toSet());
    return new GuttersAndParapets(guttered, parapets);
  }
}
