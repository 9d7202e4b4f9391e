package org.seamledger.ifc.placement;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.seamledger.finding.Code;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;
import org.seamledger.ifc.entity.Units;
import org.seamledger.site.MapConversion;
import org.seamledger.step.Value;

/**
 * Where a model says that it lies in a map: IfcMapConversion and IfcMapConversionScaled, IfcRigidOperation (IFC4X3), and in IFC2X3 the
 * property sets ePset_MapConversion and ePset_ProjectedCRS on the project or the site.
 *
 * <p>Eastings, northings and height are in the map's unit, and where the reference system states none, in the project's. Scale converts the
 * project's unit to the map's. Writers often leave it out, or write its inverse; whichever reading makes a metre of the model a metre of
 * the map within 1 % is taken, the standard's first.
 */
public final class MapConversions {

  /** Grid factors differ from 1 by far less than this. */
  private static final double GRID = 0.01;

  private final Model model;

  private MapConversions(Model model) {
    this.model = model;
  }

  /** The model's conversion; nothing, with a finding, where what it states can't be used. */
  public static Optional<MapConversion> of(Model model) {
    MapConversions reader = new MapConversions(model);
    try {
      Optional<MapConversion> stated = reader.operation();
      return stated.isPresent() ? stated : reader.propertySets();
    } catch (EntityProblem p) {
      return reader.unusable(p.getMessage());
    } catch (IllegalArgumentException x) {
      return reader.unusable(x.getMessage());
    }
  }

  private Optional<MapConversion> unusable(String why) {
    model.findings().add(Code.MAP_UNUSABLE, "The map conversion of " + model.name() + " can't be used: " + why + ".");
    return Optional.empty();
  }

  // ---- IFC4 and later

  private Optional<MapConversion> operation() {
    Entity best = null;
    for (String keyword : List.of("IFCMAPCONVERSION", "IFCMAPCONVERSIONSCALED", "IFCRIGIDOPERATION")) {
      for (long id : model.idsOf(keyword)) {
        Entity e = model.get(id);
        // Some writers give one to the plan's context, too, with other numbers.
        if (best == null || isOfModel(e) && !isOfModel(best)) {
          best = e;
        }
      }
    }
    if (best == null) {
      return Optional.empty();
    }
    Entity crs = best.optionalEntity(1);
    String name = crs == null ? "" : crs.text(0);
    double unit = crs != null && crs.is("IFCPROJECTEDCRS") && crs.has(6) ? Units.factor(crs.entity(6), new HashSet<>()) : best.metres();
    if (best.is("IFCRIGIDOPERATION")) {
      return Optional.of(rigid(best, crs, unit, name));
    }
    double k = scale(best.optionalNumber(7, 1), unit);
    boolean scaled = best.is("IFCMAPCONVERSIONSCALED");
    return Optional.of(new MapConversion(best.number(2) * unit, best.number(3) * unit, best.number(4) * unit, best.optionalNumber(5, 1),
        best.optionalNumber(6, 0), k * (scaled ? best.number(8) : 1), k * (scaled ? best.number(9) : 1), k * (scaled ? best.number(10) : 1),
        name));
  }

  private static boolean isOfModel(Entity operation) {
    Entity context = operation.optionalEntity(0);
    for (int i = 0; context != null && context.is("IFCGEOMETRICREPRESENTATIONSUBCONTEXT") && i < 10; i++) {
      context = context.optionalEntity(6);
    }
    return context != null && context.text(1).equalsIgnoreCase("Model");
  }

  private static MapConversion rigid(Entity e, Entity crs, double unit, String name) {
    if (crs != null && crs.is("IFCGEOGRAPHICCRS")
        || e.raw(2) instanceof Value.Typed t && t.keyword().equalsIgnoreCase("IFCPLANEANGLEMEASURE")) {
      throw EntityProblem.unsupported(e + ": it moves by angles on the globe, and no map projection is known here");
    }
    return MapConversion.of(e.number(2) * unit, e.number(3) * unit, e.optionalNumber(4, 0) * unit, 1, 0, 1, name);
  }

