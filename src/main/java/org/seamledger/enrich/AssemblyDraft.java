package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.element.AnswerTag;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.node.KindedNode;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.step.Value;

/**
 * A junction or node as an assembly: its metal, closures, sealants and fasteners as parts with their quantities and a thin body each,
 * in the classes that the model's schema has for them.
 */
final class AssemblyDraft {

  /** Of the blocks that stand for what is done at a node, metres. */
  private static final double NODE_HEIGHT = 0.08;

  private final InstanceDraft draft;
  private final HostModel host;
  private final PropertyDraft properties;
  private final Optional<Value> history;
  private final Transform toModel;
  private final Optional<Value> context;
  private final Bodies bodies;

  AssemblyDraft(InstanceDraft draft, HostModel host, PropertyDraft properties, Optional<Value> history, Transform toModel) {
    this.draft = draft;
    this.host = host;
    this.properties = properties;
    this.history = history;
    this.toModel = toModel;
    this.context = host.bodyContext();
    this.bodies = new Bodies(draft, host.metres());
  }

  /** A part that was added, and the words that its GlobalIds are made of. */
  private record Added(Value part, String[] key) {
  }

  /** An assembly being put together. */
  private final class Assembly {
    private final String id;
    private final Value place;
    private final List<Vec3> path;
    private final List<Value> parts = new ArrayList<>();
    private final Map<String, Integer> used = new HashMap<>();

    Assembly(String id, List<Vec3> local) {
      List<Vec3> inModel = local.stream().map(toModel::apply).toList();
      Vec3 origin = inModel.get(0);
      this.id = id;
      this.place = draft.add("IfcLocalPlacement", "RelativePlacement", bodies.place(origin));
      this.path = inModel.stream().map(p -> p.minus(origin)).toList();
    }

    /**
     * Adds a part.
     *
     * @param words tell the part from the others of its assembly; of several with the same words, the place among them does
     * @return the part and the words that its GlobalIds are made of
     */
    Added part(PartClass is, String name, PartLook look, PropertyDraft.Content quantities, String... words) {
      String like = String.join("/", words);
      int count = used.merge(like, 1, Integer::sum);
      String key = count == 1 ? like : like + "~" + count;
      return new Added(add(is, name, look, quantities, key), new String[] {id, key});
    }

    private Value add(PartClass is, String name, PartLook look, PropertyDraft.Content quantities, String key) {
      Value placement = draft.add("IfcLocalPlacement", "PlacementRelTo", place, "RelativePlacement",
          draft.shared("IfcAxis2Placement3D", "Location", bodies.point(Vec3.ZERO)));
      String enumeration = draft.attributeType(is.entity(), "PredefinedType");
      Value part = draft.add(is.entity(), "GlobalId", properties.id("part", id, key), "OwnerHistory", history.orElse(null), "Name", name,
          "ObjectType", is.objectType(), "ObjectPlacement", placement, "Representation", shape(look), "Tag",
          AnswerTag.PREFIX + id + "/" + key, "NominalLength", is.lengthM() > 0 ? is.lengthM() / host.metres() : null, "PredefinedType",
          InstanceDraft.word(draft.hasWord(enumeration, is.word()) ? is.word() : "USERDEFINED"));
      properties.quantities(part, "PartQuantities", quantities, id, key);
      parts.add(part);
      return part;
    }

    private Value shape(PartLook look) {
      List<Value> solids = context.isEmpty() ? List.of() : bodies.along(path, look.bar());
      return solids.isEmpty() ? null
          : draft.add("IfcProductDefinitionShape", "Representations",
              InstanceDraft
                  .list(List.of(draft.add("IfcShapeRepresentation", "ContextOfItems", context.get(), "RepresentationIdentifier", "Body",
                      "RepresentationType", "SweptSolid", "Items", InstanceDraft.list(solids)))));
    }

    Value whole(String name, String description, String kind) {
      Value whole = draft.add("IfcElementAssembly", "GlobalId", properties.id("assembly", id), "OwnerHistory", history.orElse(null),
          "Name", name, "Description", description, "ObjectType", kind, "ObjectPlacement", place, "Tag", AnswerTag.PREFIX + id,
          "AssemblyPlace", InstanceDraft.word("SITE"), "PredefinedType", InstanceDraft.word("ACCESSORY_ASSEMBLY"));
      if (!parts.isEmpty()) {
        draft.add("IfcRelAggregates", "GlobalId", properties.id("parts of", id), "OwnerHistory", history.orElse(null), "RelatingObject",
            whole, "RelatedObjects", InstanceDraft.list(parts));
      }
      return whole;
    }
  }

