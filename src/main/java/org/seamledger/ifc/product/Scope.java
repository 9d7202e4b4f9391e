package org.seamledger.ifc.product;

import org.seamledger.ifc.entity.Model;

/** One model with what is needed to make elements of it. */
public record Scope(Model model, Relations relations, Shapes shapes, Flashings flashings) {

  public static Scope of(Model model) {
    return new Scope(model, new Relations(model), new Shapes(model), Flashings.of(model));
  }

  /** The same model for another thread: {@link Model#fork}. */
  Scope fork() {
    Model own = model.fork();
    return new Scope(own, relations, shapes.on(own), flashings.on(own));
  }

  /** Class of an instance as an element, or null where it is none, or one that is left out. */
  public ElementClass classOf(long id) {
    return ElementClass.of(model.keywordOf(id));
  }

  /** GlobalId of the nearest whole that is an element, or the empty string. */
  public String whole(long id) {
    for (long up : relations.ancestors(id)) {
      if (classOf(up) != null) {
        return model.get(up).text(0);
      }
    }
    return "";
  }
}