  /** Metres of map for a metre of model. */
  private double scale(double stated, double mapUnit) {
    if (!(stated > 0)) {
      throw EntityProblem.broken("its scale is " + stated);
    }
    double project = model.units().metres();
    double standard = stated * mapUnit / project;
    if (isGrid(standard)) {
      return standard;
    }
    if (isGrid(stated)) {
      model.findings().add(Code.MAP_SCALE, "The map conversion of " + model.name() + " has a scale of " + stated
          + " between different units; it was taken as if the units were converted besides.");
      return stated;
    }
    double inverse = mapUnit / project / stated;
    if (isGrid(inverse)) {
      model.findings().add(Code.MAP_SCALE, "The map conversion of " + model.name() + " has a scale of " + stated
          + ", the inverse of what its units ask for; it was turned round.");
      return inverse;
    }
    model.findings().add(Code.MAP_SCALE, "By the map conversion of " + model.name() + " a metre of the model is "
        + (float) standard + " m on the map.");
    return standard;
  }

  private static boolean isGrid(double k) {
    return Math.abs(k - 1) < GRID;
  }

  // ---- IFC2X3

  private Optional<MapConversion> propertySets() {
    Map<String, Entity> conversion = new TreeMap<>();
    Map<String, Entity> crs = new TreeMap<>();
    for (long id : model.idsOf("IFCPROPERTYSET")) {
      switch (name(id)) {
        case "EPSET_MAPCONVERSION" -> read(id, conversion);
        case "EPSET_PROJECTEDCRS" -> read(id, crs);
        default -> {
          // Nothing about maps.
        }
      }
    }
    if (!conversion.containsKey("EASTINGS") || !conversion.containsKey("NORTHINGS")) {
      return Optional.empty();
    }
    double unit = crs.containsKey("MAPUNIT") ? namedUnit(crs.get("MAPUNIT").text(2)) : model.units().metres();
    String name = crs.containsKey("NAME") ? crs.get("NAME").text(2) : conversion.containsKey("TARGETCRS")
        ? conversion.get("TARGETCRS").text(2) : "";
    return Optional.of(MapConversion.of(length(conversion, "EASTINGS", unit), length(conversion, "NORTHINGS", unit),
        length(conversion, "ORTHOGONALHEIGHT", unit), number(conversion, "XAXISABSCISSA", 1), number(conversion, "XAXISORDINATE", 0),
        scale(number(conversion, "SCALE", 1), unit), name));
  }

  private String name(long set) {
    return model.get(set).text(2).toUpperCase(Locale.ROOT);
  }

  private void read(long set, Map<String, Entity> values) {
    for (Entity property : model.get(set).entities(4)) {
      if (property.is("IFCPROPERTYSINGLEVALUE") && property.has(2)) {
        values.putIfAbsent(property.text(0).toUpperCase(Locale.ROOT), property);
      }
    }
  }

  /** A length property: a unit of its own goes before the map's. */
  private static double length(Map<String, Entity> values, String name, double mapUnit) {
    Entity property = values.get(name);
    if (property == null) {
      return 0;
    }
    return value(property) * (property.has(3) ? Units.factor(property.entity(3), new HashSet<>()) : mapUnit);
  }

  private static double number(Map<String, Entity> values, String name, double otherwise) {
    return values.containsKey(name) ? value(values.get(name)) : otherwise;
  }

  /** Numbers are sometimes written as text there. */
  private static double value(Entity property) {
    String text = property.text(2);
    if (text.isBlank()) {
      return property.number(2);
    }
    try {
      return Double.parseDouble(text.trim());
    } catch (NumberFormatException e) {
      throw property.mismatch(2, "a number");
    }
  }

  private static final Map<String, Double> UNIT_NAMES = unitNames();

  private static Map<String, Double> unitNames() {
    Map<String, Double> names = new HashMap<>();
    for (String metre : List.of("M", "METRE", "METER", "METRES", "METERS")) {
      names.put(metre, 1.0);
    }
    for (String milli : List.of("MM", "MILLIMETRE", "MILLIMETER", "MILLIMETRES", "MILLIMETERS")) {
      names.put(milli, 0.001);
    }
    for (String centi : List.of("CM", "CENTIMETRE", "CENTIMETER", "CENTIMETRES", "CENTIMETERS")) {
      names.put(centi, 0.01);
    }
    for (String foot : List.of("FT", "FOOT", "FEET", "INTERNATIONALFOOT")) {
      names.put(foot, 0.3048);
    }
    for (String foot : List.of("USFT", "FTUS", "USSURVEYFOOT", "USSURVEYFEET", "SURVEYFOOT")) {
      names.put(foot, 1200.0 / 3937);
    }
    return names;
  }

  private static double namedUnit(String label) {
    Double metres = UNIT_NAMES.get(label.toUpperCase(Locale.ROOT).replaceAll("[^A-Z]", ""));
    if (metres == null) {
      throw EntityProblem.unsupported("the map unit '" + label + "' is not known");
    }
    return metres;
  }
}
