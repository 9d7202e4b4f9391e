package org.seamledger.quantity;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
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
  private final Sealant tape = new Sealant();
  private final Sealant tapeLaps = new Sealant();
  private final Sealant beads = new Sealant();
  private final Sealant concealed = new Sealant();
  private final Sealant exposed = new Sealant();
  private final Sealant inSeams = new Sealant();
  private final Sealant inSeamLaps = new Sealant();

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
    s.seals();
    List<ProjectQuantities.Part> parts = s.parts();
    return new ProjectQuantities(s.tape(), s.bead(), s.inSeam(), s.gunSealant(), s.fasteners(), s.closures(), caps(parts), s.plugs(), parts,
        s.boots(), s.curbs(), metalFirst, detailed);
  }

  private double lengthWhere(Predicate<DetailedJunction> which) {
    return junctions.stream().filter(which).mapToDouble(j -> j.junction().junction().lengthM()).sum();
  }

  /** Lengths and volumes of one sort of sealant; streams sum them, which loses nothing however many there are. */
  private static final class Sealant {
    private final DoubleStream.Builder lengths = DoubleStream.builder();
    private final DoubleStream.Builder volumes = DoubleStream.builder();
    private double netM;
    private double netMl;

    void add(SealLine s) {
      lengths.add(s.lengthM());
      volumes.add(s.volumeM3() * 1e6);
    }

    void close() {
      netM = lengths.build().sum();
      netMl = volumes.build().sum();
    }
  }

  private void seals() {
    for (JunctionQuantities q : counted) {
      for (SealLine s : q.seals()) {
        boolean lap = s.run() == Run.PER_LAP;
        switch (s.form()) {
          case TAPE -> add(s, tape, lap ? tapeLaps : null);
          case IN_SEAM -> add(s, inSeams, lap ? inSeamLaps : null);
          case BEAD -> add(s, beads, s.exposure() == Seal.Exposure.CONCEALED ? concealed : exposed);
        }
      }
    }
    List.of(tape, tapeLaps, beads, concealed, exposed, inSeams, inSeamLaps).forEach(Sealant::close);
  }

  private static void add(SealLine s, Sealant all, Sealant sort) {
    all.add(s);
    if (sort != null) {
      sort.add(s);
    }
  }

  private static Order order(double net, Measure waste, double unit) {
    return Order.of(net, waste.value(), unit);
  }

  private double cartridgeMl() {
    return system.bead().cartridge().value() * 1e6;
  }

  private ProjectQuantities.Tape tape() {
    Order order = order(tape.netM, system.waste().tape(), system.tape().roll().value());
    return new ProjectQuantities.Tape(tape.netM, tapeLaps.netM, order.withWaste(), order.units());
  }

  private ProjectQuantities.Bead bead() {
    ProjectQuantities.Bead.Part all = beads(beads);
    return new ProjectQuantities.Bead(all.netM(), all.netMl(), all.orderMl(), all.cartridges(), beads(concealed), beads(exposed));
  }

  private ProjectQuantities.Bead.Part beads(Sealant sealant) {
    Order order = order(sealant.netMl, system.waste().bead(), cartridgeMl());
    return new ProjectQuantities.Bead.Part(sealant.netM, sealant.netMl, order.withWaste(), order.units());
  }

  private ProjectQuantities.InSeam inSeam() {
    List<String> faces = layout.byFace().keySet().stream().filter(layout::seamsSealed).toList();
    double net = faces.stream().mapToDouble(f -> layout.face(f).seamLengthM()).sum();
    return new ProjectQuantities.InSeam(net, order(net, system.waste().inSeam(), 1).withWaste(), faces);
  }

  private ProjectQuantities.GunSealant gunSealant() {
    double laps = inSeamLaps.netM;
    Order order = order(inSeams.netMl, system.waste().bead(), cartridgeMl());
    return new ProjectQuantities.GunSealant(inSeams.netM, laps, inSeams.netM - laps, inSeams.netMl, order.withWaste(), order.units());
  }

  private ProjectQuantities.Fasteners fasteners() {
    SortedMap<String, Long> byPlace = new TreeMap<>();
    for (JunctionQuantities q : counted) {
      for (FastenerRow f : q.fasteners()) {
        byPlace.merge(f.place(), (long) f.count(), Long::sum);
      }
    }
    long net = byPlace.values().stream().mapToLong(Long::longValue).sum();
    int box = system.fasteners().box();
    return new ProjectQuantities.Fasteners(net, order(net, system.waste().fasteners(), box).units() * box, byPlace);
  }

  private ProjectQuantities.Closures closures() {
    long pieces = 0;
    int shorter = 0;
    double length = 0;
    for (JunctionQuantities q : counted) {
      if (q.closures().isEmpty()) {
        continue;
      }
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
    SortedMap<String, PartSum> sums = new TreeMap<>();
    Map<String, Map<Double, PartSum>> known = new HashMap<>();
    for (JunctionQuantities q : counted) {
      for (MetalLine m : q.metal()) {
        if (q.closures().stream().noneMatch(c -> c.part().equals(m.part()))) {
          known.computeIfAbsent(m.part(), p -> new HashMap<>()).computeIfAbsent(m.girthM(), g -> sums.computeIfAbsent(
              m.part() + " " + String.format(Locale.ROOT, "%08.4f", g), k -> new PartSum(m.part(), m.girthM()))).add(m);
        }
      }
    }
    return sums.values().stream().map(p -> new ProjectQuantities.Part(p.part, p.pieces, p.lengthM, p.laps, p.girthM,
        order(p.pieces, system.waste().flashing(), 1).units())).toList();
  }

  /** A part of one girth while it is added up. */
  private static final class PartSum {
    private final String part;
    private final double girthM;
    private long pieces;
    private double lengthM;
    private long laps;

    PartSum(String part, double girthM) {
      this.part = part;
      this.girthM = girthM;
    }

    void add(MetalLine m) {
      pieces += m.pieces();
      lengthM += m.lengthM();
      laps += m.laps();
    }
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
