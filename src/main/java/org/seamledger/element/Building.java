package org.seamledger.element;

import java.util.List;
import java.util.stream.Stream;
import org.seamledger.finding.Finding;
import org.seamledger.geometry.Vec3;

/**
 * What one or several models say about a roof and what is near it.
 *
 * @param roofs elements that carry the roof's surface, ordered by GlobalId
 * @param neighbours elements near the roofs that may meet or pierce them, ordered by GlobalId; nothing far from every roof
 * @param flashings flashings and gutters near the roofs, ordered by GlobalId; they neither carry nor pierce a roof
 * @param offset world coordinates of the local origin, metres: world = local + offset
 * @param findings what reading the models brought up
 * @param named the elements that are here or in a finding, by what people find them by, ordered by GlobalId
 * @param below doors of walls and rooms below the roofs, ordered by GlobalId
 */
public record Building(List<ModelInfo> models, List<Element> roofs, List<Element> neighbours, List<Element> flashings, Vec3 offset,
    List<Finding> findings, List<NamedElement> named, List<Element> below) {

  /** With no door and no room below the roof. */
  public Building(List<ModelInfo> models, List<Element> roofs, List<Element> neighbours, List<Element> flashings, Vec3 offset,
      List<Finding> findings, List<NamedElement> named) {
    this(models, roofs, neighbours, flashings, offset, findings, named, List.of());
  }

  /** With no flashing and no gutter, in no storey. */
  public Building(List<ModelInfo> models, List<Element> roofs, List<Element> neighbours, Vec3 offset, List<Finding> findings) {
    this(models, roofs, neighbours, List.of(), offset, findings);
  }

  /** In no storey. */
  public Building(List<ModelInfo> models, List<Element> roofs, List<Element> neighbours, List<Element> flashings, Vec3 offset,
      List<Finding> findings) {
    this(models, roofs, neighbours, flashings, offset, findings, Stream.of(flashings, neighbours, roofs).flatMap(List::stream)
        .map(e -> new NamedElement(e.globalId(), e.ifcClass(), e.name(), e.model(), "")).toList());
  }

  public Building {
    models = List.copyOf(models);
    roofs = List.copyOf(roofs);
    neighbours = List.copyOf(neighbours);
    flashings = List.copyOf(flashings);
    findings = List.copyOf(findings);
    named = List.copyOf(named);
    below = List.copyOf(below);
  }
}
