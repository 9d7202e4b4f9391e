package org.seamledger.ifc;

/** One model with what is needed to make elements of it. */
record Scope(Model model, Relations relations, Shapes shapes, Flashings flashings) {

  static Scope of(Model model) {
    return new Scope(model, new Relations(model), new Shapes(model), Flashings.of(model));
  }

  /** Class of an instance as an element, or null where it is none, or one that is left out. */
  ElementClass classOf(long id) {
    return ElementClass.of(model.keywordOf(id));
  }

  /** GlobalId of the nearest whole that is an element, or the empty string. */
  String whole(long id) {
    for (long up : relations.ancestors(id)) {
      if (classOf(up) != null) {
        return model.get(up).text(0);
      }
    }
    return "";
  }
}