  /** A node's pieces, sealants and fasteners, as small blocks at its place. */
  Value node(KindedNode node, JunctionQuantities counted, List<String> findings) {
    Vec3 at = node.node().at();
    Assembly assembly = new Assembly(node.id(), List.of(at, at.plus(new Vec3(0, 0, NODE_HEIGHT))));
    counted.metal().forEach(m -> metal(assembly, false, m, PartLook.NODE_METAL));
    counted.seals().forEach(s -> seal(assembly, s, PartLook.NODE_SEALANT));
    counted.fasteners().forEach(f -> fasteners(assembly, f, PartLook.NODE_FASTENER));
    Value whole = assembly.whole(node.kind().label() + " " + node.id(), node.kind().content().title(), node.kind().id());
    properties.properties(whole, "Node",
        properties.content().label("NodeId", node.id()).label("Kind", node.kind().id()).label("Meaning", node.kind().meaning())
            .labels("Junctions", node.node().junctions()).labels("Faces", node.node().faces()).labels("Findings", findings),
        node.id());
    return whole;
  }

  /** @param counted nothing where the junction has no detail */
  Value junction(DetailedJunction j, Optional<JunctionQuantities> counted, List<String> findings) {
    Junction line = j.junction().junction();
    Assembly assembly = new Assembly(line.id(), line.path());
    counted.ifPresent(q -> {
      q.metal().forEach(m -> metal(assembly, isClosure(j, m), m, isClosure(j, m) ? PartLook.CLOSURE : PartLook.METAL));
      q.seals().forEach(s -> seal(assembly, s, PartLook.SEALANT));
      q.fasteners().forEach(f -> fasteners(assembly, f, PartLook.FASTENER));
    });
    Value whole = assembly.whole(j.junction().type().label() + " " + line.id(), j.detail().title(), j.junction().kind());
    properties.properties(whole, "Junction",
        properties.content().label("JunctionId", line.id()).label("Kind", j.junction().kind()).label("Detail", j.detail().id())
            .flag("MetalFirst", j.detail().metalFirst()).flag("Overridden", j.decided().isPresent()).labels("Faces", line.faces())
            .labels("Elements", line.elements()).labels("Findings", findings),
        line.id());
    properties.quantities(whole, "JunctionQuantities", properties.content().length("Length", line.lengthM()), line.id());
    return whole;
  }

  private static boolean isClosure(DetailedJunction j, MetalLine line) {
    return j.detail().metal().stream().filter(m -> m.part().equals(line.part())).map(MetalPart::run).anyMatch(r -> r == Run.PER_PIECE);
  }

  private void metal(Assembly assembly, boolean isClosure, MetalLine line, PartLook look) {
    PropertyDraft.Content quantities = properties.content();
    if (line.lengthM() > 0) {
      quantities.length("Length", line.lengthM());
    }
    quantities.count("Pieces", line.pieces()).count("Laps", line.laps());
    if (line.girthM() > 0) {
      quantities.length("Girth", line.girthM());
    }
    assembly.part(isClosure ? PartClass.FILLER : PartClass.FLASHING, named(line.part(), line.face()), look, quantities, "metal",
        line.part(), line.face());
  }

  private void seal(Assembly assembly, SealLine line, PartLook look) {
    PropertyDraft.Content quantities = properties.content().length("Length", line.lengthM()).count("Lines", line.lines());
    if (line.volumeM3() > 0) {
      quantities.volume("Volume", line.volumeM3());
    }
    assembly.part(PartClass.FILLER, named(line.form().word() + " " + line.place(), line.face()), look, quantities, "seal",
        line.form().word(), line.place(), line.face());
  }

  private void fasteners(Assembly assembly, FastenerRow row, PartLook look) {
    PropertyDraft.Content quantities = properties.content().count("Count", row.count());
    if (row.spacingM() > 0) {
      quantities.length("Spacing", row.spacingM());
    }
    Added added = assembly.part(PartClass.of(row), named("fasteners " + row.place(), row.face()), look, quantities, "fasteners",
        row.place(), row.face());
    properties.properties(added.part(), "Fasteners",
        properties.content().label("Type", row.type().word()).label("Joins", row.joins().word())
            .flag("ThroughTape", row.throughTape()).flag("Exposed", row.exposed()),
        added.key());
  }

  private static String named(String what, String face) {
    return face.isEmpty() ? what : what + ", " + face;
  }
}
