package org.seamledger.export.section;

import java.util.List;
import org.seamledger.geometry.Vec2;

/** The composition of a round penetration. */
final class PipeSection extends SectionComposer {

  private final double radius;
  /** From the axis to the pipe's side along the slope. */
  private final double half;
  /** From the axis to the fasteners of the boot's flange along the slope. */
  private final double ring;
  private final double edge;
  private final boolean plated;
  /** Top of the plate above the panel, 0 without one. */
  private final double plate;
  private final double plateEnd;
  /** Top of the boot's cone. */
  private final double high;
  private final double to;

  PipeSection(SectionComposer of) {
    super(of);
    double measured = detailed.junction().junction().facts().number("diameterM") * 1000;
    radius = (Double.isNaN(measured) ? 100 : measured) / 2;
    half = radius / Math.cos(Math.toRadians(rise(0)));
    ring = half + SectionParts.mm(system.pipes().fastenerCircleMargin());
    edge = ring + parts.tapeWidth / 2 + 6;
    plated = scene.has("plate");
    plate = plated ? parts.bed("plate") + g * 0.6 : 0;
    plateEnd = edge + 2.2 * parts.tapeWidth + 30;
    high = new SlopeLine(NONE, rise(0), 1).at(half, bootHeight()).v() + 52;
    to = (plated ? plateEnd : edge) + 120;
  }

  private double bootHeight() {
    return plate + parts.bed("boot");
  }

  void pipe() {
    SlopeLine up = new SlopeLine(NONE, rise(0), 1);
    SlopeLine down = new SlopeLine(NONE, -rise(0), -1);
    for (SlopeLine on : List.of(down, up)) {
      bootLeg(on);
      if (plated) {
        plateLeg(on);
      }
      pan(on);
      parts.deck(on, half + 6 + room(), to, 2 * g);
    }
    scene.dimension(up.at(half, 0), up.at(half + room(), 0), up.up().times(-52),
        "room for the panel's movement here " + scene.units().least(room() / 1000));
    scene.area("pipe", List.of(p(-radius, -70 - half), p(radius, -70 - half), p(radius, high + 70), p(-radius, high + 70)));
    scene.line("axis", p(0, -85 - half), p(0, high + 85));
    scene.dimension(p(-radius, high + 50), p(radius, high + 50), p(0, 0), "⌀ " + parts.length(2 * radius));
    scene.label("pipe", p(radius * 0.6, high + 36));
  }

  /** Room that the panel needs to move past the pipe: its own movement there, or else the system's gap. */
  private double room() {
    return cut.pipeRoomM().isPresent() ? Math.max(1, cut.pipeRoomM().getAsDouble() * 1000)
        : SectionParts.mm(system.panel().movementGap());
  }

  /** The pan on one side: above a plate it lies on it. */
  private void pan(SlopeLine on) {
    if (plated && on.direction() > 0) {
      parts.panel(on.lifted(plate + parts.bed("plate")), edge + 6, to, slope(0));
    } else {
      parts.panel(on, plated ? edge + 6 : half + room(), to, on.direction() > 0 ? slope(0) : "");
    }
  }

  /** One side of the boot with its flange, tape, clamp and bead. */
  private void bootLeg(SlopeLine on) {
    double side = on.direction();
    double h = bootHeight();
    List<Vec2> leg = List.of(on.at(edge, h), on.at(half + 9, h), p(side * (radius + g), high), p(side * (radius + g), high + 16));
    scene.metal("boot", leg);
    parts.backUp(on, half + 6 + room(), edge + 8);
    scene.sealPlace("boot", List.of(parts.tape(on, ring, plate)));
    scene.screwPlace("boot", on.at(ring, h), on.at(ring, -1.4 * g));
    scene.metal("clamp", List.of(p(side * (radius + 2.4 * g), high + 3), p(side * (radius + 2.4 * g), high + 13)));
    double bead = SectionParts.mm(system.bead().clampSize());
    scene.sealPlace("clamp",
        List.of(List.of(p(side * radius, high + 16), p(side * (radius + bead), high + 16), p(side * radius, high + 16 + bead))));
  }

  /** The plate, over the pan below and under the pan above, tape between them. */
  private void plateLeg(SlopeLine on) {
    double fastener = plateEnd - parts.tapeWidth / 2 - 4;
    boolean above = on.direction() > 0;
    double tape = above ? plate : 0;
    double head = above ? plate + parts.bed("plate") : plate;
    scene.sealPlace("plate", List.of(parts.tape(on, fastener, tape), parts.tape(on, fastener - parts.tapeWidth - 5, tape)));
    scene.screwPlace("plate", on.at(fastener, head), on.at(fastener, -1.4 * g));
    scene.metal("plate", List.of(on.at(plateEnd, plate), on.at(half + 5, plate)));
  }
}
