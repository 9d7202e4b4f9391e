package org.seamledger.detail;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.seamledger.junction.Fact;
import org.seamledger.junction.FactList;
import org.seamledger.shacl.Described;
import org.seamledger.shacl.Rules;

/** Reads what details consist of from the rules. */
final class DetailBook {

  private static final Set<String> BLOCK = Set.of("includes", "followedBy", "metal", "seals", "fastenings", "holdPoints", "withFaces");
  private static final Set<String> DETAIL = with(BLOCK, "detail", "title", "waterPath", "metalFirst", "source");
  private static final Set<String> METAL = Set.of("part", "id", "on", "run", "girthMm", "lapMm", "everyMm", "where");
  private static final Set<String> FACE_PART = Set.of("part", "id", "orderLine");
  private static final Set<String> SEAL = Set.of("form", "role", "exposure", "place", "id", "lines", "on", "run", "upstands", "size", "of");
  private static final Set<String> FASTENING = Set.of("place", "id", "lines", "on", "run", "spacing", "throughTape",
      "joins", "type", "fixes", "slides", "exposed");
  private static final List<String> SIZES = List.of("bead.size", "bead.receiverSize", "bead.clampSize");
  private static final List<String> SPACINGS =
      List.of("fasteners.spacing", "fasteners.trimSpacing", "fasteners.wedgeSpacing", "fasteners.bootSpacing",
          "purchase.gutters.hangerSpacing");

  private DetailBook() {
  }

  /** @throws org.seamledger.shacl.BrokenRulesException where a detail that shapes choose has no content, or a wrong one */
  static SortedMap<String, Detail> read(Rules rules) {
    SortedMap<String, Detail> details = new TreeMap<>();
    List<FoldingProfile> profiles = ProfileBook.read(rules);
    rules.described("detail").forEach((id, d) -> details.put(id, detail(id, d, profiles)));
    return details;
  }

  private static Detail detail(String id, Described d, List<FoldingProfile> profiles) {
    d.only(DETAIL);
    if (!d.has("title")) {
      throw d.problem("is chosen, but nothing says what it consists of (sl:title ...)");
    }
    List<Described> blocks = blocks(d, new ArrayList<>());
    List<MetalPart> metal = distinct(d, parts(blocks, "metal", DetailBook::metal));
    List<Seal> seals = parts(blocks, "seals", DetailBook::seal).stream().map(s -> sealed(d, s, metal)).toList();
    List<Fastening> fastenings = parts(blocks, "fastenings", DetailBook::fastening);
    return new Detail(id, d.word("title"), metal, seals, fastenings, blocks.stream().flatMap(b -> HoldPoint.read(b).stream()).toList(),
        d.word("waterPath"), d.flag("metalFirst", false), d.word("source"), profiles, parts(blocks, "withFaces", DetailBook::facePart));
  }

  /** What a detail includes, then itself, then what follows: each block in its turn. */
  private static List<Described> blocks(Described d, List<String> within) {
    if (within.contains(d.name())) {
      throw d.problem("includes itself");
    }
    List<String> path = new ArrayList<>(within);
    path.add(d.name());
    List<Described> all = new ArrayList<>();
    for (Described b : d.list("includes")) {
      all.addAll(blocks(b.only(DETAIL), path));
    }
    all.add(d);
    for (Described b : d.list("followedBy")) {
      all.addAll(blocks(b.only(DETAIL), path));
    }
    return all;
  }

  private static <T> List<T> parts(List<Described> blocks, String property, Function<Described, T> read) {
    return blocks.stream().flatMap(b -> b.list(property).stream()).map(read).toList();
  }

  private static MetalPart metal(Described d) {
    d.only(METAL);
    Run run = run(d);
    double every = d.number("everyMm", 0) / 1000;
    if (every > 0 && run != Run.AT_INTERVALS && run != Run.BETWEEN_INTERVALS) {
      throw d.problem("sl:everyMm is the length of intervals, with sl:run \"at-intervals\" or \"between-intervals\"");
    }
    return new MetalPart(d.word("part"), id(d, DerivedIds.part(d.word("part"))), on(d), run, d.number("girthMm", 0) / 1000,
        d.number("lapMm", 0) / 1000, every, where(d));
  }

