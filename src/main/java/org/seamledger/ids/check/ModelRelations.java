package org.seamledger.ids.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.seamledger.schema.SchemaTables;
import org.seamledger.step.StepFile;

/**
 * A model's relations, from an element to what it is related to. Each is read when first needed, in one go.
 *
 * <p>Parameters count from 0 in the order of the schemas, which is the same in all three for the classes used here.
 */
final class ModelRelations {

  /** What leads from where to where: class of the relation, parameter of those that ask, parameter of what they get. */
  private record Path(String relation, int from, int to) {
  }

  /** A kind of question. */
  enum Link {
    TYPE(new Path("IFCRELDEFINESBYTYPE", 4, 5)),
    PROPERTY_SET(new Path("IFCRELDEFINESBYPROPERTIES", 4, 5)),
    MATERIAL(new Path("IFCRELASSOCIATESMATERIAL", 4, 5)),
    CLASSIFICATION(new Path("IFCRELASSOCIATESCLASSIFICATION", 4, 5), new Path("IFCEXTERNALREFERENCERELATIONSHIP", 3, 2),
        new Path("IFCMATERIALCLASSIFICATIONRELATIONSHIP", 1, 0)),
    AGGREGATE(new Path("IFCRELAGGREGATES", 5, 4)),
    GROUP(new Path("IFCRELASSIGNSTOGROUP", 4, 6)),
    CONTAINER(new Path("IFCRELCONTAINEDINSPATIALSTRUCTURE", 4, 5)),
    NEST(new Path("IFCRELNESTS", 5, 4)),
    VOID_OR_FILLING(new Path("IFCRELVOIDSELEMENT", 5, 4), new Path("IFCRELFILLSELEMENT", 5, 4));

    private final List<Path> paths;

    Link(Path... paths) {
      this.paths = List.of(paths);
    }
  }

  /** Classes of properties of materials and profiles, each with the parameter of what has them. */
  private static final Map<String, Integer> EXTENDED = Map.of("IFCMATERIALPROPERTIES", 3, "IFCPROFILEPROPERTIES", 3,
      "IFCEXTENDEDMATERIALPROPERTIES", 0);

  private final StepFile file;
  private final SchemaTables tables;
  private final Map<Link, LinkTable> known = new EnumMap<>(Link.class);
  private LinkTable extended;

  ModelRelations(StepFile file, SchemaTables tables) {
    this.file = file;
    this.tables = tables;
  }

  /** What an element leads to, in the file's order. */
  long[] of(Link link, long id) {
    return known.computeIfAbsent(link, this::read).of(id);
  }

  /** The parts of the standard's name of a relation that wholes are found by. */
  static List<Link> wholes(String relation) {
    return switch (relation) {
      case "IFCRELAGGREGATES" -> List.of(Link.AGGREGATE);
      case "IFCRELASSIGNSTOGROUP" -> List.of(Link.GROUP);
      case "IFCRELCONTAINEDINSPATIALSTRUCTURE" -> List.of(Link.CONTAINER);
      case "IFCRELNESTS" -> List.of(Link.NEST);
      case "IFCRELVOIDSELEMENT IFCRELFILLSELEMENT" -> List.of(Link.VOID_OR_FILLING);
      default -> List.of(Link.AGGREGATE, Link.GROUP, Link.CONTAINER, Link.NEST, Link.VOID_OR_FILLING);
    };
  }

  /** Sets of properties of a material or profile, which name it themselves. */
  long[] extendedProperties(long id) {
    if (extended == null) {
      extended = new LinkTable();
      EXTENDED.forEach((keyword, parameter) -> {
        if (parameter == 0 || tables.entity("IFCEXTENDEDPROPERTIES").isPresent()) {
          file.forEachReferences(keyword, (set, references) -> extended.add(references.first(parameter), set));
        }
      });
    }
    return extended.of(id);
  }

  private LinkTable read(Link link) {
    LinkTable table = new LinkTable();
    for (Path path : link.paths) {
      for (String keyword : kinds(path.relation())) {
        file.forEachReferences(keyword, (id, references) -> {
          for (int i = 0; i < references.size(); i++) {
            if (references.parameter(i) == path.from()) {
              for (int k = 0; k < references.size(); k++) {
                if (references.parameter(k) == path.to()) {
                  table.add(references.target(i), references.target(k));
                }
              }
            }
          }
        });
      }
    }
    return table;
  }

  private List<String> kinds(String relation) {
    List<String> kinds = new ArrayList<>(Arrays.asList(relation));
    file.keywords().stream().filter(k -> !k.equals(relation) && tables.isA(k, relation)).forEach(kinds::add);
    return kinds;
  }
}
