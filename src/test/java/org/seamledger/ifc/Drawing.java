package org.seamledger.ifc;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.seamledger.element.Building;
import org.seamledger.element.Element;
import org.seamledger.geometry.Box3;
import org.seamledger.geometry.Mesh;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.SectionSide;
import org.seamledger.geometry.Solid;
import org.seamledger.geometry.Vec3;
import org.seamledger.ifc.entity.IfcInput;
import org.seamledger.progress.Progress;
import org.seamledger.source.ByteArrayChannel;
import org.seamledger.step.StepFile;

/** Writes small models, instance by instance, and reads them back. */
public final class Drawing {

  private final String schema;
  private final List<String> lines = new ArrayList<>();
  private final List<String> units = new ArrayList<>();
  private int last;
  private int roofs;
  private String context;

  private Drawing(String schema) {
    this.schema = schema;
  }

  /** A model in metres and radians. */
  public static Drawing ifc(String schema) {
    return new Drawing(schema).unit("IFCSIUNIT(*,.LENGTHUNIT.,$,.METRE.)");
  }

  public static Drawing ifc4() {
    return ifc("IFC4");
  }

  /** A model whose length unit is written otherwise. */
  public static Drawing inUnit(String schema, String unit) {
    return new Drawing(schema).unit(unit);
  }

  public static Drawing withoutUnits(String schema) {
    return new Drawing(schema);
  }

  public Drawing unit(String unit) {
    units.add(add(unit));
    return this;
  }

  /** Adds an instance; {@code %s} are filled in order. Gives its reference. */
  public String add(String text, Object... parameters) {
    lines.add("#" + ++last + "=" + String.format(Locale.ROOT, text, parameters) + ";");
    return "#" + last;
  }

  public static String number(double d) {
    String s = Double.toString(d);
    return s.contains(".") ? s : s.replace("E", ".E");
  }

  public static String numbers(double... d) {
    return java.util.Arrays.stream(d).mapToObj(Drawing::number).collect(Collectors.joining(",", "(", ")"));
  }

  public static String list(List<String> references) {
    return "(" + String.join(",", references) + ")";
  }

  public static String list(String... references) {
    return list(List.of(references));
  }

  public String point(double... xyz) {
    return add("IFCCARTESIANPOINT(%s)", numbers(xyz));
  }

  public String direction(double... xyz) {
    return add("IFCDIRECTION(%s)", numbers(xyz));
  }

  /** IfcAxis2Placement3D at a point, upright. */
  public String at(double x, double y, double z) {
    return add("IFCAXIS2PLACEMENT3D(%s,$,$)", point(x, y, z));
  }

  public String axes(String point, String z, String x) {
    return add("IFCAXIS2PLACEMENT3D(%s,%s,%s)", point, z, x);
  }

  /** A polyline; give the first point again to close it. */
  public String polyline(double[]... points) {
    return add("IFCPOLYLINE(%s)", list(java.util.Arrays.stream(points).map(this::point).toList()));
  }

  public static double[] p(double... xyz) {
    return xyz;
  }

  public String closedProfile(String curve) {
    return add("IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$,%s)", curve);
  }

  public String rectangle(double x, double y) {
    return add("IFCRECTANGLEPROFILEDEF(.AREA.,$,%s,%s,%s)", add("IFCAXIS2PLACEMENT2D(%s,$)", point(0, 0)), number(x), number(y));
  }

  public String extruded(String profile, double depth) {
    return add("IFCEXTRUDEDAREASOLID(%s,%s,%s,%s)", profile, at(0, 0, 0), direction(0, 0, 1), number(depth));
  }

  private String context() {
    if (context == null) {
      context = add("IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-5,%s,$)", at(0, 0, 0));
    }
    return context;
  }

  /** A body of the given representation type. */
  public String shape(String type, String... items) {
    String representation = add("IFCSHAPEREPRESENTATION(%s,'Body','%s',%s)", context(), type, list(items));
    return add("IFCPRODUCTDEFINITIONSHAPE($,$,%s)", list(representation));
  }

  public String placement(String relativeTo, String axes) {
    return add("IFCLOCALPLACEMENT(%s,%s)", relativeTo, axes);
  }

  /** An IfcRoof with these items for a body. */
  public String roof(String... items) {
    return product("IFCROOF", placement("$", at(0, 0, 0)), shape("SolidModel", items), ",$,.NOTDEFINED.");
  }

  public String product(String keyword, String placement, String shape, String rest) {
    return add("%s('%s',$,'','',$,%s,%s%s)", keyword, id(), placement, shape, rest);
  }

  /** A valid GlobalId, another one each time. */
  public String id() {
    return String.format(Locale.ROOT, "0%021d", ++roofs);
  }

  public String text() {
    List<String> all = new ArrayList<>(lines);
    String assignment = units.isEmpty() ? "$" : "#" + (last + 1);
    if (!units.isEmpty()) {
      all.add("#" + (last + 1) + "=IFCUNITASSIGNMENT(" + list(units) + ");");
    }
    all.add("#" + (last + 2) + "=IFCPROJECT('0Project00000000000000',$,'P',$,$,$,$," + (context == null ? "$" : list(context)) + ","
        + assignment + ");");
    return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\nFILE_NAME('','',(''),(''),'','','');\nFILE_SCHEMA(('" + schema
        + "'));\nENDSEC;\nDATA;\n" + String.join("\n", all) + "\nENDSEC;\nEND-ISO-10303-21;\n";
  }

  public Building read() {
    return read(text());
  }

  public static Building read(String text) {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  public static Building read(byte[] text) {
    try (StepFile file = StepFile.open(new ByteArrayChannel(text), "drawing.ifc", Progress.NONE)) {
      return IfcReader.read(List.of(new IfcInput(file, "drawing.ifc")), Progress.NONE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The body of the one roof, which must have been read without a finding. */
  public Solid body() {
    Building b = read();
    assertThat(b.findings()).isEmpty();
    assertThat(b.roofs()).hasSize(1);
    Element roof = b.roofs().get(0);
    return roof.body().size() == 1 ? roof.body().get(0) : new Solid.Union(roof.body());
  }

  /** Volume by summing level sections at the middles of thin slices; exact for upright prisms, good to about 1e-4 for others. */
  public static double volume(Solid solid) {
    int slices = solid instanceof Mesh m && m.triangleCount() > 5000 ? 24 : 120;
    Box3 b = solid.bounds();
    Region window = Region.rectangle(b.minX() - 1, b.minY() - 1, b.maxX() + 1, b.maxY() + 1);
    double h = (b.maxZ() - b.minZ()) / slices;
    double volume = 0;
    for (int i = 0; i < slices; i++) {
      Plane plane = Plane.through(new Vec3(0, 0, b.minZ() + (i + 0.5) * h), Vec3.Z);
      volume += solid.section(plane, 1e-7, SectionSide.BELOW, window).area() * h;
    }
    return volume;
  }

  /** Area of the level section at a height. */
  public static double sectionArea(Solid solid, double z) {
    Box3 b = solid.bounds();
    Region window = Region.rectangle(b.minX() - 1, b.minY() - 1, b.maxX() + 1, b.maxY() + 1);
    return solid.section(Plane.through(new Vec3(0, 0, z), Vec3.Z), 1e-7, SectionSide.BELOW, window).area();
  }
}
