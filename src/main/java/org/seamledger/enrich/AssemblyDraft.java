package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.MetalPart;
import org.seamledger.detail.Run;
import org.seamledger.element.AnswerTag;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.junction.Junction;
import org.seamledger.quantity.FastenerRow;
import org.seamledger.quantity.JunctionQuantities;
import org.seamledger.quantity.MetalLine;
import org.seamledger.quantity.SealLine;
import org.seamledger.step.Value;

/**
 * A junction as an assembly: its metal, closures, sealants and fasteners as parts with their quantities and a thin body each, in the
 * classes that the model's schema has for them.
 */
final class AssemblyDraft {

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

    /** @param words tell the part from the others of its assembly; of several with the same words, the place among them does */
    void part(String entity, String type, String name, PartLook look, PropertyDraft.Content quantities, String... words) {
      String like = String.join("/", words);
      int count = used.merge(like, 1, Integer::sum);
      String key = count == 1 ? like : like + "~" + count;
      add(entity, type, name, look, quantities, key);
    }

    private void add(String entity, String type, String name, PartLook look, PropertyDraft.Content quantities, String key) {
      Value placement = draft.add("IfcLocalPlacement", "PlacementRelTo", place, "RelativePlacement",
          draft.shared("IfcAxis2Placement3D", "Location", bodies.point(Vec3.ZERO)));
      String enumeration = draft.attributeType(entity, "PredefinedType");
      Value part = draft.add(entity, "GlobalId", properties.id("part", id, key), "OwnerHistory", history.orElse(null), "Name", name,
          "ObjectType", type.toLowerCase(Locale.ROOT), "ObjectPlacement", placement, "Representation", shape(look), "Tag",
          AnswerTag.PREFIX + id + "/" + key, "PredefinedType", InstanceDraft.word(draft.hasWord(enumeration, type) ? type : "USERDEFINED"));
      properties.quantities(part, "PartQuantities", quantities, id, key);
      parts.add(part);
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

  /** @param counted nothing where the junction has no detail */
  Value junction(DetailedJunction j, Optional<JunctionQuantities> counted, List<String> findings) {
    Junction line = j.junction().junction();
    Assembly assembly = new Assembly(line.id(), line.path());
    counted.ifPresent(q -> {
      q.metal().forEach(m -> metal(assembly, j, m));
      q.seals().forEach(s -> seal(assembly, s));
      q.fasteners().forEach(f -> fasteners(assembly, f));
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

  private void metal(Assembly assembly, DetailedJunction j, MetalLine line) {
    boolean isClosure = j.detail().metal().stream().filter(m -> m.part().equals(line.part())).map(MetalPart::run)
        .anyMatch(r -> r == Run.PER_PIECE);
    PropertyDraft.Content quantities = properties.content().length("Length", line.lengthM()).count("Pieces", line.pieces())
        .count("Laps", line.laps());
    if (line.girthM() > 0) {
      quantities.length("Girth", line.girthM());
    }
    assembly.part("IfcDiscreteAccessory", isClosure ? "FILLER" : "FLASHING", named(line.part(), line.face()),
        isClosure ? PartLook.CLOSURE : PartLook.METAL, quantities, "metal", line.part(), line.face());
  }

  private void seal(Assembly assembly, SealLine line) {
    PropertyDraft.Content quantities = properties.content().length("Length", line.lengthM()).count("Lines", line.lines());
    if (line.volumeM3() > 0) {
      quantities.volume("Volume", line.volumeM3());
    }
    assembly.part("IfcDiscreteAccessory", "FILLER", named(line.form().word() + " " + line.place(), line.face()), PartLook.SEALANT,
        quantities, "seal", line.form().word(), line.place(), line.face());
  }

  private void fasteners(Assembly assembly, FastenerRow row) {
    PropertyDraft.Content quantities = properties.content().count("Count", row.count());
    if (row.spacingM() > 0) {
      quantities.length("Spacing", row.spacingM());
    }
    assembly.part("IfcMechanicalFastener", "SCREW", named("fasteners " + row.place(), row.face()), PartLook.FASTENER, quantities,
        "fasteners", row.place(), row.face());
  }

  private static String named(String what, String face) {
    return face.isEmpty() ? what : what + ", " + face;
  }
}
