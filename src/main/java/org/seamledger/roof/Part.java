package org.seamledger.roof;

import java.util.List;
import org.seamledger.element.Category;
import org.seamledger.element.Element;
import org.seamledger.element.Opening;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Solid;

/** An element with its solid and box at hand, so that neither is made twice. */
record Part(Element element, Solid solid, Box3 box) {

  /** An opening that ends this little below the top (metres) goes through it. */
  private static final double AT_THE_TOP = 0.002;

  /** A roof element: its openings are taken away. */
  static Part roof(Element e) {
    return new Part(e, e.solid(), e.bounds());
  }

  /**
   * Anything else. A flashing line runs on under the windows and doors of a wall, so its openings stay closed; but openings that take its
   * top away, with nothing in them, give it its shape.
   */
  static Part neighbour(Element e) {
    List<Solid> body = e.category() == Category.WALL ? e.body().stream().map(Part::asWall).toList() : e.body();
    Solid whole = body.size() == 1 ? body.get(0) : new Solid.Union(body);
    Box3 box = e.bounds();
    List<Solid> cuts = e.category() != Category.WALL ? List.of() : e.openings().stream()
        .filter(o -> !o.isFilled() && bounds(o).maxZ() >= box.maxZ() - AT_THE_TOP).flatMap(o -> o.body().stream()).toList();
    return new Part(e, cuts.isEmpty() ? whole : new Solid.Difference(whole, new Solid.Union(cuts)), box);
  }

  /** The triangles that bound the element, but for what its openings take away; null where it is more than these. */
  Mesh mesh() {
    Solid whole = solid instanceof Solid.Difference cut ? cut.body() : solid;
    return whole instanceof Mesh mesh ? mesh : null;
  }

  private static Solid asWall(Solid solid) {
    return solid instanceof Mesh mesh ? mesh.asWall() : solid;
  }

  private static Box3 bounds(Opening o) {
    return o.body().stream().map(Solid::bounds).reduce(Box3.EMPTY, Box3::union);
  }

  String id() {
    return element.globalId();
  }

  /** The same element of the same model is the same part; comparing bodies would be dear. */
  @Override
  public boolean equals(Object o) {
    return this == o;
  }

  @Override
  public int hashCode() {
    return element.globalId().hashCode();
  }
}
