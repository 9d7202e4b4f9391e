package org.seamledger.export.json;

import java.io.IOException;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.seamledger.detail.Decided;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Explanation;
import org.seamledger.detail.FacePart;
import org.seamledger.detail.HoldPoint;
import org.seamledger.detail.Kind;
import org.seamledger.junction.Junction;
import org.seamledger.junction.Modelled;
import org.seamledger.quantity.ClosureCut;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.sequence.PlacedHoldPoint;
import org.seamledger.takeoff.Takeoff;

/** The junctions in the JSON ledger, each with what its detail takes, and the details that occur. */
public final class JsonJunctions {

  private static final double ML_PER_M3 = 1e6;

  private static final SortedSet<String> NONE = Collections.emptySortedSet();

  private final Takeoff takeoff;
  private final JsonOutput json;
  private final Map<String, SortedSet<String>> codes;

  public JsonJunctions(Takeoff takeoff, JsonOutput json) {
    this.takeoff = takeoff;
    this.json = json;
    this.codes = takeoff.codesByJunction();
  }

  public void junctions() throws IOException {
    json.objects("junctions", takeoff.detailed(), this::junction);
  }

  /** Lines within faces at which panels are divided: like junctions, but no edges of a face. */
  public void joints() throws IOException {
    json.objects("joints", takeoff.joints(), this::junction);
    json.objects("jointKinds", takeoff.joints().stream().map(j -> j.junction().type()).distinct().sorted().toList(), this::kind);
  }

  private void junction(DetailedJunction detailed) throws IOException {
    Junction junction = detailed.junction().junction();
    JunctionQuantities quantities = takeoff.quantities().byJunction().get(junction.id());
    json.word("id", junction.id());
    json.term("kind", detailed.junction().kind());
    json.number("lengthM", junction.lengthM());
    json.path("path", junction.path(), takeoff.offset());
    json.words("faces", junction.faces());
    json.words("elements", junction.elements());
    json.tree("facts", junction.facts().asMap());
    json.wordOrNull("detail", detailed.detail().equals(Detail.NONE) ? "" : detailed.detail().id());
    if (detailed.decided().isPresent()) {
      json.object("decided", () -> decided(detailed.decided().get()));
    }
    json.objects("metal", quantities.metal(), this::metal);
    json.objects("seals", quantities.seals(), this::seal);
    json.objects("fasteners", quantities.fasteners(), this::fasteners);
    json.objects("closures", quantities.closures(), this::closure);
    json.object("plugs", () -> plugs(quantities));
    modelled(takeoff.modelledAt(junction.id()));
    json.words("steps", quantities.steps());
    json.objects("holdPoints", takeoff.sequence().holdPoints(junction.id()), this::placed);
    json.object("explanation", () -> explanation(detailed.junction().explanation()));
    json.words("findings", codes(junction.id()));
  }

  /** Codes of the findings that concern a line or a node, sorted. */
  SortedSet<String> codes(String id) {
    return codes.getOrDefault(id, NONE);
  }

  private void modelled(Modelled modelled) throws IOException {
    json.objects("modelled", modelled.pieces(), piece -> {
      json.word("element", piece.element());
      json.word("as", piece.gutter() ? "gutter" : "flashing");
      json.number("lengthM", piece.lengthM());
    });
    json.number("modelledM", modelled.flashingM());
    json.number("gutterM", modelled.gutterM());
  }

  private void decided(Decided decided) throws IOException {
    json.wordOrNull("kind", decided.kind());
    json.wordOrNull("detail", decided.detail());
    json.word("reason", decided.reason());
    json.object("byRules", () -> {
      json.word("kind", decided.kindByRules());
      json.wordOrNull("detail", decided.detailByRules().equals(Detail.NONE.id()) ? "" : decided.detailByRules());
    });
  }

  void metal(MetalLine line) throws IOException {
    json.term("part", line.part());
    json.wordOrNull("face", line.face());
    json.count("pieces", line.pieces());
    json.number("lengthM", line.lengthM());
    json.count("laps", line.laps());
    json.number("girthM", line.girthM());
  }

