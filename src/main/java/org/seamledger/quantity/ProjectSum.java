package org.seamledger.quantity;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.seamledger.detail.Detail;
import org.seamledger.detail.DetailedJunction;
import org.seamledger.detail.Kind;
import org.seamledger.detail.Run;
import org.seamledger.detail.Seal;
import org.seamledger.junction.Facts;
import org.seamledger.measure.Measure;
import org.seamledger.quantity.formula.Order;

/** Adds junctions and faces up to the project's order. */
final class ProjectSum {

  private final List<DetailedJunction> junctions;
  private final Collection<JunctionQuantities> counted;
  private final RoofLayout layout;
  private final RoofSystem system;

  private ProjectSum(List<DetailedJunction> junctions, Collection<JunctionQuantities> counted, RoofLayout layout, RoofSystem system) {
    this.junctions = junctions;
    this.counted = counted;
    this.layout = layout;
    this.system = system;
  }

  static ProjectQuantities of(List<DetailedJunction> junctions, Collection<JunctionQuantities> counted, RoofLayout layout,
      RoofSystem system) {
    ProjectSum s = new ProjectSum(junctions, counted, layout, system);
    double metalFirst = s.lengthWhere(j -> j.detail().metalFirst());
    double detailed = s.lengthWhere(j -> j.detail() != Detail.NONE);
    List<ProjectQuantities.Part> parts = s.parts();
    return new ProjectQuantities(s.tape(), s.bead(), s.inSeam(), s.gunSealant(), s.fasteners(), s.closures(), caps(parts), s.plugs(), parts,
        s.boots(), s.curbs(), metalFirst, detailed);
  }

  private double lengthWhere(Predicate<DetailedJunction> which) {
    return junctions.stream().filter(which).mapToDouble(j -> j.junction().junction().lengthM()).sum();
  }

  private Stream<SealLine> seals(Seal.Form form) {
    return counted.stream().flatMap(q -> q.seals().stream()).filter(s -> s.form() == form);
  }

  private static double length(Stream<SealLine> seals) {
    return seals.mapToDouble(SealLine::lengthM).sum();
  }

  private static double millilitres(Stream<SealLine> seals) {
    return seals.mapToDouble(s -> s.volumeM3() * 1e6).sum();
  }

  private static Order order(double net, Measure waste, double unit) {
    return Order.of(net, waste.value(), unit);
  }

  private double cartridgeMl() {
    return system.bead().cartridge().value() * 1e6;
  }

  private ProjectQuantities.Tape tape() {
    double net = length(seals(Seal.Form.TAPE));
    Order order = order(net, system.waste().tape(), system.tape().roll().value());
    return new ProjectQuantities.Tape(net, length(seals(Seal.Form.TAPE).filter(s -> s.run() == Run.PER_LAP)), order.withWaste(),
        order.units());
  }

  private ProjectQuantities.Bead bead() {
    ProjectQuantities.Bead.Part all = beads(s -> true);
    return new ProjectQuantities.Bead(all.netM(), all.netMl(), all.orderMl(), all.cartridges(),
        beads(s -> s.exposure() == Seal.Exposure.CONCEALED), beads(s -> s.exposure() == Seal.Exposure.EXPOSED));
  }

  private ProjectQuantities.Bead.Part beads(Predicate<SealLine> which) {
    double ml = millilitres(seals(Seal.Form.BEAD).filter(which));
    Order order = order(ml, system.waste().bead(), cartridgeMl());
    return new ProjectQuantities.Bead.Part(length(seals(Seal.Form.BEAD).filter(which)), ml, order.withWaste(), order.units());
  }

  private ProjectQuantities.InSeam inSeam() {
    List<String> faces = layout.byFace().keySet().stream().filter(layout::seamsSealed).toList();
    double net = faces.stream().mapToDouble(f -> layout.face(f).seamLengthM()).sum();
    return new ProjectQuantities.InSeam(net, order(net, system.waste().inSeam(), 1).withWaste(), faces);
  }

  private ProjectQuantities.GunSealant gunSealant() {
    double laps = length(seals(Seal.Form.IN_SEAM).filter(s -> s.run() == Run.PER_LAP));
    double all = length(seals(Seal.Form.IN_SEAM));
    double ml = millilitres(seals(Seal.Form.IN_SEAM));
    Order order = order(ml, system.waste().bead(), cartridgeMl());
    return new ProjectQuantities.GunSealant(all, laps, all - laps, ml, order.withWaste(), order.units());
  }

