package org.seamledger.samples;

import org.seamledger.geometry.Vec3;

/**
 * How a house is written.
 *
 * @param make which elements carry the roof
 * @param cut edges of slabs; shapes that are cut by vertical planes have plumb ones in any case
 * @param offset where the house's origin lies in the world, metres
 * @param turnDegrees about the vertical, counter-clockwise
 * @param mirrored left for right, before the turn
 * @param shuffle seed for the order of instances; 0 keeps the order of writing
 */
public record Form(Schema schema, Unit unit, Shape shape, Make make, RoofPlane.Cut cut, Placing placing, Vec3 offset, double turnDegrees,
    boolean mirrored, long shuffle) {

  /** The exchange schema. */
  public enum Schema {
    IFC2X3("IFC2X3"), IFC4("IFC4"), IFC4X3("IFC4X3_ADD2");

    final String identifier;

    Schema(String identifier) {
      this.identifier = identifier;
    }
  }

  /** The file's length unit. */
  public enum Unit {
    METRE(1, 9), MILLIMETRE(0.001, 6), FOOT(0.3048, 10), INCH(0.0254, 9);

    final double metres;
    final int decimals;

    Unit(double metres, int decimals) {
      this.metres = metres;
      this.decimals = decimals;
    }
  }

  /** The kind of representation of the roof; walls and other things follow where it makes sense. */
  public enum Shape {
    /** Profile in the slope's plane, extruded along the cut. */
    SWEPT,
    /** Upright prism on the plan, clipped by the planes of the top and the underside. */
    CLIPPED,
    /** A box clipped by a plane for every edge, for the top and for the underside; outlines that are not convex as CLIPPED. */
    BOX_CLIPPED,
    /** As CLIPPED, the top by a half-space with a polygonal boundary. */
    BOUNDED_CLIPPED,
    BREP,
    /** IFC4 on. */
    POLYGONS,
    /** IFC4 on. */
    TRIANGLES,
    /** IFC4 on. */
    ADVANCED_BREP,
    /** The top surface alone, without thickness. */
    SHEET,
    /** A mapped swept solid. */
    MAPPED,
    MAPPED_MIRRORED,
    /** Mapped, stored at half size. */
    MAPPED_SCALED,
    /** Mapped, stretched differently in the plan and in height. */
    MAPPED_STRETCHED;

    public boolean isIn(Schema schema) {
      return schema != Schema.IFC2X3 || this != POLYGONS && this != TRIANGLES && this != ADVANCED_BREP;
    }

    boolean isMapped() {
      return name().startsWith("MAPPED");
    }
  }

  /** Which elements carry the roof. */
  public enum Make {
    /** One IfcRoof with all bodies in its own representation. */
    ROOF,
    /** One IfcRoof that aggregates a roof slab for each plane. */
    ROOF_OF_SLABS,
    /** Roof slabs alone. */
    SLABS,
    /** Roofing coverings alone. */
    COVERINGS
  }

  /** Where offset and turn are kept. */
  public enum Placing {
    /** In the placement of the site. */
    SITE,
    /** In the placement of every element: large coordinates there, small ones in the geometry. */
    ELEMENT,
    /** In the coordinates of the geometry; all placements are the identity. */
    RAW
  }

  /** Metre, IFC4, slabs of an IfcRoof swept and plumb-cut, at the origin. */
  public static final Form PLAIN = new Form(Schema.IFC4, Unit.METRE, Shape.SWEPT, Make.ROOF_OF_SLABS, RoofPlane.Cut.PLUMB, Placing.SITE,
      Vec3.ZERO, 0, false, 0);

  public Form as(Schema other) {
    return new Form(other, unit, shape, make, cut, placing, offset, turnDegrees, mirrored, shuffle);
  }

  public Form in(Unit other) {
    return new Form(schema, other, shape, make, cut, placing, offset, turnDegrees, mirrored, shuffle);
  }

  public Form by(Shape other) {
    return new Form(schema, unit, other, make, cut, placing, offset, turnDegrees, mirrored, shuffle);
  }

  public Form made(Make other) {
    return new Form(schema, unit, shape, other, cut, placing, offset, turnDegrees, mirrored, shuffle);
  }

  public Form cut(RoofPlane.Cut other) {
    return new Form(schema, unit, shape, make, other, placing, offset, turnDegrees, mirrored, shuffle);
  }

  public Form at(Placing other, double x, double y, double z) {
    return new Form(schema, unit, shape, make, cut, other, new Vec3(x, y, z), turnDegrees, mirrored, shuffle);
  }

  public Form turned(double degrees) {
    return new Form(schema, unit, shape, make, cut, placing, offset, degrees, mirrored, shuffle);
  }

  public Form mirroredLeftRight() {
    return new Form(schema, unit, shape, make, cut, placing, offset, turnDegrees, !mirrored, shuffle);
  }

  public Form shuffled(long seed) {
    return new Form(schema, unit, shape, make, cut, placing, offset, turnDegrees, mirrored, seed);
  }
}
