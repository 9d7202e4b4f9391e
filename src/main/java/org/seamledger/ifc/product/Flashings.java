package org.seamledger.ifc.product;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.seamledger.element.AnswerTag;
import org.seamledger.element.Category;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;

/**
 * Which elements of a model are flashings or gutters: coverings typed so, pipe segments typed as gutters, and small elements whose name,
 * type's name or object type says so. They cover a roof's junctions, and are neither the roof nor anything that stands in it.
 */
final class Flashings {

  /** So many different names are remembered; a model mostly has few, with numbers behind them. */
  private static final int REMEMBERED = 4096;
  private static final int LONGEST_REMEMBERED = 200;

  private final Model model;
  private final Map<Long, Category> byType;
  /** What the words of names say. */
  private final ConcurrentMap<String, Optional<Category>> said;

  private Flashings(Model model, Map<Long, Category> byType, ConcurrentMap<String, Optional<Category>> said) {
    this.model = model;
    this.byType = byType;
    this.said = said;
  }

  /** The same of a model that was forked. */
  Flashings on(Model fork) {
    return new Flashings(fork, byType, said);
  }

  static Flashings of(Model model) {
    Flashings flashings = new Flashings(model, new HashMap<>(), new ConcurrentHashMap<>());
    Map<Long, Optional<Category>> types = new HashMap<>();
    model.eachReferences("IFCRELDEFINESBYTYPE", (id, r) -> types.computeIfAbsent(r.first(5), flashings::ofType).ifPresent(category -> {
      for (int i = 0; i < r.size(); i++) {
        if (r.parameter(i) == 4) {
          flashings.byType.put(r.target(i), category);
        }
      }
    }));
    return flashings;
  }

  private Optional<Category> ofType(long type) {
    String keyword = model.keywordOf(type);
    if (!keyword.endsWith("TYPE")) {
      return Optional.empty();
    }
    try {
      Entity e = model.get(type);
      Optional<Category> stated =
          keyword.equals("IFCCOVERINGTYPE") || keyword.equals("IFCPIPESEGMENTTYPE") ? stated(e.word(9)) : Optional.empty();
      return stated.or(() -> saidIn(e.text(2)));
    } catch (EntityProblem p) {
      // A broken type states nothing; the element's own words may.
      return Optional.empty();
    }
  }

  private Optional<Category> saidIn(String name) {
    String words = FlashingWords.words(name);
    Optional<Category> known = said.get(words);
    if (known != null) {
      return known;
    }
    Optional<Category> found = FlashingWords.in(words);
    if (said.size() < REMEMBERED && words.length() < LONGEST_REMEMBERED) {
      said.put(words, found);
    }
    return found;
  }

  /** What a predefined type says. The published schemas have COPING and GUTTER; authoring tools write the others as well. */
  private static Optional<Category> stated(String predefinedType) {
    return switch (predefinedType) {
      case "FLASHING", "COPING", "TRIM" -> Optional.of(Category.FLASHING);
      case "GUTTER" -> Optional.of(Category.GUTTER);
      default -> Optional.empty();
    };
  }

  /** Whether an element is one, and which; what this program added to a model is what is to be built, not what is modelled. */
  Optional<Category> category(ElementClass c, long id) {
    boolean pipe = c.keyword().equals("IFCPIPESEGMENT") || c.keyword().equals("IFCFLOWSEGMENT");
    if (!pipe && !maySaySo(c)) {
      return Optional.empty();
    }
    Entity e = model.get(id);
    if (e.text(AnswerTag.ATTRIBUTE).startsWith(AnswerTag.PREFIX)) {
      return Optional.empty();
    }
    Optional<Category> own = c.role() == ElementClass.Role.COVERING || pipe ? stated(Roofs.predefinedType(model, id)) : Optional.empty();
    Optional<Category> found = own.or(() -> Optional.ofNullable(byType.get(id))).or(() -> saidIn(e.text(2)))
        .or(() -> saidIn(e.text(4)));
    // A pipe through a flashing is named after it.
    return pipe ? found.filter(f -> f == Category.GUTTER) : found;
  }

  private static boolean maySaySo(ElementClass c) {
    return switch (c.role()) {
      case COVERING, PROXY, PLATE, PART, ACCESSORY -> true;
      default -> c.keyword().startsWith("IFCMEMBER");
    };
  }
}
