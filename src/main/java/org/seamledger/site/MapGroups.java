package org.seamledger.site;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.seamledger.finding.Code;
import org.seamledger.finding.Finding;

/**
 * Which of several models share a map, and what that leaves to say.
 *
 * @param names of the models, in their order
 * @param maps what each states
 * @param anchors of each, as {@link #anchors} gives them; none for a model alone
 * @param asked positions of those that somebody placed, whose own words don't count
 */
public record MapGroups(List<String> names, List<Optional<MapConversion>> maps, List<Integer> anchors, Set<Integer> asked) {

  /**
   * For each model the first one in the same map, by whose own coordinates both lie: itself where it states no map, or another one than
   * those before. A map without a name is the same as any.
   */
  public static List<Integer> anchors(List<Optional<MapConversion>> maps) {
    int[] anchors = IntStream.range(0, maps.size()).toArray();
    for (int i = 0; i < anchors.length; i++) {
      for (int k = 0; k < i && anchors[i] == i; k++) {
        anchors[i] = anchors[k] == k && isShared(maps, anchors, k, i) ? k : i;
      }
    }
    return IntStream.of(anchors).boxed().toList();
  }

  /** Whether model i lies in the map of the group that k begins: its name is the first that one of them gives. */
  private static boolean isShared(List<Optional<MapConversion>> maps, int[] anchors, int k, int i) {
    return maps.get(i).isPresent() && maps.get(k).isPresent() && IntStream.range(k, i).filter(m -> anchors[m] == k)
        .allMatch(m -> maps.get(m).get().sameMap(maps.get(i).get()));
  }

  /** What people should know where not all models meet through one map; nothing where all do, or none states one. */
  public List<Finding> findings() {
    List<Finding> findings = new ArrayList<>();
    List<Integer> without = IntStream.range(0, anchors.size())
        .filter(i -> maps.get(i).isEmpty() && !asked.contains(i)).boxed().toList();
    List<Integer> firsts = IntStream.range(0, anchors.size())
        .filter(i -> maps.get(i).isPresent() && !members(i).isEmpty()).boxed().toList();
    if (!without.isEmpty() && !firsts.isEmpty()) {
      findings.add(Finding.of(Code.MAP_NOT_SHARED, "Not every model says where it lies in a map: "
          + String.join(", ", without.stream().map(names::get).toList()) + (without.size() == 1 ? " does not." : " do not.")
          + ownWords(without.stream().filter(i -> i > 0).map(names::get).toList())
          + String.join("", firsts.stream().map(this::meeting).toList())));
    }
    if (firsts.size() > 1) {
      List<String> each = firsts.stream().map(f -> String.join(", ", members(f).stream().map(names::get).toList()) + " in "
          + crs(f)).toList();
      findings.add(Finding.of(Code.MAPS_DIFFER, "The models lie in different maps: " + String.join("; ", each)
          + ". No map is converted into another: the first model in each was taken where its own coordinates put it in the world of "
          + names.get(0)
          + (firsts.stream().anyMatch(f -> members(f).size() > 1) ? ", and the others of its map with it" : "") + "."));
    }
    return findings;
  }

  private String ownWords(List<String> others) {
    return others.isEmpty() ? "" : " " + String.join(", ", others) + (others.size() == 1 ? " was taken where its own coordinates put it"
        : " were taken where their own coordinates put them") + " in the world of " + names.get(0) + ".";
  }

  private String meeting(int first) {
    List<Integer> members = members(first);
    if (members.size() == 1) {
      return "";
    }
    String all = String.join(", ", members.stream().skip(first == 0 ? 1 : 0).map(names::get).toList());
    return first == 0 ? " Through the map " + all + " came to it."
        : " " + all + " met through their map; they lie as " + names.get(first) + " does by its own coordinates.";
  }

  /** Models that lie by the map of a group and the coordinates of its first. */
  private List<Integer> members(int first) {
    return IntStream.range(first, anchors.size()).filter(i -> anchors.get(i) == first && !asked.contains(i)).boxed().toList();
  }

  private String crs(int first) {
    return members(first).stream().map(i -> maps.get(i).get().crs()).filter(c -> !c.isEmpty()).findFirst().orElse("a map without a name");
  }
}