  void seal(SealLine line) throws IOException {
    json.term("form", line.form().word());
    json.term("role", line.role().word());
    json.term("exposure", line.exposure().word());
    json.term("place", line.place());
    json.wordOrNull("face", line.face());
    json.term("run", line.run().word());
    json.count("lines", line.lines());
    json.number("lengthM", line.lengthM());
    json.number("volumeMl", line.volumeM3() * ML_PER_M3);
  }

  void fasteners(FastenerRow row) throws IOException {
    json.term("place", row.place());
    json.wordOrNull("face", row.face());
    json.count("count", row.count());
    json.number("spacingM", row.spacingM());
    json.flag("throughTape", row.throughTape());
    json.number("tapeCoverage", row.coverage());
    json.term("joins", row.joins().word());
    json.term("type", row.type().word());
    json.number("lengthM", row.lengthM());
    json.number("slotM", row.slotM());
    json.flag("exposed", row.exposed());
  }

  private void closure(ClosureCut cut) throws IOException {
    json.term("part", cut.part());
    json.word("face", cut.face());
    json.count("count", cut.count());
    json.number("lengthM", cut.lengthM());
    json.number("bevelDegrees", cut.bevelDegrees());
    json.flag("shorterThanMinimum", cut.shorter());
  }

  private void plugs(JunctionQuantities quantities) throws IOException {
    json.count("seamEnds", quantities.seamEndPlugs());
    json.count("corners", quantities.cornerPlugs());
  }

  private void explanation(Explanation explanation) throws IOException {
    json.words("shapes", explanation.shapes());
    json.wordOrNull("nearest", explanation.nearest());
    json.words("missed", explanation.missed());
  }

  /** What the details are that the junctions name, by id. */
  public void details() throws IOException {
    SortedMap<String, Detail> used = new TreeMap<>();
    takeoff.lines().stream().map(DetailedJunction::detail).filter(d -> !d.equals(Detail.NONE)).forEach(d -> used.put(d.id(), d));
    json.objects("details", used.values(), this::detail);
  }

  /** What the kinds are that a line can have, in the order in which they are listed. */
  public void kinds() throws IOException {
    json.objects("kinds", Stream.concat(takeoff.kinds().stream(), Stream.of(Kind.UNCLASSIFIED)).toList(), this::kind);
  }

  private void kind(Kind kind) throws IOException {
    json.word("id", kind.id());
    json.word("label", kind.label());
    json.word("meaning", kind.meaning());
    json.word("family", kind.family().word());
    json.word("planLine", kind.line().word());
  }

  /** What a person can choose in place of the rules' detail. */
  public void choices() throws IOException {
    json.objects("detailChoices", takeoff.detailTitles().entrySet(), choice -> {
      json.word("id", choice.getKey());
      json.word("title", choice.getValue());
    });
  }

  private void detail(Detail detail) throws IOException {
    json.word("id", detail.id());
    json.word("title", detail.title());
    json.flag("metalFirst", detail.metalFirst());
    json.word("withoutSealant", detail.waterPath());
    json.objects("withFaces", detail.withFaces(), this::withFaces);
    json.objects("holdPoints", detail.holdPoints(), this::holdPoint);
    json.word("source", detail.source());
  }

  private void withFaces(FacePart part) throws IOException {
    json.word("part", part.part());
    json.word("orderLine", part.orderLine());
  }

  void placed(PlacedHoldPoint point) throws IOException {
    json.word("id", point.id());
    json.term("before", point.before());
    json.term("check", point.check());
    json.term("ifFails", point.ifFails());
    json.wordOrNull("step", point.step());
    json.words("steps", point.steps());
    if (!point.locks().isEmpty()) {
      json.word("locks", point.locks());
    }
  }

  void holdPoint(HoldPoint point) throws IOException {
    json.term("before", point.before());
    json.term("check", point.check());
  }
}
