package org.seamledger.takeoff;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.seamledger.element.Building;
import org.seamledger.element.Element;
import org.seamledger.quantity.physics.Metal;
import org.seamledger.roof.RoofFace;

/** Which metal a face is of, by the names of its elements' materials. */
final class MetalNames {

  /** The more particular first: aluminium-zinc is neither aluminium nor zinc. English, German, French, Spanish, Italian, Dutch. */
  private static final List<Map.Entry<Pattern, Metal>> WORDS = List.of(
      word("alu\\w*[ /-]*zin[ck]\\w*", Metal.ALUMINIUM_ZINC_STEEL),
      word("galvani[sz]\\w*|verzinkt\\w*|galvanis\\w*|zincad\\w*|zincat\\w*", Metal.GALVANIZED_STEEL),
      word("copper|kupfer\\w*|cuivre|cobre|rame|koper\\w*", Metal.COPPER),
      word("stainless\\w*|edelstahl\\w*|inox\\w*", Metal.STAINLESS_STEEL),
      word("zinc|zink\\w*|zinco|titanzink\\w*", Metal.ZINC),
      word("alumini?um\\w*|aluminio|alluminio", Metal.ALUMINIUM),
      word("lead|blei\\w*|plomb|plomo|piombo", Metal.LEAD));

  private MetalNames() {
  }

  private static Map.Entry<Pattern, Metal> word(String words, Metal metal) {
    return Map.entry(Pattern.compile("(?<!\\p{L})(?:" + words + ")(?!\\p{L})",
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS), metal);
  }

  /** Metals by the faces' ids; a face without one named, or whose elements differ, has none. */
  static SortedMap<String, Metal> of(Building building, List<RoofFace> faces) {
    Map<String, Element> byId = building.roofs().stream().collect(Collectors.toMap(Element::globalId, Function.identity(), (a, b) -> a));
    SortedMap<String, Metal> metals = new TreeMap<>();
    for (RoofFace face : faces) {
      List<Metal> found = face.elements().stream().map(byId::get).filter(e -> e != null).map(MetalNames::of).distinct().toList();
      if (found.size() == 1 && found.get(0) != null) {
        metals.put(face.id(), found.get(0));
      }
    }
    return metals;
  }

  private static Metal of(Element roof) {
    return named(roof.properties().getOrDefault(Element.MATERIALS, roof.properties().getOrDefault("Whole." + Element.MATERIALS, "")));
  }

  /** Null where no name is a metal's. */
  static Metal named(String names) {
    return WORDS.stream().filter(w -> w.getKey().matcher(names).find()).map(Map.Entry::getValue).findFirst().orElse(null);
  }
}
