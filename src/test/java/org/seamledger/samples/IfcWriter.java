package org.seamledger.samples;

import static org.seamledger.samples.StepText.ratio;
import static org.seamledger.samples.StepText.word;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.geometry.Transform;
import org.seamledger.geometry.Vec3;
import org.seamledger.samples.Form.Placing;
import org.seamledger.samples.Form.Schema;
import org.seamledger.samples.Form.Shape;
import org.seamledger.samples.StepText.Ref;

/** Writes a house as the text of an IFC file. */
public final class IfcWriter {

  /** Elevation of the storey that holds the elements, so that placements nest with a shift. */
  private static final double STOREY = 2.4;

  private final House house;
  private final Form form;
  private final Optional<Georeference> map;
  private final StepText step = new StepText();
  private final BodyWriter bodies;
  private final FaceWriter faces;
  /** From the house's coordinates to those that the geometry is written in. */
  private final Transform world;
  private Ref owner;
  private Ref context;
  private Ref storey;
  private Ref storeyPlacement;
  private Vec3 storeyOrigin;

  private IfcWriter(House house, Form form, Optional<Georeference> map) {
    this.house = house;
    this.form = form;
    this.map = map;
    this.bodies = new BodyWriter(step, form);
    this.faces = new FaceWriter(step, form, bodies);
    Transform mirror = form.mirrored() ? new Transform(-1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0) : Transform.IDENTITY;
    this.world = form.placing() == Placing.SITE ? mirror
        : Transform.translation(form.offset()).after(turn(form.turnDegrees())).after(mirror);
  }

  /**
   * The text of the file.
   *
   * @throws IllegalArgumentException if the schema has no such representation
   */
  public static String text(House house, Form form) {
    return text(house, form, Optional.empty());
  }

  /**
   * The same, with the place in a map: a map conversion, and in IFC2X3 the property sets that stand for one.
   *
   * @throws IllegalArgumentException if the schema has no such representation
   */
  public static String text(House house, Form form, Optional<Georeference> map) {
    if (!form.shape().isIn(form.schema())) {
      throw new IllegalArgumentException(form.schema() + " has no " + form.shape());
    }
    return new IfcWriter(house, form, map).write();
  }

