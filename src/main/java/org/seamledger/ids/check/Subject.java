package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamledger.ids.EntityNames;
import org.seamledger.ids.check.ModelRelations.Link;
import org.seamledger.schema.EntityDefinition;
import org.seamledger.schema.IfcRelease;
import org.seamledger.step.Instance;

/** An element that is looked at, with what several facets ask of it. */
final class Subject {

  private final ModelAccess model;
  private final Instance instance;
  private Optional<Instance> type;
  private PropertySets sets;
  private Optional<Set<String>> materials;
  private List<ClassificationEntry> classifications;

  Subject(ModelAccess model, Instance instance) {
    this.model = model;
    this.instance = instance;
  }

  ModelAccess model() {
    return model;
  }

  Instance instance() {
    return instance;
  }

  long id() {
    return instance.id();
  }

  /** The type that it is an occurrence of. */
  Optional<Instance> type() {
    if (type == null) {
      long[] ids = model.relations().of(Link.TYPE, instance.id());
      type = ids.length == 0 ? Optional.empty() : model.find(ids[0]);
    }
    return type;
  }

  PropertySets sets() {
    if (sets == null) {
      sets = new PropertySets(this);
    }
    return sets;
  }

  /** The names of its materials; empty where it has none. */
  Optional<Set<String>> materials() {
    if (materials == null) {
      materials = MaterialNames.of(this);
    }
    return materials;
  }

  List<ClassificationEntry> classifications() {
    if (classifications == null) {
      classifications = ClassificationEntry.of(this);
    }
    return classifications;
  }

  /** The names that an entity facet may know it by. */
  List<String> classNames() {
    String byType = model.release() == IfcRelease.IFC2X3 && model.isA(instance, "IFCOBJECT")
        ? type().map(t -> EntityNames.nameByType(t.keyword())).orElse("") : "";
    return byType.isEmpty() ? List.of(instance.keyword()) : List.of(byType, instance.keyword());
  }

  /**
   * Its predefined types: IDS 1.0, facet-configurations.md, "Entities". That of the type comes first, unless it is not defined; a user's
   * own goes by its word and by USERDEFINED.
   */
  List<String> predefinedTypes() {
    List<String> ofType = type().map(t -> predefined(t)).orElse(List.of());
    if (!ofType.isEmpty() && !ofType.get(0).equals("NOTDEFINED")) {
      return ofType;
    }
    List<String> own = predefined(instance);
    return own.isEmpty() ? ofType : own;
  }

  private List<String> predefined(Instance of) {
    String word = ModelAccess.word(model.value(of, "PredefinedType"));
    if (!word.equals("USERDEFINED")) {
      return word.isEmpty() ? List.of() : List.of(word);
    }
    List<String> words = new ArrayList<>();
    for (String attribute : new String[] {"ObjectType", "ElementType", "ProcessType", "ResourceType"}) {
      String own = model.text(of, attribute);
      if (!own.isEmpty()) {
        words.add(own);
      }
    }
    words.add(word);
    return words;
  }

  /** Empty for what has none. */
  String globalId() {
    return model.text(instance, "GlobalId");
  }

  String name() {
    return model.text(instance, "Name");
  }

  /** The class as the schema writes it. */
  String ifcClass() {
    return model.tables().entity(instance.keyword()).map(EntityDefinition::name).orElse(instance.keyword());
  }
}
