package org.seamledger.roof;

import java.util.List;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Solid;

/** An element with its solid and box at hand, so that neither is made twice. */
record Part(Element element, Solid solid, Box3 box) {

  /** A roof that is modelled as a sheet is given this thickness, metres: enough for it to cut what it rests on. */
  private static final double SHEET = 0.05;

  /** A roof element: its openings are taken away; sheets get a body. */
  static Part roof(Element e) {
    Element solid = new Element(e.globalId(), e.ifcClass(), e.category(), e.name(), e.model(),
        e.body().stream().map(Part::withBody).toList(), e.openings(), e.whole(), e.properties());
    return new Part(e, solid.solid(), e.bounds());
  }

  private static Solid withBody(Solid s) {
    if (s instanceof Mesh mesh) {
      return mesh.isClosed() ? mesh : mesh.thickened(SHEET);
    }
    return s instanceof Solid.Union union ? new Solid.Union(union.parts().stream().map(Part::withBody).toList()) : s;
  }

  /** Anything else: a flashing line runs on under the windows and doors of a wall, so its openings stay closed. */
  static Part neighbour(Element e) {
    List<Solid> body = e.body();
    return new Part(e, body.size() == 1 ? body.get(0) : new Solid.Union(body), e.bounds());
  }

  String id() {
    return element.globalId();
  }
}