  private static String where(Described d) {
    String where = d.word("where", "");
    if (!where.isEmpty() && FactList.CHOICE.stream().noneMatch(f -> f.name().equals(where) && f.type() == Fact.FactType.FLAG)) {
      throw d.problem("sl:where \"" + where + "\" is no fact that is true or false where details are chosen");
    }
    return where;
  }

  private static FacePart facePart(Described d) {
    d.only(FACE_PART);
    return new FacePart(d.word("part"), d.word("id"), d.word("orderLine"));
  }

  private static Seal seal(Described d) {
    d.only(SEAL);
    Seal.Form form = d.oneOf("form", Arrays.stream(Seal.Form.values()), Seal.Form::word);
    if (form == Seal.Form.BEAD) {
      d.oneOf("size", SIZES.stream(), s -> s);
    } else if (d.has("size")) {
      throw d.problem("sl:size belongs to beads");
    }
    Run run = run(d);
    if (run == Run.PER_LAP != d.has("of")) {
      throw d.problem("sl:of names the part whose laps are sealed, with sl:run \"per-lap\"");
    }
    return new Seal(form, d.oneOf("role", Arrays.stream(Seal.Role.values()), Seal.Role::word),
        d.oneOf("exposure", Arrays.stream(Seal.Exposure.values()), Seal.Exposure::word), d.word("place"),
        id(d, DerivedIds.seal(d.word("place"))), d.count("lines", 1), on(d), run, d.count("upstands", 0), d.word("size", ""),
        d.word("of", ""));
  }

  private static Fastening fastening(Described d) {
    d.only(FASTENING);
    String id = id(d, DerivedIds.fastening(d.word("place")));
    Joins joins = d.has("joins") ? d.oneOf("joins", Arrays.stream(Joins.values()), Joins::word) : DerivedIds.joins(id);
    FastenerType type = d.has("type") ? d.oneOf("type", Arrays.stream(FastenerType.values()), FastenerType::word) : FastenerType.of(joins);
    return new Fastening(d.word("place"), id, d.count("lines", 1), on(d), run(d), d.oneOf("spacing", SPACINGS.stream(), s -> s),
        d.flag("throughTape", false), joins, type, d.flag("fixes", DerivedIds.fixes(id)), d.flag("slides", false),
        d.flag("exposed", false));
  }

  private static On on(Described d) {
    return d.oneOf("on", Arrays.stream(On.values()), On::word);
  }

  private static Run run(Described d) {
    return d.oneOf("run", Arrays.stream(Run.values()), Run::word);
  }

  private static String id(Described d, String derived) {
    String id = d.word("id", derived);
    if (!id.matches("\\p{L}[\\p{L}\\p{N}]*(?:-[\\p{L}\\p{N}]+)*+")) {
      throw d.problem("sl:id \"" + id + "\" needs letters, digits and single dashes between them");
    }
    return id;
  }

  /** Refuses names and ids that occur twice; an id that followed from a name gives way. */
  private static List<MetalPart> distinct(Described d, List<MetalPart> metal) {
    Set<String> names = new TreeSet<>();
    Set<String> ids = new TreeSet<>();
    List<MetalPart> all = new ArrayList<>();
    for (MetalPart m : metal) {
      boolean derived = m.id().equals(DerivedIds.part(m.part())) && ids.contains(m.id());
      MetalPart part = derived ? m.called(DerivedIds.plain(m.part())) : m;
      if (!names.add(part.part())) {
        throw d.problem("has the part \"" + part.part() + "\" twice");
      }
      if (!ids.add(part.id())) {
        throw d.problem("has two parts with sl:id \"" + part.id() + "\"");
      }
      all.add(part);
    }
    return all;
  }

  /** A seal of laps with its part's id, by which it may be named, or by its name. */
  private static Seal sealed(Described d, Seal s, List<MetalPart> metal) {
    if (s.run() != Run.PER_LAP) {
      return s;
    }
    return metal.stream().filter(m -> m.id().equals(s.part())).findFirst()
        .or(() -> metal.stream().filter(m -> m.part().equals(s.part())).findFirst()).map(m -> s.of(m.id()))
        .orElseThrow(() -> d.problem("seals the laps of \"" + s.part() + "\", which it doesn't have"));
  }

  private static Set<String> with(Set<String> some, String... more) {
    Set<String> all = new TreeSet<>(some);
    all.addAll(List.of(more));
    return all;
  }
}
