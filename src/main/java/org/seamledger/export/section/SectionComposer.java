package org.seamledger.export.section;

import org.seamledger.detail.DetailedJunction;
import org.seamledger.geometry.Vec2;
import org.seamledger.quantity.RoofSystem;

/**
 * What every composition of a section stands on: the scene, the shared parts, and how the junction's faces lie. Lengths in millimetres.
 */
class SectionComposer {

  static final Vec2 NONE = new Vec2(0, 0);

  final SectionScene scene;
  final SectionParts parts;
  final RoofSystem system;
  final DetailedJunction detailed;
  final SectionCut cut;
  final double g;

  SectionComposer(SectionScene scene, RoofSystem system, DetailedJunction detailed, SectionCut cut) {
    this.scene = scene;
    this.parts = new SectionParts(scene, system, cut.fasteners());
    this.system = system;
    this.detailed = detailed;
    this.cut = cut;
    this.g = scene.gap();
  }

  SectionComposer(SectionComposer other) {
    scene = other.scene;
    parts = other.parts;
    system = other.system;
    detailed = other.detailed;
    cut = other.cut;
    g = other.g;
  }

  final double rise(int face) {
    return cut.faces().isEmpty() ? 0 : cut.faces().get(Math.min(face, cut.faces().size() - 1)).riseDegrees();
  }

  final String slope(int face) {
    if (cut.faces().isEmpty()) {
      return "";
    }
    SectionCut.Face f = cut.faces().get(Math.min(face, cut.faces().size() - 1));
    return f.id() + ", " + scene.units().slope(f.slopeDegrees());
  }

  final SlopeLine left(int face) {
    return new SlopeLine(NONE, rise(face), -1);
  }

  final SlopeLine right(int face) {
    return new SlopeLine(NONE, rise(face), 1);
  }

  static Vec2 p(double x, double y) {
    return new Vec2(x, y);
  }
}