  /** Writes the file and returns its path. */
  public static Path write(House house, Form form, Path file) {
    try {
      return Files.writeString(file, text(house, form), StandardCharsets.US_ASCII);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Transform turn(double degrees) {
    double c = StrictMath.cos(StrictMath.toRadians(degrees));
    double s = StrictMath.sin(StrictMath.toRadians(degrees));
    return new Transform(c, -s, 0, 0, s, c, 0, 0, 0, 0, 1, 0);
  }

  private String write() {
    owner = form.schema() == Schema.IFC2X3 ? owner() : null;
    storey = spatialStructure();
    List<Ref> contained = new ArrayList<>(roof());
    List<Ref> rooms = new ArrayList<>();
    house.things().forEach(t -> (t.role() == Thing.Role.SPACE ? rooms : contained).add(thing(t)));
    if (!rooms.isEmpty()) {
      aggregate("rooms", storey, rooms);
    }
    step.add("IFCRELCONTAINEDINSPATIALSTRUCTURE", id("contents"), owner, null, null, contained, storey);
    StringBuilder text = new StringBuilder(header());
    step.lines(form.shuffle()).forEach(l -> text.append(l).append('\n'));
    return text.append("ENDSEC;\nEND-ISO-10303-21;\n").toString();
  }

  private String header() {
    return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('ViewDefinition [CoordinationView]'),'2;1');\n"
        + "FILE_NAME(" + StepText.text(house.name() + ".ifc") + ",'2026-01-01T00:00:00',(''),(''),"
        + "'seamledger sample generator','seamledger sample generator','');\n"
        + "FILE_SCHEMA(('" + form.schema().identifier + "'));\nENDSEC;\nDATA;\n";
  }

  private String id(String part) {
    return GlobalIds.of(house.name() + "/" + part);
  }

  // ---- what holds the elements ----

  private Ref owner() {
    Ref person = step.add("IFCPERSON", null, "Estate office", null, null, null, null, null, null);
    Ref organization = step.add("IFCORGANIZATION", null, "Estate office", null, null, null);
    Ref application = step.add("IFCAPPLICATION", organization, "1", "seamledger sample generator", "seamledger-samples");
    Ref user = step.add("IFCPERSONANDORGANIZATION", person, organization, null);
    return step.add("IFCOWNERHISTORY", user, application, null, word("ADDED"), null, null, null, 1767225600);
  }

  private Ref spatialStructure() {
    Ref origin = bodies.frame(Vec3.ZERO);
    Ref whole = step.add("IFCGEOMETRICREPRESENTATIONCONTEXT", null, "Model", 3, ratio(1e-6), origin, null);
    context = step.add("IFCGEOMETRICREPRESENTATIONSUBCONTEXT", "Body", "Model", StepText.DERIVED, StepText.DERIVED, StepText.DERIVED,
        StepText.DERIVED, whole, null, word("MODEL_VIEW"), null);
    Ref project = step.add("IFCPROJECT", id("project"), owner, house.name(), null, null, null, null, List.of(whole), units());
    map.ifPresent(m -> place(m, whole, project));
    boolean bySite = form.placing() == Placing.SITE;
    Ref sitePlacement = step.add("IFCLOCALPLACEMENT", null, bySite
        ? bodies.frame(form.offset(), Vec3.Z, turn(form.turnDegrees()).applyDirection(Vec3.X)) : origin);
    Ref buildingPlacement = step.add("IFCLOCALPLACEMENT", sitePlacement, origin);
    storeyOrigin = bySite ? new Vec3(0, 0, STOREY) : Vec3.ZERO;
    storeyPlacement = step.add("IFCLOCALPLACEMENT", buildingPlacement, bodies.frame(storeyOrigin));
    Ref site =
        step.add("IFCSITE", id("site"), owner, "Site", null, null, sitePlacement, null, null, word("ELEMENT"), null, null, null, null,
            null);
    Ref building = step.add("IFCBUILDING", id("building"), owner, house.name(), null, null, buildingPlacement, null, null, word("ELEMENT"),
        null, null, null);
    Ref roofStorey = step.add("IFCBUILDINGSTOREY", id("storey"), owner, "Roof", null, null, storeyPlacement, null, null, word("ELEMENT"),
        bodies.length(storeyOrigin.z()));
    aggregate("site", project, List.of(site));
    aggregate("building", site, List.of(building));
    aggregate("storey", building, List.of(roofStorey));
    return roofStorey;
  }

  /** The map's unit is the metre, whatever the file's. */
  private void place(Georeference m, Ref context, Ref project) {
    double c = StrictMath.cos(StrictMath.toRadians(m.turnDegrees()));
    double s = StrictMath.sin(StrictMath.toRadians(m.turnDegrees()));
    if (form.schema() == Schema.IFC2X3) {
      propertySet("ePset_ProjectedCRS", project, property("Name", new StepText.Typed("IFCLABEL", m.crs())),
          property("MapUnit", new StepText.Typed("IFCLABEL", "METRE")));
      propertySet("ePset_MapConversion", project, real("Eastings", m.at().x()), real("Northings", m.at().y()),
          real("OrthogonalHeight", m.at().z()), real("XAxisAbscissa", c), real("XAxisOrdinate", s), real("Scale", form.unit().metres));
      return;
    }
    Ref metre = step.add("IFCSIUNIT", StepText.DERIVED, word("LENGTHUNIT"), null, word("METRE"));
    Ref crs = step.add("IFCPROJECTEDCRS", m.crs(), null, null, null, null, null, metre);
    step.add("IFCMAPCONVERSION", context, crs, map(m.at().x()), map(m.at().y()), map(m.at().z()), ratio(c), ratio(s),
        ratio(form.unit().metres));
  }

  private static StepText.Number map(double metres) {
    return new StepText.Number(metres, 9);
  }

  private Ref real(String name, double value) {
    return property(name, new StepText.Typed("IFCREAL", ratio(value)));
  }

  private Ref property(String name, StepText.Typed value) {
    return step.add("IFCPROPERTYSINGLEVALUE", name, null, value, null);
  }

  private void propertySet(String name, Ref owner, Ref... properties) {
    Ref set = step.add("IFCPROPERTYSET", id(name), this.owner, name, null, List.of(properties));
    step.add("IFCRELDEFINESBYPROPERTIES", id("has " + name), this.owner, null, null, List.of(owner), set);
  }

  private void aggregate(String name, Ref whole, List<Ref> parts) {
    step.add("IFCRELAGGREGATES", id("aggregates " + name), owner, null, null, whole, parts);
  }

  private Ref units() {
    Ref angle = step.add("IFCSIUNIT", StepText.DERIVED, word("PLANEANGLEUNIT"), null, word("RADIAN"));
    return step.add("IFCUNITASSIGNMENT", List.of(lengthUnit(), angle));
  }

  private Ref lengthUnit() {
    Ref metre = step.add("IFCSIUNIT", StepText.DERIVED, word("LENGTHUNIT"),
        form.unit() == Form.Unit.MILLIMETRE ? word("MILLI") : null, word("METRE"));
    return switch (form.unit()) {
      case METRE, MILLIMETRE -> metre;
      case FOOT, INCH -> {
        Ref dimensions = step.add("IFCDIMENSIONALEXPONENTS", 1, 0, 0, 0, 0, 0, 0);
        Ref factor = step.add("IFCMEASUREWITHUNIT", new StepText.Typed("IFCLENGTHMEASURE", ratio(form.unit().metres)), metre);
        yield step.add("IFCCONVERSIONBASEDUNIT", dimensions, word("LENGTHUNIT"), form.unit().name(), factor);
      }
    };
  }

  // ---- elements ----

  private List<Ref> roof() {
    List<Ref> all = new ArrayList<>(house.roofs().isEmpty() ? List.of() : planes());
    house.shells().forEach(r -> all.add(shell(r)));
    return all;
  }

  /** A roof element by its faces; shapes that have none are written as a faceted solid. */
  private Ref shell(House.ShellRoof r) {
    List<Shell> bodies = r.shells().stream().map(b -> b.moved(world)).toList();
    Vec3 origin = origin(bodies.get(0));
    List<Shell> local = bodies.stream().map(b -> b.moved(Transform.translation(origin.negated()))).toList();
    boolean bySolids = !r.sheet() && form.shape() != Shape.SHEET;
    Ref shape = FaceWriter.usesFaces(form.shape()) && (bySolids || form.shape() == Shape.POLYGONS || form.shape() == Shape.TRIANGLES)
        ? shape(FaceWriter.typeName(form.shape()), local.stream().map(faces::byFaces).toList())
        : bySolids ? shape("Brep", local.stream().map(faces::brep).toList())
        : shape("SurfaceModel", local.stream().map(b -> faces.surface(b, form.make() == Form.Make.ROOF)).toList());
    Ref product = step.add("IFCPRODUCTDEFINITIONSHAPE", null, null, List.of(shape));
    boolean covering = form.make() == Form.Make.COVERINGS;
    boolean roof = form.make() == Form.Make.ROOF;
    return step.add(roof ? "IFCROOF" : covering ? "IFCCOVERING" : "IFCSLAB", id(r.name()), owner, r.name(), null, null, placement(origin),
        product, null, word(roof ? "NOTDEFINED" : covering ? "ROOFING" : "ROOF"));
  }

  private List<Ref> planes() {
    return switch (form.make()) {
      case ROOF -> List.of(roofAsOne());
      case ROOF_OF_SLABS -> List.of(roofOfSlabs());
      case SLABS -> house.roofs().stream().map(r -> roofElement(r, "IFCSLAB", "ROOF")).toList();
      case COVERINGS -> house.roofs().stream().map(r -> roofElement(r, "IFCCOVERING", "ROOFING")).toList();
    };
  }

  private Ref roofAsOne() {
    Vec3 origin = origin(body(house.roofs().get(0)));
    Ref placement = placement(origin);
    Ref shape = representation(house.roofs().stream().<Body>map(this::body).toList(), origin, true);
    Ref roof = step.add("IFCROOF", id("roof"), owner, "Roof", null, null, placement, shape, null, word("NOTDEFINED"));
    house.roofs().forEach(r -> openings(r, roof, placement, origin));
    return roof;
  }

  private Ref roofOfSlabs() {
    List<Ref> slabs = house.roofs().stream().map(r -> roofElement(r, "IFCSLAB", "ROOF")).toList();
    Ref roof = step.add("IFCROOF", id("roof"), owner, "Roof", null, null, placement(storeyOrigin), null, null, word("NOTDEFINED"));
    aggregate("roof", roof, slabs);
    return roof;
  }

  private Ref roofElement(RoofPlane r, String keyword, String type) {
    Extrusion body = body(r);
    Vec3 origin = origin(body);
    Ref placement = placement(origin);
    Ref element = step.add(keyword, id(r.name()), owner, r.name(), null, null, placement, representation(List.of(body), origin, true), null,
        word(type));
    openings(r, element, placement, origin);
    return element;
  }

  private Extrusion body(RoofPlane r) {
    boolean clipped = form.shape() == Shape.CLIPPED || form.shape() == Shape.BOX_CLIPPED || form.shape() == Shape.BOUNDED_CLIPPED;
    return r.body(clipped ? RoofPlane.Cut.PLUMB : form.cut()).moved(world);
  }

  private void openings(RoofPlane r, Ref element, Ref elementPlacement, Vec3 elementOrigin) {
    for (RoofPlane.Hole hole : r.openings()) {
      Body body = hole.body().moved(world);
      Vec3 origin = origin(body);
      Ref placement = form.placing() == Placing.RAW ? elementPlacement
          : step.add("IFCLOCALPLACEMENT", elementPlacement, bodies.frame(origin.minus(elementOrigin)));
      List<Object> p = root(hole.name(), placement, representation(List.of(body), origin, false));
      if (form.schema() != Schema.IFC2X3) {
        p.add(word("OPENING"));
      }
      Ref opening = step.add("IFCOPENINGELEMENT", p.toArray());
      step.add("IFCRELVOIDSELEMENT", id("voids " + hole.name()), owner, null, null, element, opening);
      if (hole.filling() != null) {
        step.add("IFCRELFILLSELEMENT", id("fills " + hole.name()), owner, null, null, opening, filling(hole.filling()));
      }
    }
  }

  private Ref filling(Thing t) {
    Ref window = thing(t);
    step.add("IFCRELCONTAINEDINSPATIALSTRUCTURE", id("contains " + t.name()), owner, null, null, List.of(window), storey);
    return window;
  }

  private Ref thing(Thing t) {
    List<Body> parts = t.bodies().stream().map(b -> b.moved(world)).toList();
    Vec3 origin = origin(parts.get(0));
    List<Object> p = root(t.name(), placement(origin), representation(parts, origin, false));
    Ref thing = step.add(ElementClasses.keyword(t.role(), form.schema()), ElementClasses.complete(p, t.role(), form.schema()).toArray());
    if (house.cutOf(t.name()) != null) {
      cut(t.name(), thing);
    }
    return thing;
  }

  private void cut(String name, Ref thing) {
    Body body = house.cutOf(name).moved(world);
    Vec3 origin = origin(body);
    List<Object> p = root("Opening in " + name, placement(origin), representation(List.of(body), origin, false));
    if (form.schema() != Schema.IFC2X3) {
      p.add(word("OPENING"));
    }
    step.add("IFCRELVOIDSELEMENT", id("voids " + name), owner, null, null, thing, step.add("IFCOPENINGELEMENT", p.toArray()));
  }

  /** The eight attributes that every element has. */
  private List<Object> root(String name, Ref placement, Ref shape) {
    List<Object> p = new ArrayList<>();
    p.add(id(name));
    p.add(owner);
    p.add(name);
    p.add(null);
    p.add(null);
    p.add(placement);
    p.add(shape);
    p.add(null);
    return p;
  }

  /** Where an element's own coordinates start, in the coordinates of {@link #world}. */
  private Vec3 origin(Body body) {
    return form.placing() == Placing.RAW ? Vec3.ZERO : body.anchor();
  }

  private Ref placement(Vec3 origin) {
    return form.placing() == Placing.RAW ? storeyPlacement
        : step.add("IFCLOCALPLACEMENT", storeyPlacement, bodies.frame(origin.minus(storeyOrigin)));
  }

  // ---- representations ----

  private Ref representation(List<Body> parts, Vec3 origin, boolean isRoof) {
    List<Body> local = parts.stream().map(b -> b.moved(Transform.translation(origin.negated()))).toList();
    boolean mapped = form.shape().isMapped() && local.stream().noneMatch(Shell.class::isInstance);
    Ref shape = mapped ? mapped(local) : shape(local, isRoof);
    return step.add("IFCPRODUCTDEFINITIONSHAPE", null, null, List.of(shape));
  }

  private Ref shape(List<Body> parts, boolean isRoof) {
    Shape s = form.shape();
    if (parts.stream().anyMatch(Shell.class::isInstance)) {
      return shape("SurfaceModel", parts.stream().map(b -> faces.surface(FaceWriter.shell(b), form.make() == Form.Make.ROOF)).toList());
    }
    if (FaceWriter.usesFaces(s)) {
      return shape(FaceWriter.typeName(s), parts.stream().map(faces::byFaces).toList());
    }
    if (isRoof && s == Shape.SHEET) {
      return shape("SurfaceModel", parts.stream().map(b -> faces.sheet((Extrusion) b)).toList());
    }
    if (isRoof && s != Shape.SWEPT) {
      return shape("Clipping", parts.stream().map(b -> clipped((Extrusion) b)).toList());
    }
    return shape("SweptSolid", parts.stream().map(bodies::swept).toList());
  }

  private Ref clipped(Extrusion body) {
    return switch (form.shape()) {
      case CLIPPED -> bodies.clipped(body);
      case BOX_CLIPPED -> bodies.boxClipped(body);
      case BOUNDED_CLIPPED -> bodies.boundedClipped(body);
      default -> throw new IllegalStateException();
    };
  }

  private Ref shape(String type, List<Ref> items) {
    return step.add("IFCSHAPEREPRESENTATION", context, "Body", type, items);
  }

  /** The bodies as swept solids in a map, stored so that the operator brings them to their place. */
  private Ref mapped(List<Body> parts) {
    Vec3 corner = new Vec3(1.5, -0.75, 0.25);
    Vec3 x = form.shape() == Shape.MAPPED_MIRRORED ? Vec3.X.negated() : Vec3.X;
    double plan = form.shape() == Shape.MAPPED_SCALED ? 2 : form.shape() == Shape.MAPPED_STRETCHED ? 1.6 : 1;
    double height = form.shape() == Shape.MAPPED_STRETCHED ? 0.8 : plan;
    Vec3 target = new Vec3(0.5, 0.25, -1);
    Transform operator = Transform.axes(target, x.times(plan), Vec3.Y.times(plan), Vec3.Z.times(height));
    // IfcRepresentationMap: "The MappingOrigin defines the coordinate system in which the MappedRepresentation is defined."
    Transform store = Transform.translation(corner.negated()).after(operator.inverse());
    List<Ref> items = parts.stream().map(b -> bodies.swept(b.moved(store))).toList();
    Ref map = step.add("IFCREPRESENTATIONMAP", bodies.frame(corner), shape("SweptSolid", items));
    Ref axisX = bodies.direction(x);
    Ref axisY = bodies.direction(Vec3.Y);
    Ref axisZ = bodies.direction(Vec3.Z);
    Ref to = form.shape() == Shape.MAPPED_STRETCHED
        ? step.add("IFCCARTESIANTRANSFORMATIONOPERATOR3DNONUNIFORM", axisX, axisY, bodies.point(target), ratio(plan), axisZ, ratio(plan),
            ratio(height))
        : step.add("IFCCARTESIANTRANSFORMATIONOPERATOR3D", axisX, axisY, bodies.point(target), ratio(plan), axisZ);
    return shape("MappedRepresentation", List.of(step.add("IFCMAPPEDITEM", map, to)));
  }
}
