package org.seamledger.quantity.layout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import org.seamledger.geometry.Interrupts;
import org.seamledger.geometry.Plane;
import org.seamledger.geometry.Region;
import org.seamledger.geometry.Vec2;
import org.seamledger.geometry.Vec3;
import org.seamledger.roof.Facet;
import org.seamledger.roof.RoofFace;

/**
 * Seams and panels of one roof face.
 *
 * <p>The facets of a curved face that turn about a level axis share their u direction: seams run on from one to the next. Facets that
 * turn otherwise (a cone) each start anew.
 *
 * @param coverageM distance from seam to seam
 * @param seams from the left
 * @param panels pan by pan from the left, in each the lowest first; on a curved face one panel runs over all facets of its pan
 * @param crossLines at which panels that would be too long are divided; none on curved faces
 */
public record FaceLayout(String face, double coverageM, List<Grid> grids, List<Seam> seams, List<Panel> panels,
    List<CrossLine> crossLines) {

  /** A seam this close to a line's or a face's end stands at the end: models are no more exact, and nobody cuts a piece so short. */
  public static final double TOLERANCE = 0.0005;

  /** Two u directions are the same below this sine of the angle between them. */
  private static final double PARALLEL = 1e-4;

  /** More than the widest roofs have (2 km at 16 in), and more metres than the largest building's (0.4 km² at 16 in) would be. */
  private static final int MOST_SEAMS = 5_000;
  private static final double MOST_SEAM_METRES = 2e6;

  /** Seam spacing of a face that has none: no roof is half as wide. */
  private static final double FAR = 1e7;

  /** Seams of a facet stand at {@code origin + k · coverage}. */
  public record Grid(Facet facet, double origin) {
  }

  public FaceLayout {
    grids = List.copyOf(grids);
    seams = List.copyOf(seams);
    panels = List.copyOf(panels);
    crossLines = List.copyOf(crossLines);
  }

  /** Whether a face would have more seams than any roof has. */
  public static boolean isTooWide(RoofFace face, double coverageM) {
    double width = face.facets().stream().mapToDouble(f -> f.area().maxU()).max().orElse(0)
        - face.facets().stream().mapToDouble(f -> f.area().minU()).min().orElse(0);
    double area = face.facets().stream().mapToDouble(f -> f.area().area()).sum();
    return width / coverageM > MOST_SEAMS || area / coverageM > MOST_SEAM_METRES;
  }

  /**
   * @param offsetM of the first seam from the start, to the right
   * @param minimumM narrower panels are slivers
   * @param division how long panels may be
   */
  public static FaceLayout of(RoofFace face, double coverageM, Start start, double offsetM, double minimumM,
      Division division) {
    if (!(coverageM > 2 * TOLERANCE)) {
      throw new IllegalArgumentException("coverage " + coverageM + " m");
    }
    List<List<Facet>> runs = runs(face.facets());
    List<Grid> grids = new ArrayList<>();
    List<Seam> seams = new ArrayList<>();
    List<Panel> panels = new ArrayList<>();
    List<CrossLine> crossLines = new ArrayList<>();
    for (List<Facet> run : runs) {
      double origin = origin(run, coverageM, start) + offsetM;
      run.forEach(f -> grids.add(new Grid(f, origin)));
      Run laid = new Run(run, origin, coverageM, minimumM);
      seams.addAll(laid.seams(seams.size()));
      int before = panels.isEmpty() ? 0 : panels.get(panels.size() - 1).pan();
      List<Panel> whole = laid.panels(before);
      CrossLines lines = laid.crossLines(whole, division);
      panels.addAll(lines.isNone() ? whole : laid.divided(before, lines, crossLines));
    }
    return new FaceLayout(face.id(), coverageM, grids, seams, panels, crossLines);
  }

  /** A face without seams: a level one, where standing seam does not belong. */
  public static FaceLayout seamless(RoofFace face) {
    List<Grid> grids = face.facets().stream().map(f -> new Grid(f, FAR / 2)).toList();
    return new FaceLayout(face.id(), FAR, grids, List.of(), List.of(), List.of());
  }

  private static List<List<Facet>> runs(List<Facet> facets) {
    List<List<Facet>> runs = new ArrayList<>();
    for (Facet f : facets) {
      List<Facet> last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
      if (last != null && last.get(0).plane().u().cross(f.plane().u()).length() < PARALLEL
          && last.get(0).plane().u().dot(f.plane().u()) > 0) {
        last.add(f);
      } else {
        runs.add(new ArrayList<>(List.of(f)));
      }
    }
    return runs;
  }

  private static double origin(List<Facet> run, double coverage, Start start) {
    double left = run.stream().mapToDouble(f -> f.area().minU()).min().orElse(0);
    double right = run.stream().mapToDouble(f -> f.area().maxU()).max().orElse(0);
    return switch (start) {
      case LEFT -> left;
      case RIGHT -> right;
      case CENTRED -> centred(left, right, coverage);
      case RIDGE -> topLeft(run.get(run.size() - 1).area());
    };
  }

  /** A seam or a pan in the middle, whichever leaves the wider end pieces. */
  private static double centred(double left, double right, double coverage) {
    double middle = (left + right) / 2;
    double half = (right - left) / 2;
    double endWithSeam = half - coverage * Math.floor(half / coverage);
    double endWithPan = half - coverage / 2 - coverage * Math.floor((half - coverage / 2) / coverage);
    boolean even = endWithSeam < TOLERANCE || endWithPan >= TOLERANCE && endWithSeam >= endWithPan;
    return even ? middle : middle + coverage / 2;
  }

  private static double topLeft(Region area) {
    double top = area.maxV();
    return area.rings().stream().flatMap(r -> r.points().stream()).filter(p -> p.v() > top - TOLERANCE).mapToDouble(Vec2::u).min()
        .orElse(area.minU());
  }

  /** Total length of the seams, metres. */
  public double seamLengthM() {
    return seams.stream().mapToDouble(Seam::lengthM).sum();
  }

  /** The grid of the facet that a point lies on, or nearest to. */
  Grid gridAt(Vec3 point) {
    Grid best = grids.get(0);
    double nearest = Double.POSITIVE_INFINITY;
    for (Grid g : grids) {
      Plane plane = g.facet().plane();
      double off = Math.abs(plane.height(point));
      if (grids.size() > 1 && off < nearest - 1e-9) {
        off += g.facet().area().distance(new Vec2(plane.u(point), plane.v(point)));
      }
      if (off < nearest - 1e-9) {
        nearest = off;
        best = g;
      }
    }
    return best;
  }

  /** Facets that share one grid, laid out together. */
  private record Run(List<Facet> facets, double origin, double coverage, double minimum) {

    List<Seam> seams(int before) {
      List<Seam> seams = new ArrayList<>();
      List<List<Region.Ring>> rings = facets.stream().map(f -> f.area().rings()).toList();
      double last = right() - TOLERANCE;
      for (long k = firstK(); origin + k * coverage < last; k++) {
        Interrupts.check();
        double at = origin + k * coverage;
        List<Seam.Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < facets.size(); i++) {
          Plane plane = facets.get(i).plane();
          for (Span s : Span.inside(rings.get(i), at, TOLERANCE / 10)) {
            stretches.add(new Seam.Stretch(plane.at(at, s.low()), plane.at(at, s.high())));
          }
        }
        if (!stretches.isEmpty()) {
          seams.add(new Seam(before + seams.size() + 1, at, stretches));
        }
      }
      return seams;
    }

    List<Panel> panels(int before) {
      List<Panel> panels = new ArrayList<>();
      TreeMap<Integer, List<Panel>> byPan = new TreeMap<>();
      List<Double> bounds = bounds();
      for (Facet facet : facets) {
        List<List<Panel>> pans = new PanelCutter(facet, minimum, TOLERANCE, CrossLines.NONE).pans(bounds, before);
        for (int pan = 0; pan < pans.size(); pan++) {
          byPan.computeIfAbsent(pan, p -> new ArrayList<>()).addAll(pans.get(pan));
        }
      }
      byPan.values().forEach(pan -> panels.addAll(facets.size() == 1 ? pan : joined(pan)));
      return panels;
    }

    /** One panel over all facets of a pan: lengths add up, the low end is the first's, the high end the last's. */
    private static List<Panel> joined(List<Panel> pan) {
      if (pan.isEmpty()) {
        return pan;
      }
      Panel first = pan.get(0);
      Panel last = pan.get(pan.size() - 1);
      return List.of(new Panel(first.pan(), pan.stream().mapToDouble(Panel::widthM).max().orElse(0),
          pan.stream().mapToDouble(Panel::lengthM).sum(), first.lowBevelDegrees(), last.highBevelDegrees(),
          pan.stream().mapToDouble(Panel::areaM2).sum(), pan.stream().anyMatch(Panel::shaped), pan.stream().allMatch(Panel::sliver),
          first.low(), last.high(), List.of(pan.stream().mapToDouble(Panel::lengthM).sum())));
    }

    /** What divides panels that are too long: on a plane only, since nothing says where a curve could be stepped or lapped. */
    CrossLines crossLines(List<Panel> whole, Division division) {
      Panel longest = whole.stream().max(Comparator.comparingDouble(Panel::lengthM)).orElse(null);
      if (longest == null || facets.size() > 1) {
        return CrossLines.NONE;
      }
      Plane plane = facets.get(0).plane();
      double low = longest.low().stream().mapToDouble(c -> Math.min(plane.v(c.left()), plane.v(c.right()))).min().orElse(0);
      return division.lines(low, low + longest.lengthM());
    }

    List<Panel> divided(int before, CrossLines lines, List<CrossLine> crossLines) {
      PanelCutter cutter = new PanelCutter(facets.get(0), minimum, TOLERANCE, lines);
      List<Panel> panels = cutter.pans(bounds(), before).stream().flatMap(List::stream).toList();
      crossLines.addAll(cutter.crossLines());
      return panels;
    }

    private List<Double> bounds() {
      List<Double> bounds = new ArrayList<>(List.of(left()));
      double last = right() - TOLERANCE;
      for (long k = firstK(); origin + k * coverage < last; k++) {
        bounds.add(origin + k * coverage);
      }
      bounds.add(right());
      return bounds;
    }

    private long firstK() {
      return (long) Math.floor((left() + TOLERANCE - origin) / coverage) + 1;
    }

    private double left() {
      return facets.stream().mapToDouble(f -> f.area().minU()).min().orElse(0);
    }

    private double right() {
      return facets.stream().mapToDouble(f -> f.area().maxU()).max().orElse(0);
    }
  }
}