  private ProjectQuantities.Fasteners fasteners() {
    SortedMap<String, Long> byPlace = new TreeMap<>();
    counted.stream().flatMap(q -> q.fasteners().stream()).forEach(f -> byPlace.merge(f.place(), (long) f.count(), Long::sum));
    long net = byPlace.values().stream().mapToLong(Long::longValue).sum();
    int box = system.fasteners().box();
    return new ProjectQuantities.Fasteners(net, order(net, system.waste().fasteners(), box).units() * box, byPlace);
  }

  private ProjectQuantities.Closures closures() {
    long pieces = 0;
    int shorter = 0;
    double length = 0;
    for (JunctionQuantities q : counted) {
      for (ClosureCut cut : q.closures()) {
        pieces += cut.count();
        shorter += cut.shorter() ? cut.count() : 0;
      }
      length += q.metal().stream().filter(m -> q.closures().stream().anyMatch(c -> c.part().equals(m.part()) && c.face().equals(m.face())))
          .mapToDouble(MetalLine::lengthM).sum();
    }
    return new ProjectQuantities.Closures(pieces, length, order(pieces, system.waste().closures(), 1).units(), shorter);
  }

  private static ProjectQuantities.Caps caps(List<ProjectQuantities.Part> parts) {
    List<ProjectQuantities.Part> caps = parts.stream().filter(p -> p.part().endsWith("cap")).toList();
    return new ProjectQuantities.Caps(caps.stream().mapToLong(ProjectQuantities.Part::pieces).sum(),
        caps.stream().mapToDouble(ProjectQuantities.Part::lengthM).sum(), caps.stream().mapToLong(ProjectQuantities.Part::laps).sum());
  }

  private ProjectQuantities.Plugs plugs() {
    long seamEnds = counted.stream().mapToLong(JunctionQuantities::seamEndPlugs).sum();
    long corners = counted.stream().mapToLong(JunctionQuantities::cornerPlugs).sum();
    return new ProjectQuantities.Plugs(seamEnds + corners, seamEnds, corners);
  }

  /** Parts by name, then girth; pieces between seams are not among them. */
  private List<ProjectQuantities.Part> parts() {
    Map<String, ProjectQuantities.Part> sums = new TreeMap<>();
    Map<Double, String> girths = new HashMap<>();
    for (JunctionQuantities q : counted) {
      for (MetalLine m : q.metal()) {
        if (q.closures().stream().noneMatch(c -> c.part().equals(m.part()))) {
          String key = m.part() + " " + girths.computeIfAbsent(m.girthM(), g -> String.format(Locale.ROOT, "%08.4f", g));
          sums.merge(key, new ProjectQuantities.Part(m.part(), m.pieces(), m.lengthM(), m.laps(), m.girthM(), 0), ProjectSum::plus);
        }
      }
    }
    List<ProjectQuantities.Part> parts = new ArrayList<>();
    sums.values().forEach(p -> parts.add(new ProjectQuantities.Part(p.part(), p.pieces(), p.lengthM(), p.laps(), p.girthM(),
        order(p.pieces(), system.waste().flashing(), 1).units())));
    return parts;
  }

  private static ProjectQuantities.Part plus(ProjectQuantities.Part a, ProjectQuantities.Part b) {
    return new ProjectQuantities.Part(a.part(), a.pieces() + b.pieces(), a.lengthM() + b.lengthM(), a.laps() + b.laps(), a.girthM(), 0);
  }

  private List<ProjectQuantities.Boot> boots() {
    SortedMap<Long, Long> bySize = new TreeMap<>();
    for (DetailedJunction j : junctions) {
      if (j.junction().type().family() == Kind.Family.ROUND) {
        double diameter = j.junction().junction().facts().number("diameterM");
        double size = Double.isNaN(diameter) ? j.junction().junction().lengthM() / Math.PI : diameter;
        bySize.merge(Math.round(size * 1000), 1L, Long::sum);
      }
    }
    return bySize.entrySet().stream().map(e -> new ProjectQuantities.Boot(e.getKey() / 1000.0, e.getValue())).toList();
  }

  /** Each polygonal thing once: it has one upper side. */
  private List<ProjectQuantities.Curb> curbs() {
    SortedMap<Long, Long> bySize = new TreeMap<>();
    for (DetailedJunction j : junctions) {
      Facts f = j.junction().junction().facts();
      Kind kind = j.junction().type();
      if (kind.family() == Kind.Family.PENETRATION && kind.water() == Kind.Water.AGAINST && f.has("widthAcrossFallM")) {
        long key = Math.round(f.number("widthAcrossFallM") * 1000) * 1_000_000 + Math.round(f.number("depthAlongFallM") * 1000);
        bySize.merge(key, 1L, Long::sum);
      }
    }
    return bySize.entrySet().stream().map(e -> new ProjectQuantities.Curb(e.getKey() / 1_000_000 / 1000.0, e.getKey() % 1_000_000 / 1000.0,
        e.getValue())).toList();
  }

}
