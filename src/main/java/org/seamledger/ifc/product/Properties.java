package org.seamledger.ifc.product;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.ifc.entity.Entity;
import org.seamledger.ifc.entity.EntityProblem;
import org.seamledger.ifc.entity.Model;
import org.seamledger.ifc.entity.Units;
import org.seamledger.progress.Progress;
import org.seamledger.progress.SharedWork;
import org.seamledger.step.Value;

/** Property and quantity sets of a few elements as text: lengths in metres, areas in square metres, angles in degrees. */
public final class Properties {

  private static final MathContext DIGITS = new MathContext(12);

  private final Model model;

  private Properties(Model model) {
    this.model = model;
  }

  /**
   * Properties by {@code Set.Name} for each of these elements, read on several threads; where an element and its type both state one, the
   * element's holds.
   */
  public static Map<Long, SortedMap<String, String>> of(Model model, Set<Long> elements) {
    return new Properties(model).read(elements);
  }

  private Map<Long, SortedMap<String, String>> read(Set<Long> elements) {
    Map<Long, SortedMap<String, String>> all = new TreeMap<>();
    elements.forEach(id -> all.put(id, new TreeMap<>()));
    Map<Long, TreeSet<Long>> users = new TreeMap<>();
    model.eachReferences("IFCRELDEFINESBYPROPERTIES", (id, r) -> {
      for (int i = 0; i < r.size(); i++) {
        if (r.parameter(i) == 4 && elements.contains(r.target(i))) {
          for (int k = 0; k < r.size(); k++) {
            if (r.parameter(k) == 5) {
              users.computeIfAbsent(r.target(k), x -> new TreeSet<>()).add(r.target(i));
            }
          }
        }
      }
    });
    Map<Long, TreeSet<Long>> typeUsers = new TreeMap<>();
    model.eachReferences("IFCRELDEFINESBYTYPE", (id, r) -> {
      for (int i = 0; i < r.size(); i++) {
        if (r.parameter(i) == 4 && elements.contains(r.target(i))) {
          typeUsers.computeIfAbsent(r.first(5), x -> new TreeSet<>()).add(r.target(i));
        }
      }
    });
    List<SetOf> sets = new ArrayList<>();
    users.forEach((set, owners) -> sets.add(new SetOf(set, owners)));
    typeUsers.forEach((type, owners) -> typeSets(type).forEach(set -> sets.add(new SetOf(set, owners))));
    Iterator<SetOf> next = sets.iterator();
    SharedWork.each(sets, Progress.NONE, () -> new Properties(model.fork()), (own, set, progress) -> own.values(set.id()),
        values -> next.next().owners().forEach(id -> values.forEach(all.get(id)::putIfAbsent)));
    return all;
  }

  /** A property or quantity set, and the elements that have it. */
  private record SetOf(long id, Set<Long> owners) {
  }

  private List<Long> typeSets(long type) {
    try {
      Entity e = model.get(type);
      return e.has(5) ? e.references(5) : List.of();
    } catch (EntityProblem p) {
      return List.of();
    }
  }

  private Map<String, String> values(long set) {
    Map<String, String> values = new TreeMap<>();
    try {
      Entity e = model.get(set);
      int members = e.is("IFCPROPERTYSET") ? 4 : e.is("IFCELEMENTQUANTITY") ? 5 : -1;
      if (members >= 0) {
        for (Entity member : e.entities(members)) {
          add(values, e.text(2), member);
        }
      }
    } catch (EntityProblem p) {
      model.findings().add(p, "A property set of a roof");
    }
    return values;
  }

  private void add(Map<String, String> values, String set, Entity member) {
    try {
      String value = switch (member.keyword()) {
        case "IFCPROPERTYSINGLEVALUE" -> text(member.raw(2), unit(member, 3));
        case "IFCPROPERTYENUMERATEDVALUE", "IFCPROPERTYLISTVALUE" -> list(member);
        case "IFCQUANTITYLENGTH" -> number(member.number(3) * factor(member, 2, model.units().metres()));
        case "IFCQUANTITYAREA" -> number(member.number(3) * factor(member, 2, model.units().squareMetres()));
        case "IFCQUANTITYVOLUME" -> number(member.number(3) * factor(member, 2, model.units().cubicMetres()));
        case "IFCQUANTITYCOUNT", "IFCQUANTITYWEIGHT", "IFCQUANTITYTIME", "IFCQUANTITYNUMBER" -> number(member.number(3));
        default -> "";
      };
      if (!value.isEmpty() && !member.text(0).isEmpty()) {
        values.put(set + "." + member.text(0), value);
      }
    } catch (EntityProblem p) {
      // A property that is not what it should be states nothing about the roof.
    }
  }

  private double factor(Entity member, int unitAttribute, double otherwise) {
    double unit = unit(member, unitAttribute);
    return Double.isNaN(unit) ? otherwise : unit;
  }

  /** Factor of the member's own unit, or NaN where it has none that is needed here. */
  private double unit(Entity member, int attribute) {
    if (!member.has(attribute)) {
      return Double.NaN;
    }
    Entity unit = member.entity(attribute);
    return switch (unit.word(1)) {
      case "LENGTHUNIT", "AREAUNIT", "VOLUMEUNIT", "PLANEANGLEUNIT" -> Units.factor(unit, new java.util.HashSet<>());
      default -> Double.NaN;
    };
  }

  private String list(Entity member) {
    if (!member.has(2)) {
      return "";
    }
    List<String> items = new ArrayList<>();
    for (Value v : member.list(2)) {
      items.add(text(v, Double.NaN));
    }
    return String.join(", ", items);
  }

  private String text(Value v, double unit) {
    if (v instanceof Value.Typed t) {
      Double n = numberOf(t.value());
      return n == null ? text(t.value(), unit) : number(converted(t.keyword(), n, unit));
    }
    if (v instanceof Value.Enumeration e) {
      return switch (e.value()) {
        case "T" -> "true";
        case "F" -> "false";
        case "U" -> "unknown";
        default -> e.value();
      };
    }
    Double n = numberOf(v);
    return v instanceof Value.Text s ? s.value() : n == null ? "" : number(n);
  }

  private static Double numberOf(Value v) {
    return v instanceof Value.Real r ? Double.valueOf(r.value()) : v instanceof Value.Whole w ? Double.valueOf(w.value()) : null;
  }

  private double converted(String measure, double n, double unit) {
    Units u = model.units();
    return switch (measure) {
      case "IFCLENGTHMEASURE", "IFCPOSITIVELENGTHMEASURE", "IFCNONNEGATIVELENGTHMEASURE" -> n * (Double.isNaN(unit) ? u.metres() : unit);
      case "IFCAREAMEASURE" -> n * (Double.isNaN(unit) ? u.squareMetres() : unit);
      case "IFCVOLUMEMEASURE" -> n * (Double.isNaN(unit) ? u.cubicMetres() : unit);
      case "IFCPLANEANGLEMEASURE", "IFCPOSITIVEPLANEANGLEMEASURE" -> Math.toDegrees(n * (Double.isNaN(unit) ? u.radians() : unit));
      default -> n;
    };
  }

  private static String number(double n) {
    if (!Double.isFinite(n)) {
      return "";
    }
    BigDecimal d = new BigDecimal(n, DIGITS).stripTrailingZeros();
    return Math.abs(n) >= 1e15 || n != 0 && Math.abs(n) < 1e-6 ? d.toString() : d.toPlainString();
  }
}
