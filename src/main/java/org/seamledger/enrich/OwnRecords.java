package org.seamledger.enrich;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.element.AnswerTag;
import org.seamledger.step.Instance;
import org.seamledger.step.StepFile;
import org.seamledger.step.StepLiterals;
import org.seamledger.step.Value;

/**
 * What an earlier run of this program added to a model: its elements by their tags, its sets and its classification by their names, the
 * relations that hold them, and whatever else only these refer to. They go when answers are written anew, also from a model that another
 * program has written again since.
 */
final class OwnRecords {

  /** Of property sets, quantity sets and the classification. */
  static final String NAME_PREFIX = "SeamLedger_";

  private static final List<String> TAGGED = List.of("IFCELEMENTASSEMBLY", "IFCDISCRETEACCESSORY", "IFCMECHANICALFASTENER");
  private static final Map<String, Integer> NAMED = Map.of("IFCPROPERTYSET", 2, "IFCELEMENTQUANTITY", 2, "IFCCLASSIFICATION", 3);

  /** What is made anew for each part; contexts, units and owners were there before, or may stay. */
  private static final Set<String> RESOURCES = Set.of("IFCCARTESIANPOINT", "IFCDIRECTION", "IFCAXIS2PLACEMENT2D", "IFCAXIS2PLACEMENT3D",
      "IFCLOCALPLACEMENT", "IFCRECTANGLEPROFILEDEF", "IFCEXTRUDEDAREASOLID", "IFCPRESENTATIONSTYLEASSIGNMENT", "IFCSURFACESTYLE",
      "IFCSURFACESTYLERENDERING", "IFCCOLOURRGB", "IFCSHAPEREPRESENTATION", "IFCPRODUCTDEFINITIONSHAPE", "IFCPROPERTYSINGLEVALUE",
      "IFCPROPERTYLISTVALUE", "IFCQUANTITYLENGTH", "IFCQUANTITYAREA", "IFCQUANTITYVOLUME", "IFCQUANTITYCOUNT", "IFCSIUNIT");

  private final StepFile file;
  private final Set<Long> gone = new HashSet<>();
  private final SortedMap<Long, String> replaced = new TreeMap<>();

  private OwnRecords(StepFile file) {
    this.file = file;
  }

  static OwnRecords of(StepFile file) {
    OwnRecords own = new OwnRecords(file);
    own.roots();
    if (!own.gone.isEmpty()) {
      own.relations();
      own.sweep();
    }
    return own;
  }

  /** Whether an instance goes. */
  boolean isGone(long id) {
    return gone.contains(id);
  }

  /** Instances that go, or are replaced by another text (then not empty), by where they stand. */
  SortedMap<StepFile.Span, String> changes() {
    SortedMap<StepFile.Span, String> changes = new TreeMap<>(java.util.Comparator.comparingLong(StepFile.Span::from));
    gone.forEach(id -> file.span(id).ifPresent(span -> changes.put(span, "")));
    replaced.forEach((id, text) -> file.span(id).ifPresent(span -> changes.put(span, text)));
    return changes;
  }

  /** The largest id that stays. */
  long largestId() {
    if (gone.isEmpty()) {
      return file.largestId();
    }
    long largest = 0;
    for (String keyword : file.keywords()) {
      for (long id : file.idsOf(keyword)) {
        largest = gone.contains(id) ? largest : Math.max(largest, id);
      }
    }
    return largest;
  }

  private void roots() {
    TAGGED.forEach(k -> file.forEach(k, i -> addIf(i, AnswerTag.ATTRIBUTE, AnswerTag.PREFIX)));
    NAMED.forEach((k, name) -> file.forEach(k, i -> addIf(i, name, NAME_PREFIX)));
    file.forEachReferences("IFCCLASSIFICATIONREFERENCE", (id, r) -> {
      if (gone.contains(r.first(3))) {
        gone.add(id);
      }
    });
  }

