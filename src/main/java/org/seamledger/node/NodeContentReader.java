package org.seamledger.node;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.seamledger.detail.FastenerType;
import org.seamledger.detail.HoldPoint;
import org.seamledger.detail.Joins;
import org.seamledger.detail.Seal;
import org.seamledger.junction.Fact;
import org.seamledger.junction.FactList;
import org.seamledger.shacl.Described;

/** Reads what is done at nodes of a kind from the rules; slips are answered with file and line. */
final class NodeContentReader {

  static final Set<String> TERMS = Set.of("title", "parts", "seals", "fastenings", "holdPoints", "note", "source");
  private static final Set<String> PART = Set.of("part", "id", "shape", "along", "per", "pieces", "girthMm", "lengthMm");
  private static final Set<String> SEAL = Set.of("form", "role", "exposure", "place", "id", "of", "lines", "lengthMm", "size");
  private static final Set<String> FASTENING = Set.of("place", "id", "of", "count", "type", "joins", "lengthMm");
  private static final List<String> SIZES = List.of("bead.size", "bead.receiverSize", "bead.clampSize");

  private NodeContentReader() {
  }

  /** The content of a kind, with no parts where the rules tell none. */
  static NodeContent read(Described d) {
    List<NodePart> parts = d.list("parts").stream().map(NodeContentReader::part).toList();
    Set<String> ids = new HashSet<>();
    parts.forEach(p -> {
      if (!ids.add(p.id())) {
        throw d.problem("has two parts with sl:id \"" + p.id() + "\"");
      }
    });
    return new NodeContent(d.word("title", d.label()), parts, d.list("seals").stream().map(s -> seal(s, parts)).toList(),
        d.list("fastenings").stream().map(f -> fastening(f, parts)).toList(),
        HoldPoint.read(d),
        d.word("note", ""), d.word("source", ""));
  }

  private static NodePart part(Described d) {
    d.only(PART);
    String per = d.has("per") ? d.oneOf("per", FactList.NODE.stream().filter(f -> f.type() == Fact.FactType.COUNT).map(Fact::name), w -> w)
        : "";
    List<String> along = d.has("along") ? List.of(d.word("along").split(" ")) : List.of();
    along.stream().filter(w -> Arrays.stream(LineSort.values()).noneMatch(s -> s.matches(w))).findFirst().ifPresent(w -> {
      throw d.problem("lies along \"" + w + "\"; there is no such sort of lines");
    });
    return new NodePart(d.word("part"), d.word("id"), d.oneOf("shape", Arrays.stream(NodePart.Shape.values()), NodePart.Shape::word), along,
        per, d.count("pieces", 1), d.number("girthMm", 0) / 1000, d.number("lengthMm", 0) / 1000);
  }

  private static NodeSeal seal(Described d, List<NodePart> parts) {
    d.only(SEAL);
    NodePart of = of(d, parts);
    Seal.Form form = d.oneOf("form", Arrays.stream(Seal.Form.values()), Seal.Form::word);
    String size = form == Seal.Form.BEAD ? d.oneOf("size", SIZES.stream(), s -> s) : "";
    return new NodeSeal(form, d.oneOf("role", Arrays.stream(Seal.Role.values()), Seal.Role::word),
        d.oneOf("exposure", Arrays.stream(Seal.Exposure.values()), Seal.Exposure::word), d.word("place"), d.word("id"), of.id(),
        d.count("lines", 1), d.has("lengthMm") ? d.number("lengthMm", 0) / 1000 : of.girthM(), size);
  }

  private static NodeFastening fastening(Described d, List<NodePart> parts) {
    d.only(FASTENING);
    return new NodeFastening(d.word("place"), d.word("id"), of(d, parts).id(), d.count("count", 1),
        d.oneOf("type", Arrays.stream(FastenerType.values()), FastenerType::word),
        d.oneOf("joins", Arrays.stream(Joins.values()), Joins::word), d.number("lengthMm", 0) / 1000);
  }

  private static NodePart of(Described d, List<NodePart> parts) {
    return d.oneOf("of", parts.isEmpty() ? Stream.empty() : parts.stream(), NodePart::id);
  }
}
