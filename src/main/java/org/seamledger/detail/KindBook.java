package org.seamledger.detail;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.shacl.Described;
import org.seamledger.shacl.Rules;

/** The kinds that rules have, read once from what stands beside their shapes. */
public final class KindBook {

  private static final Set<String> KIND = Set.of("kind", "meaning", "family", "water", "planLine", "section", "order");
  /** An office's kind that names no place comes after those of the program. */
  private static final int LAST = 1000;

  private final SortedMap<String, Kind> byId = new TreeMap<>();

  private KindBook() {
  }

  /**
   * Reads the kinds. A kind of the program's own whose shape states nothing of it, as in files made before kinds were described, has the
   * program's description.
   *
   * @throws org.seamledger.shacl.BrokenRulesException with file and line where a new kind is not described, or a word is not one of those
   *     that there are, or a kind of the contract seems to be misspelt
   */
  public static KindBook read(Rules rules) {
    KindBook book = new KindBook();
    SortedMap<String, Described> found = rules.described("kind");
    checkNames(found);
    for (Map.Entry<String, Described> e : found.entrySet()) {
      boolean plain = !e.getValue().has("family") && (Kinds.ALL.contains(e.getKey()) || Kinds.JOINTS.contains(e.getKey()));
      book.byId.put(e.getKey(), kind(e.getKey(), plain ? Packaged.DESCRIPTIONS.get(e.getKey()) : e.getValue().only(KIND)));
    }
    return book;
  }

  /** What the program itself says of its kinds: read only where an office's file states nothing. */
  private static final class Packaged {
    private static final SortedMap<String, Described> DESCRIPTIONS = Rules.packaged().described("kind");
  }

  /** A kind may be added, not renamed: a name that is new while a fixed one is missing is a slip of the pen. */
  private static void checkNames(SortedMap<String, Described> found) {
    Set<String> missing = new TreeSet<>(Kinds.ALL);
    missing.removeAll(found.keySet());
    Set<String> added = new TreeSet<>(found.keySet());
    added.removeAll(Kinds.ALL);
    added.removeAll(Kinds.JOINTS);
    for (String id : added) {
      if (!missing.isEmpty()) {
        throw found.get(id).problem("there is no kind \"" + id + "\", and no shape for " + String.join(", ", missing)
            + ": kinds may be added, not renamed");
      }
      if (!id.matches("[a-z][a-z0-9]*(?:-[a-z0-9]+)*+") || id.equals(Kinds.UNCLASSIFIED)) {
        throw found.get(id).problem("\"" + id + "\" is no name for a kind: it needs small letters, digits and single dashes between them");
      }
    }
  }

  private static Kind kind(String id, Described d) {
    Kind.Family family = d.oneOf("family", Arrays.stream(Kind.Family.values()).filter(f -> f != Kind.Family.NONE), Kind.Family::word);
    return new Kind(id, d.label(), d.word("meaning"), family,
        d.has("water") ? d.oneOf("water", Arrays.stream(Kind.Water.values()), Kind.Water::word) : Kind.Water.AWAY,
        d.has("planLine") ? d.oneOf("planLine", Arrays.stream(Kind.Line.values()), Kind.Line::word) : family.line,
        d.has("section") ? d.oneOf("section", Arrays.stream(Kind.Section.values()), Kind.Section::word) : family.section,
        d.count("order", LAST));
  }

  /** The kinds of junctions in the order in which they are listed. */
  public List<Kind> all() {
    return byId.values().stream().filter(k -> k.family() != Kind.Family.FIELD).sorted().toList();
  }

  /**
   * A kind by its id.
   *
   * @throws IllegalArgumentException where there is none
   */
  public Kind kind(String id) {
    Kind kind = id.equals(Kinds.UNCLASSIFIED) ? Kind.UNCLASSIFIED : byId.get(id);
    if (kind == null && Kinds.ALL.contains(id)) {
      // A person may have chosen a kind of the contract for which these rules have no shape.
      kind = kind(id, Packaged.DESCRIPTIONS.get(id));
    }
    if (kind == null) {
      throw new IllegalArgumentException("the rules have no kind \"" + id + "\"");
    }
    return kind;
  }

  /** Ids of the kinds that a junction can be given: those of the rules and of the contract, and {@link Kinds#UNCLASSIFIED}. */
  public Set<String> ids() {
    Set<String> ids = new TreeSet<>(all().stream().map(Kind::id).toList());
    ids.addAll(Kinds.ALL);
    ids.add(Kinds.UNCLASSIFIED);
    return ids;
  }
}
