package org.seamledger.export.section;

import java.util.List;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.export.sheet.DrawingUnits;
import org.seamledger.quantity.RoofSystem;

/** Which composition shows a kind's detail: where faces, walls and parts stand to each other. Lengths in millimetres. */
final class SectionFamilies extends SectionComposer {

  private SectionFamilies(SectionScene scene, RoofSystem system, DetailedJunction detailed, SectionCut cut) {
    super(scene, system, detailed, cut);
  }

  /** Composes the scene of a junction, with drawn sheets kept {@code gap} apart. */
  public static SectionScene compose(RoofSystem system, DetailedJunction detailed, SectionCut cut, double gap, DrawingUnits units) {
    SectionScene scene = new SectionScene(detailed.detail(), gap, units);
    new SectionFamilies(scene, system, detailed, cut).compose();
    return scene;
  }

  private void compose() {
    boolean pair = cut.faces().size() > 1;
    if (detailed.detail().metal().isEmpty()) {
      bare();
      return;
    }
    switch (detailed.junction().type().section()) {
      case RIDGE -> new FaceSections(this).ridge(pair);
      case VALLEY -> new FaceSections(this).valley(pair);
      case GUTTER -> new FaceSections(this).gutter(pair);
      case TRANSITION, STEP -> new FaceSections(this).transition(pair);
      case LAP -> new FieldSections(this).lap();
      case WALL, SIDEWALL -> new WallSections(this).wall();
      case CURB_UPSLOPE, CURB_SIDE, CURB_DOWNSLOPE -> new WallSections(this).curb();
      case PIPE -> new PipeSection(this).pipe();
      case RAKE -> new EdgeSections(this).rake();
      case EAVE -> new EdgeSections(this).eave();
      case HIGH_EDGE -> new EdgeSections(this).highEdge();
    }
  }

  private void bare() {
    boolean pair = cut.faces().size() > 1;
    List<SlopeLine> faces = pair ? List.of(left(0), right(1)) : List.of(right(0));
    for (int i = 0; i < faces.size(); i++) {
      SlopeLine on = faces.get(i);
      scene.line("panel", on.at(0, 0), on.at(260, 0));
      parts.deck(on, 0, 260, 2 * g);
      scene.note(on.at(150, -60), on.degrees() * on.direction(), slope(i));
    }
    String against = detailed.junction().junction().facts().word("against");
    if (!pair && (against.equals("wall") || against.equals("penetration"))) {
      parts.wall(against.equals("wall") ? "wall" : "curb", -60, 220);
    }
    scene.label(detailed.detail().title(), faces.get(faces.size() - 1).at(120, 0));
  }
}