  private void addIf(Instance instance, int attribute, String prefix) {
    if (instance.parameter(attribute) instanceof Value.Text t && t.value().startsWith(prefix)) {
      gone.add(instance.id());
    }
  }

  /** Relations of what goes: those that would lack an end go too, from the others it is taken out. */
  private void relations() {
    Set<Long> elements = Set.copyOf(gone);
    for (String keyword : file.keywords()) {
      if (!keyword.startsWith("IFCREL")) {
        continue;
      }
      Set<Long> touched = new HashSet<>();
      file.forEachReferences(keyword, (id, r) -> {
        for (int i = 0; i < r.size(); i++) {
          if (elements.contains(r.target(i))) {
            touched.add(id);
          }
        }
      });
      touched.forEach(id -> file.find(id).ifPresent(relation -> mend(relation, elements)));
    }
  }

  private void mend(Instance relation, Set<Long> elements) {
    List<Value> parameters = new ArrayList<>();
    for (Value v : relation.parameters()) {
      Value kept = v;
      if (v instanceof Value.Aggregate a) {
        kept = new Value.Aggregate(a.items().stream().filter(i -> !(i instanceof Value.Reference r && elements.contains(r.id()))).toList());
      }
      boolean isEmptied = kept instanceof Value.Aggregate k && k.items().isEmpty() && !k.equals(v);
      if (isEmptied || v instanceof Value.Reference r && elements.contains(r.id())) {
        gone.add(relation.id());
        return;
      }
      parameters.add(kept);
    }
    replaced.put(relation.id(), StepLiterals.of(new Instance(relation.id(), relation.keyword(), parameters)));
  }

  /** Adds what only those that go refer to, such as their bodies and places. */
  private void sweep() {
    Map<Long, long[]> targets = new HashMap<>();
    Set<Long> reached = reach(gone, targets);
    file.forEachReferences("IFCSTYLEDITEM", (id, r) -> {
      if (reached.contains(r.first(0))) {
        gone.add(id);
      }
    });
    reached.addAll(reach(gone, targets));
    Set<Long> held = new HashSet<>();
    for (String keyword : file.keywords()) {
      file.forEachReferences(keyword, (id, r) -> {
        boolean stays = !gone.contains(id) && (!reached.contains(id) || keyword.startsWith("IFCREL"));
        for (int i = 0; stays && i < r.size(); i++) {
          if (reached.contains(r.target(i))) {
            held.add(r.target(i));
          }
        }
      });
    }
    reached.stream().filter(id -> !RESOURCES.contains(file.keywordOf(id))).forEach(held::add);
    held.removeAll(gone);
    Set<Long> kept = reach(held, targets);
    kept.addAll(held);
    reached.stream().filter(id -> !kept.contains(id)).forEach(gone::add);
  }

  /** Everything that these refer to, directly or through resources. */
  private Set<Long> reach(Set<Long> from, Map<Long, long[]> targets) {
    Set<Long> seen = new HashSet<>();
    Deque<Long> open = new ArrayDeque<>(from);
    while (!open.isEmpty()) {
      long id = open.pop();
      if (!from.contains(id) && !RESOURCES.contains(file.keywordOf(id))) {
        continue;
      }
      for (long target : targets.computeIfAbsent(id, this::targets)) {
        if (seen.add(target) && !from.contains(target)) {
          open.push(target);
        }
      }
    }
    return seen;
  }

  private long[] targets(long id) {
    List<Long> found = new ArrayList<>();
    file.find(id).ifPresent(i -> i.parameters().forEach(v -> collect(v, found)));
    return found.stream().mapToLong(Long::longValue).toArray();
  }

  private static void collect(Value value, List<Long> found) {
    if (value instanceof Value.Reference r) {
      found.add(r.id());
    } else if (value instanceof Value.Aggregate a) {
      a.items().forEach(i -> collect(i, found));
    } else if (value instanceof Value.Typed t) {
      collect(t.value(), found);
    }
  }
}
