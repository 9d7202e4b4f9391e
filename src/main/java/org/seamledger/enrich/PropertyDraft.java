package org.seamledger.enrich;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.step.Value;

/** Property sets and quantity sets in a model's own units. */
final class PropertyDraft {

  private final InstanceDraft draft;
  private final HostModel host;
  private final Optional<Value> history;

  PropertyDraft(InstanceDraft draft, HostModel host, Optional<Value> history) {
    this.draft = draft;
    this.host = host;
    this.history = history;
  }

  /** Properties, or quantities, that belong together. */
  final class Content {
    private final List<Value> items = new ArrayList<>();

    Content label(String name, String text) {
      return single(name, InstanceDraft.typed("IfcLabel", text), null);
    }

    Content flag(String name, boolean flag) {
      return single(name, InstanceDraft.typed("IfcBoolean", flag), null);
    }

    Content number(String name, int count) {
      return single(name, InstanceDraft.typed("IfcInteger", count), null);
    }

    /** @param degrees written in the model's unit of plane angles */
    Content angle(String name, double degrees) {
      return single(name, InstanceDraft.typed("IfcPlaneAngleMeasure", Math.toRadians(degrees) / host.radians()), null);
    }

    Content areaProperty(String name, double m2) {
      return single(name, InstanceDraft.typed("IfcAreaMeasure", m2 / host.squareMetres()), unit("AREAUNIT", "SQUARE_METRE"));
    }

    /** A list of words; nothing where there are none. */
    Content labels(String name, List<String> words) {
      if (!words.isEmpty()) {
        items.add(draft.add("IfcPropertyListValue", "Name", name, "ListValues",
            InstanceDraft.list(words.stream().map(w -> InstanceDraft.typed("IfcLabel", w)).toList())));
      }
      return this;
    }

    private Content single(String name, Value value, Value unit) {
      items.add(draft.add("IfcPropertySingleValue", "Name", name, "NominalValue", value, "Unit", unit));
      return this;
    }

    Content length(String name, double m) {
      return quantity("IfcQuantityLength", name, null, "LengthValue", m / host.metres());
    }

    Content volume(String name, double m3) {
      return quantity("IfcQuantityVolume", name, unit("VOLUMEUNIT", "CUBIC_METRE"), "VolumeValue", m3 / host.cubicMetres());
    }

    Content count(String name, int n) {
      return quantity("IfcQuantityCount", name, null, "CountValue", (double) n);
    }

    private Content quantity(String entity, String name, Value unit, String attribute, double value) {
      items.add(draft.add(entity, "Name", name, "Unit", unit, attribute, value));
      return this;
    }
  }

  Content content() {
    return new Content();
  }

  /** The unit to state: none where the project's own is meant. */
  private Value unit(String sort, String si) {
    return host.unit(sort).isPresent() ? null
        : draft.shared("IfcSIUnit", "UnitType", InstanceDraft.word(sort), "Name", InstanceDraft.word(si));
  }

  /** Gives an object a property set. @param key words from which GlobalIds are made */
  void properties(Value object, String name, Content content, String... key) {
    Value set = draft.add("IfcPropertySet", "GlobalId", id("properties", key), "OwnerHistory", history.orElse(null), "Name",
        OwnRecords.NAME_PREFIX + name, "HasProperties", InstanceDraft.list(content.items));
    relate(object, set, "properties of", key);
  }

  /** Gives an object a quantity set. */
  void quantities(Value object, String name, Content content, String... key) {
    Value set = draft.add("IfcElementQuantity", "GlobalId", id("quantities", key), "OwnerHistory", history.orElse(null), "Name",
        OwnRecords.NAME_PREFIX + name, "Quantities", InstanceDraft.list(content.items));
    relate(object, set, "quantities of", key);
  }

  private void relate(Value object, Value set, String role, String... key) {
    draft.add("IfcRelDefinesByProperties", "GlobalId", id(role, key), "OwnerHistory", history.orElse(null), "RelatedObjects",
        InstanceDraft.list(List.of(object)), "RelatingPropertyDefinition", set);
  }

  String id(String role, String... key) {
    return StableGlobalId.of("seamledger", host.project(), role, String.join("\n", key));
  }
}
