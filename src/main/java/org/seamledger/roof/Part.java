package org.seamledger.roof;

import java.util.List;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Solid;

/** An element with its solid and box at hand, so that neither is made twice. */
record Part(Element element, Solid solid, Box3 box) {

  /** A roof element: its openings are taken away. */
  static Part roof(Element e) {
    return new Part(e, e.solid(), e.bounds());
  }

  /** Anything else: a flashing line runs on under the windows and doors of a wall, so its openings stay closed. */
  static Part neighbour(Element e) {
    List<Solid> body = e.body();
    return new Part(e, body.size() == 1 ? body.get(0) : new Solid.Union(body), e.bounds());
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
