package org.seamledger.enrich;

/** How the parts of a junction or node look in a viewer: bars above or beside each other, so that each can be seen and picked. */
enum PartLook {
  METAL(0.120, 0.003, 0.060, new Bodies.Colour("seamledger metal", 0.42, 0.47, 0.50)),
  CLOSURE(0.030, 0.030, 0.018, new Bodies.Colour("seamledger closure", 0.78, 0.62, 0.30)),
  SEALANT(0.022, 0.006, 0.040, new Bodies.Colour("seamledger sealant", 0.12, 0.40, 0.36)),
  FASTENER(0.008, 0.012, 0.070, new Bodies.Colour("seamledger fastener", 0.66, 0.23, 0.17)),
  NODE_METAL(0.100, 0.100, 0, METAL.bar.colour()), NODE_SEALANT(0.030, 0.030, 0.070, SEALANT.bar.colour()),
  NODE_FASTENER(0.012, 0.012, 0.095, FASTENER.bar.colour());

  private final Bodies.Bar bar;

  PartLook(double widthM, double heightM, double liftM, Bodies.Colour colour) {
    this.bar = new Bodies.Bar(widthM, heightM, liftM, colour);
  }

  Bodies.Bar bar() {
    return bar;
  }
}
